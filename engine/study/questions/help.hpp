// When help comes that can work in some weather only.
//
// States: none. Inputs: the weather of one sample; the wind at 10 m and the significant wave height above
// which help cannot work, stated by the user and not known to the model; the hours of work that help needs;
// the hours followed. Validity: between the knots of a record wind and wave height are straight lines
// (weather/weather.hpp), so the hour at which one crosses its limit is exact for that record, within a row
// too. Weather after the record's end is not invented. Source: none, this is arithmetic.
#pragma once

#include <limits>

#include "bide/scenario/uncertain.hpp"
#include "bide/weather/weather.hpp"

namespace bide::study {

struct Help {
  double at_h = std::numeric_limits<double>::infinity();  // infinite: not within the hours followed
  double held_back_h = 0;                                 // before it comes, or in all of the hours followed
  bool no_weather = false;  // there is none within the hours followed that it can work in
};

// The hour by which as many hours at or below the limits have passed as help needs. Help that needs none
// comes with the first weather it can work in.
Help help_in_weather(const weather::Record& weather, const scenario::HeldBackAbove& limits, double needed_h,
                     double horizon_h);

// As the scenario states it: at the hour itself where weather has no bearing.
Help help_of(const scenario::Rescue& rescue, double needed_h, const weather::Record& weather,
             double horizon_h);

}  // namespace bide::study

// Time at which help comes that can only work in some weather.
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
  double held_back_h = 0;   // hours of too bad weather before it comes, or in all of the hours followed
  bool no_weather = false;  // no weather within the hours followed in which it can work
};

// The hour by which the weather has been at or below the limits for as long as help needs. Help that needs no
// time comes with the first weather in which it can work.
// @param weather   of the sample
// @param limits    wind at 10 m and significant wave height above which help cannot work
// @param needed_h  hours of work that help needs, h, at least 0
// @param horizon_h hours followed, h, above 0
Help help_in_weather(const weather::Record& weather, const scenario::HeldBackAbove& limits, double needed_h,
                     double horizon_h);

// The same as the scenario states it; where it states no limits, help comes after needed_h.
// @param needed_h, horizon_h as help_in_weather()
Help help_of(const scenario::Rescue& rescue, double needed_h, const weather::Record& weather,
             double horizon_h);

}  // namespace bide::study

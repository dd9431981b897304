// The weather of every lane at one time.
#pragma once

#include <array>

#include "bide/core/scalar.hpp"
#include "bide/weather/weather.hpp"

namespace bide::system {

// The weather records of the lanes; they must outlive it.
template <class T>
class Forcings {
 public:
  // One record for every lane.
  explicit Forcings(const weather::Record& record) { records_.fill(&record); }
  // One record per lane, none null.
  explicit Forcings(const std::array<const weather::Record*, lane_count<T>>& records) : records_(records) {}

  // The forcing of every lane at a time.
  // @param t_s s since the scenario's start; outside the run the value at the nearest end is returned
  weather::Forcing<T> at(double t_s) const {
    weather::Forcing<T> out;
    weather::Forcing<double> one = records_[0]->at(t_s);
    for (int i = 0; i < lane_count<T>; ++i) {
      if (i > 0 && !records_[i]->same_as(*records_[i - 1])) one = records_[i]->at(t_s);
      set_lane(out, i, one);
    }
    return out;
  }

  // The record of lane 0.
  const weather::Record& first() const { return *records_[0]; }

 private:
  std::array<const weather::Record*, lane_count<T>> records_;
};

}  // namespace bide::system

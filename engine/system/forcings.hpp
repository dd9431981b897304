// The weather of every lane at one time.
#pragma once

#include <array>

#include "bide/core/scalar.hpp"
#include "bide/weather/weather.hpp"

namespace bide::system {

template <class T>
class Forcings {
 public:
  explicit Forcings(const weather::Record& record) { records_.fill(&record); }
  explicit Forcings(const std::array<const weather::Record*, lane_count<T>>& records) : records_(records) {}

  weather::Forcing<T> at(double t_s) const {
    weather::Forcing<T> out;
    weather::Forcing<double> one = records_[0]->at(t_s);
    for (int i = 0; i < lane_count<T>; ++i) {
      if (i > 0 && !records_[i]->same_as(*records_[i - 1])) one = records_[i]->at(t_s);
      set_lane(out, i, one);
    }
    return out;
  }

  const weather::Record& first() const { return *records_[0]; }

 private:
  std::array<const weather::Record*, lane_count<T>> records_;
};

}  // namespace bide::system

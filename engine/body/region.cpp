#include "bide/body/region.hpp"

#include <cmath>

namespace bide::body {

using namespace constants;

Region region_of(const Conditions& at) {
  if (at.medium == Medium::water) return at.degC < cool_water_from_degC ? cold_water : cool_water;
  if (at.degC < mild_air_from_degC) return cold_air;
  return at.degC < warm_air_from_degC ? mild_air : warm_air;
}

Span span_of(double hours) {
  return hours < later_from_h ? first_hours : later;
}

bool is_near(const Conditions& at, const Conditions& study) {
  return at.medium == study.medium && at.dress == study.dress && std::abs(at.degC - study.degC) <= near_K &&
         std::abs(at.fat_pct - study.fat_pct) <= near_fat_pct &&
         std::abs(at.age_years - study.age_years) <= near_age_years;
}

}  // namespace bide::body

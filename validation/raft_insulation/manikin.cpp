#include "validation/raft_insulation/manikin.hpp"

#include "bide/constants/cabin.hpp"
#include "bide/constants/open.hpp"
#include "bide/core/units.hpp"

namespace bide::validation {

namespace {
constexpr double skin_degC = 33, around_degC = 5;
}  // namespace

double manikin_insulation_m2K_W(const RaftTrial& trial, double depth_m, double clothing,
                                const system::Fitted<double>& fitted) {
  const Run run = run_case(scenario_of(trial, 60), hour_s, [&](system::Compiled<double>& compiled) {
    make_manikin(compiled, 0, skin_degC);
    dress_for_trial(compiled, clothing);
    compiled.fitted = fitted;
    // More than a scenario lets a raft ship: the depth that the trial had around a seated person.
    if (depth_m > 0)
      compiled.amounts.water_shipped_kg =
          depth_m * (compiled.raft.floor_area_m2 - constants::seated_displaced_m2) * m3_L;
  });
  const std::vector<double> rates = run.rates(1, 2);
  const auto rate = [&](int entry) {
    return rates[static_cast<std::size_t>(system::person_offset(0) + entry)];
  };
  using namespace body::at;
  const double dry_W = rate(total_to_air) + rate(total_to_canopy) + rate(total_to_floor) +
                       rate(total_to_floor_water) + rate(total_to_sea) + rate(total_to_tube) +
                       rate(total_evaporation);
  return (skin_degC - around_degC) * run.compiled.persons[0].area_total_m2 / dry_W;
}

}  // namespace bide::validation

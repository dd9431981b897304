#include "validation/hands/face.hpp"

#include <fmt/format.h>

#include <utility>

#include "bide/body/layout.hpp"
#include "bide/core/units.hpp"
#include "bide/weather/sea.hpp"

namespace bide::validation::hands {

namespace {

constexpr double longest_min = 45;  // of a test
constexpr const char* study = "DTIC ADA454525, faces in wind";

// Minutes until a face in an open raft may freeze, in a wind that is the test's at the height of the raft;
// the test's length if not by then.
double minutes(double air_degC, double face_km_h) {
  constexpr double anemometer_m = 10, raft_m = 1;
  constexpr double above_least = 1.001;  // 16 km/h in rounded figures of the file stays 16
  Rest r;
  r.duration_h = longest_min / hour_min;
  r.air_degC = air_degC;
  r.sea_degC = -1;
  r.wind_m_s = above_least * face_km_h * km_m / hour_s / weather::wind_at_height_m_s(1, anemometer_m, raft_m);
  r.raft = R"({"kind": "coastal_4", "canopy": "none"})";
  r.crew = R"([{"sex": "male", "age_years": 30, "height_m": 1.75, "mass_kg": 78,
                "clothing": "offshore_cold"}])";
  return time_reached_s(
             run_case(scenario_of(r, 1), minute_s), [](const double* x) { return x[body::at::total_face]; },
             1, true) /
         minute_s;
}

}  // namespace

void faces(std::vector<Row>& all) {
  std::vector<Row> out;
  struct Share {
    double air_degC, km_h, nipped;
  };
  for (const Share& each :
       {Share{-20, 0, 0}, Share{-30, 0, 0.11}, Share{-40, 0, 0.22}, Share{-10, 16, 0}, Share{-20, 16, 0.17},
        Share{-30, 16, 1}, Share{-10, 32, 0}, Share{-20, 32, 0.58}, Share{-30, 32, 1}}) {
    const bool some = each.nipped > 0;
    out.push_back(make_row("hands", study,
                           fmt::format("bare face nipped in 45 min, {:g} degC, {:g} km/h (1: possible)",
                                       each.air_degC, each.km_h),
                           "-", each.nipped, some ? 0.05 : 0, some ? 1 : 0,
                           minutes(each.air_degC, each.km_h) < longest_min ? 1 : 0,
                           "possible wherever anybody was nipped, and nowhere else"));
    if (each.km_h <= 0)
      blame(out.back(),
            "nothing counts below 16 km/h: the formula asks for wind, and would have faces of "
            "-20 degC freeze in a calm, where none did");
  }
  struct Minutes {
    double air_degC, km_h, published;
  };
  for (const Minutes& each : {Minutes{-20, 16, 20}, Minutes{-20, 32, 20}, Minutes{-30, 16, 14},
                              Minutes{-30, 32, 4}, Minutes{-40, 16, 2.5}, Minutes{-40, 32, 1.5}}) {
    out.push_back(
        make_row("hands", study,
                 fmt::format("until a bare face is nipped, {:g} degC, {:g} km/h", each.air_degC, each.km_h),
                 "min", each.published, 0.5 * each.published, 1.5 * each.published,
                 minutes(each.air_degC, each.km_h), "half of it either way: no spread printed"));
    blame(out.back(), "the formula is as recalled, and slow in the greatest cold");
  }
  // The formula was made from this trial, and the least wind that counts is the trial's.
  for (Row& row : out) {
    row.calibrated = true;
    all.push_back(std::move(row));
  }
}

}  // namespace bide::validation::hands

#include "bide/constants/control.hpp"
#include "bide/core/moist_air.hpp"
#include "bide/core/units.hpp"
#include "validation/support/trial.hpp"
#include "validation/topics.hpp"

namespace bide::validation::heat {

namespace {

constexpr const char* topic = "heat";
constexpr int rectal = body::at::node(body::trunk, body::core);

void stored_at_36_degC(std::vector<Row>& out) {
  const auto kJ = [](const Who& who, double humidity_pct) {
    Rest r = in_room(who, 36.5, 2);
    r.humidity_pct = humidity_pct;
    constexpr double J_kJ = 1000;
    return trial_of(r, 60).change(body::at::total_stored, 0, 120) / J_kJ;
  };
  const Who young{.age_years = 21, .height_m = 1.67, .mass_kg = 72};
  const Who old{.age_years = 65, .height_m = 1.81, .mass_kg = 80.1, .fat_pct = 24};
  const auto add = [&](const char* quantity, double published, double sd, double model) {
    out.push_back(make_row(topic, "Stapleton et al. 2014", quantity, "kJ", published, published - sd,
                           published + sd, model, "as printed, twelve men"));
    out.back().trivial = 0;
  };
  add("heat stored in 2 h at 36.5 degC, 20 %, young men", 131, 27, kJ(young, 20));
  add("heat stored in 2 h at 36.5 degC, 20 %, old men", 212, 25, kJ(old, 20));
  add("heat stored in 2 h at 36.5 degC, 60 %, young men", 317, 45, kJ(young, 60));
  add("heat stored in 2 h at 36.5 degC, 60 %, old men", 426, 37, kJ(old, 60));
}

// Humidity of air at a wet-bulb temperature, by the psychrometer's equation (6.62e-4 per K, ventilated).
double humidity_pct(double air_degC, double wet_bulb_degC) {
  constexpr double per_K = 6.62e-4, pressure_Pa = 101325;
  const double vapour_Pa =
      saturation_pressure_Pa(wet_bulb_degC) - per_K * pressure_Pa * (air_degC - wet_bulb_degC);
  return pct * vapour_Pa / saturation_pressure_Pa(air_degC);
}

// The mildest wet bulb, in quarters of a degree, at which the core of somebody at light household tasks (80
// W/m2) still climbs by a tenth of a kelvin in the third hour, beyond what the clock alone lifts it.
double climbing_wet_bulb_degC(double air_degC) {
  constexpr double from_degC = 26, to_degC = 36, step_K = 0.25, climbs_K = 0.1, tasks_W_m2 = 80;
  for (double wet_bulb_degC = from_degC; wet_bulb_degC < to_degC; wet_bulb_degC += step_K) {
    Rest r = in_room({.age_years = 23, .fat_pct = 20, .clothing = "tropical"}, air_degC, 3);
    r.humidity_pct = humidity_pct(air_degC, wet_bulb_degC);
    const Trial t = trial_of(r, 60, [](system::Compiled<double>& compiled) {
      body::Build<double>& b = compiled.persons[0];
      const double factor =
          tasks_W_m2 * b.area_total_m2 / (b.basal_total_W * constants::awake_rest_factor.value);
      for (auto& segment : b.basal_W)
        for (double& node : segment) node *= factor;
      b.finger_basal_W *= factor;
      b.basal_total_W *= factor;
    });
    const body::Rhythm<double>& day = t.run.compiled.raft.rhythm;
    constexpr double from_s = 7200, to_s = 10800;
    const double by_clock_K = body::core_rhythm_K(day, to_s) - body::core_rhythm_K(day, from_s);
    if (t.change(rectal, 120, 180) - by_clock_K >= climbs_K) return wet_bulb_degC;
  }
  return to_degC;
}

}  // namespace

std::vector<Row> rows() {
  std::vector<Row> out;
  stored_at_36_degC(out);
  out.push_back(make_row(topic, "Vecellio et al. 2022", "wet bulb at which the core climbs, 38 degC", "degC",
                         30.55, 29.57, 31.53, climbing_wet_bulb_degC(38), "1 SD as printed"));
  blame_named(out,
              {{"heat stored in 2 h at 36.5 degC, 20",
                "starts from a neutral skin, which the men may have passed before they entered: their room "
                "is not told"},
               {"heat stored in 2 h at 36.5 degC, 60",
                "too little heat is kept in humid air, as in humid_heat: sweat evaporates there too well"}});
  return out;
}

}  // namespace bide::validation::heat

#include <algorithm>

#include "bide/body/model_error.hpp"
#include "bide/cabin/clothing.hpp"
#include "bide/cabin/floor.hpp"
#include "bide/constants/boarding.hpp"
#include "bide/constants/control.hpp"
#include "bide/constants/fuel.hpp"
#include "bide/constants/limits.hpp"
#include "bide/constants/open.hpp"
#include "bide/constants/shivering.hpp"
#include "bide/core/units.hpp"
#include "bide/system/compiled.hpp"
#include "bide/system/conditions.hpp"
#include "bide/system/crew_order.hpp"
#include "bide/system/levels.hpp"

namespace bide::system {

namespace {

// Without a raft the "cabin" is a metre or two of the open around people.
RaftBuild<double> open_water(double persons) {
  RaftBuild<double> r{};
  r.floor_area_m2 = persons;
  r.volume_m3 = persons * constants::open_volume_m3;
  r.capacity_persons = persons;
  r.entrance_area_m2 = 1;
  r.seated_m2K_W = r.free_m2K_W = r.flat_seated_m2K_W = r.flat_free_m2K_W = constants::floor_single_m2K_W;
  r.sky_view = 0.5;
  r.canopy_position = r.leakage_position = 0.5;
  r.open_above_co2_fraction = 1;
  r.open_above_degC = 100;
  return r;
}

// @param crew_kg mass of all people together
RaftBuild<double> build_raft(const scenario::ValidScenario& v, double crew_kg) {
  const scenario::Scenario& in = v.scenario;
  if (!in.raft) return open_water(static_cast<double>(in.crew.size()));
  const scenario::Raft& raft = *in.raft;
  const scenario::Routine& routine = in.routine;
  RaftBuild<double> r{};
  const bool canopy = raft.canopy != scenario::CanopyKind::none;
  const cabin::Geometry g =
      cabin::raft_geometry(raft.floor_area_m2, canopy ? raft.canopy_height_m : 0, raft.tube_diameter_m);
  r.floor_area_m2 = raft.floor_area_m2;
  r.canopy_area_m2 = g.canopy_area_m2;
  r.volume_m3 = canopy ? g.volume_m3 - cabin::body_volume_m3(crew_kg)
                       : static_cast<double>(in.crew.size()) * constants::open_volume_m3;
  r.gap_m2K_W = raft.canopy == scenario::CanopyKind::two_skins
                    ? cabin::air_gap_m2K_W(constants::canopy_gap_mm, cabin::HeatFlow::up)
                    : 0;
  r.tube_side_area_m2 = g.tube_side_area_m2;
  r.sky_view = g.sky_view;
  r.behind_tubes = std::min(1.0, 2 * raft.tube_diameter_m / constants::sitting_height_m);
  r.entrance_area_m2 = raft.opening_area_m2;
  r.minimum_opening_m2 = routine.minimum_opening_m2;
  r.catch_area_m2 = raft.rain_catch_area_m2;
  r.capacity_persons = raft.capacity_persons;
  r.canopy_position = raft.canopy_heat_loss_position;
  r.leakage_position = raft.leakage_position;
  r.has_canopy = canopy ? 1 : 0;
  r.two_skins = raft.canopy == scenario::CanopyKind::two_skins ? 1 : 0;
  // More than eight persons: two opposite entrances (LSA Code 4.1.1.5.3).
  constexpr int one_entrance_up_to = 8;
  r.two_entrances = raft.capacity_persons > one_entrance_up_to ? 1 : 0;
  r.insulated_floor = raft.floor == scenario::FloorKind::inflated ? 1 : 0;
  r.foam_floor = raft.floor == scenario::FloorKind::foam ? 1 : 0;
  const cabin::FloorResistance up = cabin::floor_resistance(raft.floor, true);
  const cabin::FloorResistance flat = cabin::floor_resistance(raft.floor, false);
  r.seated_m2K_W = up.seated_m2K_W, r.free_m2K_W = up.free_m2K_W;
  r.flat_seated_m2K_W = flat.seated_m2K_W, r.flat_free_m2K_W = flat.free_m2K_W;
  r.opening_fraction_day = routine.opening_fraction_day;
  r.opening_fraction_night = routine.opening_fraction_night;
  r.open_above_co2_fraction = routine.open_above_co2_ppm * (1 / ppm);
  r.open_above_degC = routine.open_above_degC;
  return r;
}

Amounts<double> build_amounts(const scenario::Scenario& in) {
  Amounts<double> a{};
  a.wet_fraction = in.boarding.wet_fraction;
  if (!in.raft) return a;
  a.water_shipped_kg = in.boarding.water_shipped_L;
  a.water_L_per_day = in.rationing.water_L_per_day.value_or(0);  // unread by other rules
  a.food_kJ_per_day = in.rationing.food_kJ_per_day;
  a.flares_per_night = in.routine.flares_per_night;
  return a;
}

void set_posture(scenario::InWater what, RaftBuild<double>& r) {
  using namespace constants;
  r.swims = what == scenario::InWater::swimming ? 1 : 0;
  r.folded = {};
  if (what == scenario::InWater::knees_drawn_up) {
    r.folded[body::trunk] = knees_fold_trunk;
    r.folded[body::arms] = knees_fold_arms;
    r.folded[body::legs] = knees_fold_legs;
  }
  if (what == scenario::InWater::huddled) {
    r.folded[body::trunk] = huddle_folds_trunk;
    r.folded[body::arms] = huddle_folds_arms;
    r.folded[body::legs] = huddle_folds_legs;
  }
}

std::vector<Member> crew_of(const scenario::ValidScenario& v, const weather::Record& weather) {
  const scenario::Model& model = v.scenario.model;
  const body::ErrorPositions errors{model.heat_made_position, model.tissue_conductance_position,
                                    model.clothing_conductance_position, model.water_loss_position};
  std::vector<Member> crew;
  for (std::size_t i = 0; i < v.scenario.crew.size(); ++i) {
    const scenario::Person& p = v.scenario.crew[i];
    Member& m = crew.emplace_back(Member{p.injured, p.thermal_protective_aid, p.seasick_medicine,
                                         body::make_build(p, *v.ensembles[i]), i});
    body::apply(body::factors_at(errors, conditions_of(v, weather, i)), m.build);
    const cabin::SeatPad pad = cabin::seat_pad(p.seat);
    m.build.seat_pad_m2K_W = pad.resistance_m2K_W;
    m.build.seat_pad_cover = pad.cover;
  }
  sort_crew(crew);
  return crew;
}

// @return their mass, kg
double take_crew(const std::vector<Member>& crew, Compiled<double>& c) {
  double mass_kg = 0;
  for (const Member& m : crew) {
    c.persons.push_back(m.build);
    c.file_place.push_back(m.file_place);
    c.structure.injured.push_back(m.injured);
    c.structure.aid.push_back(m.aid);
    c.structure.medicine.push_back(m.medicine);
    mass_kg += m.build.mass_kg;
  }
  return mass_kg;
}

}  // namespace

Levels<double> common_levels(const scenario::Limits& stated) {
  Levels<double> out{};
  for (std::size_t i = 0; i < level_count; ++i) {
    const double level =
        limits[i].stated.member != nullptr ? stated.*limits[i].stated.member : limits[i].level;
    out.by_limit[i] = level * quantities[limits[i].of].per_stated;
  }
  return out;
}

void set_endurance(scenario::ShiveringEndurance law, RaftBuild<double>& raft) {
  using namespace constants;
  const bool late = law == scenario::ShiveringEndurance::tires_late;
  raft.keeps_sustained = law == scenario::ShiveringEndurance::gives_out ? 0 : 1;
  raft.sustained_factor = late ? (shiver_sustained_late_over_basal - awake_rest_factor) /
                                     (shiver_sustained_over_basal - awake_rest_factor)
                               : 1;
  raft.shivering_tires_per_s = 1 / ((late ? shiver_peak_endurance_late_h : shiver_peak_endurance_h) * hour_s);
}

Compiled<double> compile(const scenario::ValidScenario& v, const weather::Record& weather) {
  Compiled<double> c;
  c.structure = make_structure(v, weather);
  c.structure.aid_m2K_W = cabin::aid_resistance_m2K_W();
  c.raft = build_raft(v, take_crew(crew_of(v, weather), c));
  set_endurance(v.scenario.model.shivering_endurance, c.raft);
  c.amounts = build_amounts(v.scenario);
  c.raft.rhythm = body::rhythm_from(weather.local_solar_hour(0));
  set_posture(v.scenario.boarding.in_water, c.raft);
  c.limits = common_levels(v.scenario.limits);
  c.stock = stores::opening_stock(v);
  return c;
}

}  // namespace bide::system

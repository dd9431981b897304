#include "bide/timeline/record.hpp"

#include "bide/body/hands.hpp"
#include "bide/core/moist_air.hpp"
#include "bide/core/people.hpp"
#include "bide/core/units.hpp"
#include "bide/system/readings.hpp"
#include "bide/system/tasks.hpp"

namespace bide::timeline {

void Recorder::row(double t, const std::vector<double>& x) {
  using namespace system::at;
  Timeline& out = *timeline_;
  const system::Compiled<double>& compiled = system_->compiled();
  const bool first = last_x_.empty();
  const weather::Forcing<double> w = system_->forcings().at(t);
  // Rates: means since the last row, or the values of this instant for the first one.
  std::vector<double> rate(x.size());
  if (first)
    system_->slope(t, x, rate);
  else
    for (std::size_t i = 0; i < x.size(); ++i) rate[i] = (x[i] - last_x_[i]) / (t - last_t_);

  const auto& c = system_->coefficients().cabin;
  const system::Held<double>& held = system_->held;
  out.time_s.push_back(t);
  // In the water without a raft there is no cabin: its columns stay empty.
  if (compiled.structure.has_raft) {
    const double inside_pressure = vapour_pressure_Pa(x[vapour], x[air]);
    out.inside_air_degC.push_back(x[air]);
    out.canopy_degC.push_back(x[canopy]);
    out.floor_water_degC.push_back(x[floor_water]);
    out.inside_vapour_density_kg_m3.push_back(x[vapour]);
    out.inside_relative_humidity_pct.push_back(pct * inside_pressure / saturation_pressure_Pa(x[air]));
    out.co2_ppm.push_back(ppm * x[co2]);
    out.floor_water_L.push_back(x[water_mass]);
    out.condensate_L_total.push_back(x[total_condensed]);
    out.ventilation_L_s.push_back(m3_L * c.ventilation_m3_s);
    out.opening_m2.push_back(held.opening_m2 + held.extra_opening_m2);
    out.cabin_from_bodies_W.push_back(rate[total_from_bodies]);
    out.cabin_from_sun_W.push_back(rate[total_from_sun]);
    out.cabin_to_outside_through_canopy_W.push_back(rate[total_through_canopy]);
    out.cabin_to_sea_W.push_back(rate[total_to_sea]);
    out.cabin_to_outside_by_air_W.push_back(rate[total_by_air]);
  }
  out.outside_air_degC.push_back(w.air_temperature_degC);
  out.sea_degC.push_back(w.water_temperature_degC);
  out.wind_m_s.push_back(w.wind_10m_m_s);
  out.wave_height_m.push_back(w.wave_height_m);
  out.irradiance_W_m2.push_back(w.global_irradiance_W_m2);
  out.rain_mm_h.push_back(w.rain_kg_m2_s * hour_s);  // 1 kg/m2 is 1 mm
  out.water_L.push_back(held.stock.water_L);
  out.food_kJ.push_back(held.stock.food_kJ);
  out.medicine_doses.push_back(held.stock.medicine_doses);
  out.flares.push_back(held.stock.hand_flares + held.stock.rockets);
  out.lamp_h.push_back(held.stock.lamp_h);
  out.beacon_h.push_back(held.stock.beacon_h);

  for (int p = 0; p < compiled.structure.persons; ++p) {
    const auto index = static_cast<std::size_t>(p);
    const body::Build<double>& b = compiled.persons[index];
    const double* y = x.data() + system::person_offset(p);
    const double* r = rate.data() + system::person_offset(p);
    PersonSeries& s = out.persons[index];
    namespace at = body::at;
    const double finger = y[at::finger];
    s.core_degC.push_back(system::core_degC(y));
    s.head_core_degC.push_back(y[at::node(body::head, body::core)]);
    s.mean_skin_degC.push_back(system::mean_skin_degC(b, y));
    s.finger_degC.push_back(finger);
    s.hand_skin_degC.push_back(y[at::node(body::hands, body::skin)]);
    s.foot_skin_degC.push_back(y[at::node(body::feet, body::skin)]);
    s.metabolic_W.push_back(r[at::total_metabolic]);
    s.shivering_W.push_back(r[at::total_shivering]);
    s.sweat_kg_h.push_back(hour_s * (r[at::total_skin_water] + r[at::total_sweat_drip]));
    s.clothing_water_kg.push_back(system::clothing_water_kg(y));
    s.water_deficit_pct.push_back(system::water_deficit_pct(b, y));
    s.osmolality_mOsm_kg.push_back(system::osmolality_mOsm_kg(b, y));
    s.urine_kg_total.push_back(y[at::total_urine]);
    s.glycogen_kJ.push_back(y[at::glycogen]);
    s.fat_kg.push_back(y[at::fat_mass]);
    s.protein_kg.push_back(y[at::protein_mass]);
    s.sickness.push_back(system_->coefficients().persons[index].severity);
    s.heat_loss_air_W.push_back(r[at::total_to_air]);
    s.heat_loss_canopy_W.push_back(r[at::total_to_canopy]);
    s.heat_loss_floor_W.push_back(r[at::total_to_floor] + r[at::total_to_tube]);
    s.heat_loss_water_W.push_back(r[at::total_to_floor_water] + r[at::total_to_sea]);
    s.heat_loss_evaporation_W.push_back(r[at::total_evaporation]);
    s.heat_loss_breath_W.push_back(r[at::total_breath]);
    const double able = held.persons[index].able;
    s.task_ability.push_back(able * system::hand_pace(system::Task::sachet, b, y));
    s.fine_work.push_back(able * system::hand_can(system::Task::sachet, b, y));
    s.grip.push_back(able * system::hand_can(system::Task::bailer, b, y));
  }
  last_t_ = t;
  last_x_ = x;
}

namespace {

struct Sentence {
  const char* kind;
  const char* text;
  const char* unit;
};

Sentence sentence(system::NoteKind kind) {
  using K = system::NoteKind;
  switch (kind) {
    case K::failure:
      return {"failure", "", ""};
    case K::boarded:
      return {"boarded", "everybody is aboard", ""};
    case K::daylight:
      return {"daylight", "daylight: openings set for the day", ""};
    case K::darkness:
      return {"darkness", "dark: openings set for the night", ""};
    case K::fell_asleep:
      return {"fell_asleep", "those who can, sleep", ""};
    case K::woke:
      return {"woke", "the night's rest ends", ""};
    case K::clothes_wrung:
      return {"clothes_wrung", "wet clothes are wrung out", "L"};
    case K::medicine_taken:
      return {"medicine_taken", "takes a dose against seasickness", "doses"};
    case K::water_issued:
      return {"water_issued", "is given water", "L"};
    case K::water_lacking:
      return {"water_lacking", "is due water, and there is not enough", "L"};
    case K::food_issued:
      return {"food_issued", "is given food", "kJ"};
    case K::food_lacking:
      return {"food_lacking", "is due food, and there is not enough", "kJ"};
    case K::bailed:
      return {"bailed", "water on the floor is bailed out", "L"};
    case K::water_made:
      return {"water_made", "fresh water is made", "L"};
    case K::rain_caught:
      return {"rain_caught", "rain is caught", "L"};
    case K::flare_fired:
      return {"flare_fired", "a signal is fired", "signals"};
    case K::opened_for_air:
      return {"opened_for_air", "entrances are opened for air", ""};
    case K::closed_again:
      return {"closed_again", "entrances are closed again", ""};
    case K::hands_failed:
      return {"hands_failed", "no hand aboard is warm and sound enough to ", ""};
    case K::unable:
      return {"unable", "cannot help themselves", ""};
    case K::able_again:
      return {"able_again", "can help themselves again", ""};
    case K::unconscious:
      return {"unconscious", "is unconscious", ""};
    case K::died:
      return {"died", "has passed a lethal limit", ""};
  }
  return {"", "", ""};
}

const char* failure_sentence(scenario::FailureKind kind) {
  using K = scenario::FailureKind;
  switch (kind) {
    case K::floor_not_inflated:
      return "the floor is not inflated";
    case K::canopy_torn:
      return "the canopy tears";
    case K::closure_lost:
      return "an entrance can no longer be closed";
    case K::tube_leaking:
      return "a buoyancy tube leaks";
    case K::pump_lost:
      return "the pump is lost";
    case K::capsize:
      return "the raft capsizes and is righted";
    case K::bailer_lost:
      return "bailer and sponges are lost";
    case K::desalinator_lost:
      return "the desalinator is lost";
    case K::lamp_dead:
      return "the lamps fail";
  }
  return "";
}

}  // namespace

const char* name_of(system::NoteKind kind) {
  return sentence(kind).kind;
}

std::vector<Event> events_from(const std::vector<system::Note>& notes, const system::Structure& structure) {
  std::vector<Event> out;
  out.reserve(notes.size());
  for (const system::Note& n : notes) {
    const Sentence s = sentence(n.kind);
    const bool failure = n.kind == system::NoteKind::failure;
    std::string text =
        failure ? failure_sentence(structure.failures[static_cast<std::size_t>(n.index)].kind) : s.text;
    if (n.kind == system::NoteKind::hands_failed)
      text += system::tasks[static_cast<std::size_t>(n.index)].words;
    if (n.person >= 0) text = person_label(n.person) + " " + text;
    out.push_back({n.time_s, n.person, n.kind, std::move(text), n.asked, n.given, s.unit});
  }
  return out;
}

}  // namespace bide::timeline

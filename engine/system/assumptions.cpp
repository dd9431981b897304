#include "bide/system/assumptions.hpp"

#include <fmt/format.h>

#include "bide/constants/evidence.hpp"
#include "bide/core/units.hpp"
#include "bide/system/readings.hpp"

namespace bide::system {

namespace {

std::string place(double position) {
  if (position == 0.5) return "at the middle of";
  if (position <= 0) return "at the low end of";
  if (position >= 1) return "at the high end of";
  return fmt::format("at {:.0f} % of", 100 * position);
}

const char* endurance_words(scenario::ShiveringEndurance law) {
  switch (law) {
    case scenario::ShiveringEndurance::tires:
      return "shivering tires to what can be kept up for days, by an estimated law (nobody has measured "
             "beyond "
             "6.5 h)";
    case scenario::ShiveringEndurance::tires_late:
      return "shivering tires late, to what long endurance events level off at (nobody has measured beyond "
             "6.5 h)";
    case scenario::ShiveringEndurance::gives_out:
      return "shivering gives out by an estimated law (nobody has measured beyond 6.5 h)";
  }
  return "";
}

}  // namespace

std::vector<std::string> assumptions(const scenario::ValidScenario& v, const weather::Record& weather) {
  std::vector<std::string> out;
  const scenario::Scenario& s = v.scenario;
  if (s.raft) {
    if (s.raft->canopy != scenario::CanopyKind::none)
      out.push_back(
          fmt::format("canopy heat loss {} its unmeasured range", place(s.raft->canopy_heat_loss_position)));
    out.push_back(
        fmt::format("leakage of the shut cabin {} its unmeasured range", place(s.raft->leakage_position)));
    out.push_back("spray, seat contact and wetting are our own estimates with wide ranges");
  }
  out.push_back(endurance_words(s.model.shivering_endurance));
  out.push_back("seasickness is averaged, not drawn at random");
  for (const std::string& note : weather.notes()) out.push_back(note);
  return out;
}

void RangeFlags::look(const System<double>& system, const std::vector<double>& x) {
  const auto& compiled = system.compiled();
  for (int p = 0; p < compiled.structure.persons; ++p) {
    const auto i = static_cast<std::size_t>(p);
    if (system.held.persons[i].living <= 0) continue;
    const double* y = x.data() + person_offset(p);
    const body::Build<double>& b = compiled.persons[i];
    constexpr double warmest_control_degC = 40, driest_measured_pct = 10;
    const double longest_shivering_s = constants::longest_shivering_trial_h * hour_s;
    constexpr double tired = 0.5;
    core_above_control_data_ = core_above_control_data_ || core_degC(y) > warmest_control_degC;
    deficit_above_data_ = deficit_above_data_ || water_deficit_pct(b, y) > driest_measured_pct;
    shivering_beyond_data_ =
        shivering_beyond_data_ ||
        y[body::at::total_shivering] > tired * b.shivering_ceiling_W * longest_shivering_s;
    peak_beyond_data_ =
        peak_beyond_data_ || (b.beyond_shivering_peak_trial > 0 &&
                              y[body::at::total_shivering] > constants::shivering_counted_W * hour_s);
  }
}

std::vector<std::string> RangeFlags::sentences() const {
  std::vector<std::string> out;
  if (core_above_control_data_) out.push_back("a core above 40 °C: no control law was measured there");
  if (deficit_above_data_)
    out.push_back("a water deficit above 10 % of body mass: nobody was measured there");
  if (shivering_beyond_data_)
    out.push_back("more shivering than any trial lasted (6.5 h at half of the greatest)");
  if (peak_beyond_data_)
    out.push_back(
        "the greatest shivering of people outside 18 to 37 years and 19 to 28 kg/m²: held at those ends");
  return out;
}

}  // namespace bide::system

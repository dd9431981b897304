#include "validation/calibration/fits.hpp"

#include <boost/math/tools/minima.hpp>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <cstdint>
#include <stdexcept>

#include "validation/humid_heat/humid.hpp"
#include "validation/raft_insulation/manikin.hpp"

namespace bide::validation {

namespace {

// Printed for the inflated floor, m2 K/W: raft_insulation/README.md.
constexpr double inflated_dry_m2K_W = 0.236, inflated_wet_m2K_W = 0.146;

std::vector<double> clothing_misfit(double clothing) {
  return {manikin_insulation_m2K_W({}, 0, clothing) / inflated_dry_m2K_W - 1};
}

std::vector<double> soaked_misfit(double soaked) {
  RaftTrial wet;
  wet.wet = true;
  system::Fitted<double> fitted;
  fitted.soaked_insulation = soaked;
  return {manikin_insulation_m2K_W(wet, 0, trial_clothing, fitted) / inflated_wet_m2K_W - 1};
}

std::vector<double> withheld_misfits(double share) {
  system::Fitted<double> fitted;
  fitted.wet_skin_withholds = share;
  std::vector<double> out;
  for (const humid_heat::HumidLine& line : humid_heat::humid_lines)
    out.push_back((humid_heat::humid_mass_pct(line.air_degC, fitted) - line.mass_pct) / line.mass_sd);
  return out;
}

double length(const std::vector<double>& misfits) {
  double squares = 0;
  for (const double m : misfits) squares += m * m;
  return std::sqrt(squares);
}

Fit engine_number(const Sourced& number, const char* name, double tolerance, std::vector<std::string> rows,
                  std::function<std::vector<double>(double)> misfits) {
  return {name, number.value, number.low, number.high, tolerance, std::move(rows), std::move(misfits)};
}

}  // namespace

std::vector<Fit> fits() {
  return {// Between light indoor clothing and twice a sailing outfit.
          {"trial_clothing",
           trial_clothing,
           0.4,
           2.0,
           0.005,
           {"raft_insulation: inflated floor, dry"},
           clothing_misfit},
          engine_number(constants::soaked_insulation, "soaked_insulation", 0.005,
                        {"raft_insulation: inflated floor, wet"}, soaked_misfit),
          engine_number(constants::wet_skin_withholds, "wet_skin_withholds", 0.01,
                        {"humid_heat: mass at 32.1 degC", "humid_heat: mass at 33.1 degC",
                         "humid_heat: mass at 35 degC"},
                        withheld_misfits)};
}

Refit refit(const Fit& fit) {
  constexpr int bits = 16;
  std::uintmax_t most = 60;
  if (fit.rows.size() == 1) {
    const auto misfit = [&](double x) { return fit.misfits(x).front(); };
    const double at_low = misfit(fit.low), at_high = misfit(fit.high);
    if (at_low * at_high > 0)
      throw std::runtime_error(fit.name + ": no value inside its bounds meets its row");
    const auto [below, above] = boost::math::tools::toms748_solve(
        misfit, fit.low, fit.high, at_low, at_high, boost::math::tools::eps_tolerance<double>(bits), most);
    const double value = 0.5 * (below + above);
    return {value, length(fit.misfits(value))};
  }
  const auto [value, squares] = boost::math::tools::brent_find_minima(
      [&](double x) { return std::pow(length(fit.misfits(x)), 2); }, fit.low, fit.high, bits, most);
  return {value, std::sqrt(squares)};
}

}  // namespace bide::validation

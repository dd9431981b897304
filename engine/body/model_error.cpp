#include "bide/body/model_error.hpp"

#include <algorithm>
#include <boost/math/special_functions/erf.hpp>
#include <cmath>
#include <numbers>

#include "bide/body/region.hpp"
#include "bide/constants/left_out.hpp"

namespace bide::body {

namespace {

// Exactly 1 at the middle.
double factor(double position, double sd) {
  const double share = std::clamp<double>(position, constants::errors_end, 1 - constants::errors_end);
  const double most = std::log(constants::error_farthest_factor);
  return std::exp(std::clamp(sd * std::numbers::sqrt2 * boost::math::erf_inv(2 * share - 1), -most, most));
}

}  // namespace

ErrorFactors factors_at(const ErrorPositions& positions, const constants::Conditions& at) {
  const constants::ErrorSizes& sizes = constants::left_out[region_of(at)].sizes;
  const bool near = std::any_of(std::begin(constants::studied), std::end(constants::studied),
                                [&](const constants::Conditions& study) { return is_near(at, study); });
  const double wider = near ? 1 : constants::far_wider;
  return {factor(positions.heat_made, wider * sizes.heat_made),
          factor(positions.tissue_conductance, wider * sizes.tissue_conductance),
          factor(positions.clothing_conductance, wider * sizes.clothing_conductance),
          factor(positions.water_loss, wider * sizes.water_loss)};
}

void apply(const ErrorFactors& f, Build<double>& b) {
  b.shivering_factor *= f.heat_made;
  b.shivering_ceiling_W *= f.heat_made;
  b.shivering_sustained_W *= f.heat_made;
  const double at_rest = std::pow(f.heat_made, constants::error_at_rest);
  for (auto& segment : b.basal_W)
    for (double& each : segment) each *= at_rest;
  b.finger_basal_W *= at_rest;
  b.basal_total_W *= at_rest;
  for (auto& segment : b.conductance_W_K)
    for (double& each : segment) each *= f.tissue_conductance;
  for (double& each : b.insulation_m2K_W) each /= f.clothing_conductance;
  b.immersed_insulation_m2K_W /= f.clothing_conductance;
  b.sweat_factor *= f.water_loss;
  b.skin_vapour_conductance_m_s *= f.water_loss;
  b.burnt_skin_vapour_conductance_m_s *= f.water_loss;
}

}  // namespace bide::body

#include "bide/cabin/floor.hpp"

#include "validation/support/rest.hpp"
#include "validation/topics.hpp"

namespace bide::validation::floor {

std::vector<Row> rows() {
  constexpr const char *topic = "floor", *study = "DRDC 2001";
  const double inflated = cabin::floor_resistance(scenario::FloorKind::inflated, true).seated_m2K_W;
  const double single = cabin::floor_resistance(scenario::FloorKind::single, true).seated_m2K_W;
  const char* errors = "two standard errors of eight people; an input of the model";
  std::vector<Row> out;
  const auto add = [&](const char* quantity, double published, double standard_error, double model) {
    out.push_back(make_row(topic, study, quantity, "m2 K/W", published, published - 2 * standard_error,
                           published + 2 * standard_error, model, errors));
    out.back().standard_error = standard_error;
  };
  add("inflatable, make A, seated", 0.110, 0.0137, inflated);
  add("inflatable, make B, seated", 0.093, 0.0088, inflated);
  add("not inflatable, seated", 0.0093, 0.00055, single);
  out.push_back(make_row(topic, study, "inflatable over not inflatable", "-", 11, 10, 12, inflated / single,
                         "as printed; inputs of the model"));
  out.back().trivial = 1;
  for (Row& r : out) r.calibrated = true;
  return out;
}

}  // namespace bide::validation::floor

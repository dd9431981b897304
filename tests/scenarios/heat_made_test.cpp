// What pages say of a model that gives bodies too much heat: with less, people get cold sooner.
#include <algorithm>
#include <vector>

#include "scenarios/shipped.hpp"

using namespace bide;

namespace {

// The coldest core of each person in a raft in a cold sea.
// @param position of the heat made in the model's own error, 0 to 1
std::vector<double> coldest_degC(double position) {
  auto json = test::shipped("cold_sea_dry");
  json["model"]["heat_made_position"] = position;
  std::vector<double> out;
  for (const auto& person : test::simulated(json).persons)
    out.push_back(*std::min_element(person.core_degC.begin(), person.core_degC.end()));
  return out;
}

}  // namespace

// People who stay warm all the same: their coldest core moves by a tenth of a kelvin either way, which was
// not taken apart.
TEST_CASE(
    "who makes less heat is colder, and warmer by no more than a sixth of a kelvin where all stay warm") {
  constexpr double same_K = 1.0 / 6, cold_K = 1;
  std::vector<double> less = coldest_degC(0.1);
  const std::vector<double> least = less;
  for (const double position : {0.3, 0.5, 0.7, 0.9}) {
    CAPTURE(position);
    const std::vector<double> more = coldest_degC(position);
    for (std::size_t p = 0; p < more.size(); ++p) CHECK(more[p] > less[p] - same_K);
    less = more;
  }
  CHECK(*std::min_element(less.begin(), less.end()) > *std::min_element(least.begin(), least.end()) + cold_K);
}

// Sentences name the person; rows add up; the scale of steps is what a convergence check asks for.
#include "bide/timeline/record.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "bide/timeline/simulate.hpp"
#include "support/runs.hpp"

using namespace bide;
using doctest::Approx;

TEST_CASE("people are called by letters, events without a person by nobody") {
  system::Structure structure;
  structure.failures.resize(2);
  structure.failures[1].kind = scenario::FailureKind::capsize;
  using K = system::NoteKind;
  const std::vector<system::Note> notes{{60, K::water_issued, 0, 0, 0.5, 0.25},
                                        {120, K::died, 25},
                                        {180, K::unconscious, 26},
                                        {240, K::bailed, -1, 0, 3, 3},
                                        {300, K::failure, -1, 1}};
  const auto events = timeline::events_from(notes, structure);
  REQUIRE(events.size() == 5);
  CHECK(events[0].text == "Person A is given water");
  CHECK(events[0].kind == system::NoteKind::water_issued);
  CHECK(events[0].unit == "L");
  CHECK(events[0].asked == 0.5);
  CHECK(events[0].given == 0.25);
  CHECK(events[1].text.rfind("Person Z ", 0) == 0);   // the 26th
  CHECK(events[2].text.rfind("Person AA ", 0) == 0);  // the 27th
  CHECK(events[3].text.rfind("Person", 0) == std::string::npos);
  CHECK(events[4].kind == system::NoteKind::failure);
  CHECK(events[4].text == "the raft capsizes and is righted");
  CHECK(events[4].time_s == 300);
}

TEST_CASE("smaller steps come nearer, and rows add up to what was taken in and lost") {
  const test::Run run = test::load_run(test::minimal_text);
  const auto at = [&](double scale) {
    timeline::Options options;
    options.step_scale = scale;
    return std::get<timeline::Timeline>(timeline::simulate(run.scenario, run.weather, options));
  };
  // The full step is held to a bar alone: at the first row, while the seat takes up the puddle's cold, it is
  // not yet in the range where the error falls with the square of the step.
  const auto coarse = at(1), half = at(0.5), quarter = at(0.25), fine = at(0.0625);
  REQUIRE(coarse.time_s == fine.time_s);
  double coarse_error = 0, half_error = 0, quarter_error = 0;
  for (std::size_t i = 0; i < fine.time_s.size(); ++i) {
    const double exact = fine.persons[0].mean_skin_degC[i];
    coarse_error = std::max(coarse_error, std::abs(coarse.persons[0].mean_skin_degC[i] - exact));
    half_error = std::max(half_error, std::abs(half.persons[0].mean_skin_degC[i] - exact));
    quarter_error = std::max(quarter_error, std::abs(quarter.persons[0].mean_skin_degC[i] - exact));
  }
  CAPTURE(coarse_error);
  CAPTURE(half_error);
  CHECK(coarse_error > 0);
  CAPTURE(quarter_error);
  CHECK(half_error < coarse_error);
  CHECK(quarter_error < 0.5 * half_error);
  CHECK(coarse_error < 0.05);
  // Metabolic heat of the rows, each the mean since the row before, against the heat of food burnt (24 h):
  // a resting man of 75 kg makes 80 to 110 W awake and asleep, more when he shivers.
  double joules = 0;
  for (std::size_t i = 1; i < coarse.time_s.size(); ++i)
    joules += coarse.persons[0].metabolic_W[i] * (coarse.time_s[i] - coarse.time_s[i - 1]);
  CHECK(joules / coarse.time_s.back() > 70);
  CHECK(joules / coarse.time_s.back() < 400);
}

TEST_CASE("the record has the weather that was stated, in the units of its names") {
  const test::Run run = test::load_run(test::cold_swim_text);
  const auto t = std::get<timeline::Timeline>(timeline::simulate(run.scenario, run.weather, {}));
  REQUIRE(t.rain_mm_h.size() == t.time_s.size());
  for (std::size_t i = 0; i < t.time_s.size(); ++i) {
    CHECK(t.rain_mm_h[i] == Approx(1));
    CHECK(t.wind_m_s[i] == Approx(11));
    CHECK(t.sea_degC[i] == Approx(7));
  }
}

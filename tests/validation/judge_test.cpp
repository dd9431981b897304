// The judge on made-up rows whose answers follow by hand.
#include <doctest/doctest.h>
#include <oneapi/tbb/global_control.h>

#include <cmath>
#include <iterator>

#include "bide/body/region.hpp"
#include "bide/constants/left_out.hpp"
#include "bide/core/random.hpp"
#include "bide/study/sampling/distribution.hpp"
#include "validation/judge/body_before.hpp"
#include "validation/judge/candidates.hpp"
#include "validation/judge/report.hpp"
#include "validation/judge/sizes.hpp"
#include "validation/judge/whole_runs.hpp"

using namespace bide;
using namespace bide::validation;

namespace {

JudgedRow row(const std::string& study, double published, double half, double model) {
  JudgedRow out;
  out.row.topic = "topic";
  out.row.study = study;
  out.row.quantity = "quantity";
  out.row.unit = "W";
  out.row.published = published;
  out.row.low = published - half;
  out.row.high = published + half;
  out.row.model = model;
  out.about = "heat made";
  out.at = {constants::Medium::air, 5, constants::Dress::bare, 15, 25};
  out.region = body::region_of(out.at);
  out.span = constants::later;
  return out;
}

// A model whose every row is 100 exp(tissue), run at random points; the other parameters change nothing.
constexpr double as_computed = 100;
Runs made_up(const std::vector<JudgedRow>& rows) {
  Runs out;
  out.rows = rows;
  constexpr std::uint64_t points = 120;
  for (std::uint64_t k = 0; k < points; ++k) {
    Point point;
    for (std::size_t i = 0; i < parameter_count; ++i)
      point[i] = (2 * uniform(7, k, static_cast<std::uint32_t>(i), 0) - 1) * parameters[i].farthest;
    out.points.push_back(point);
    out.values.emplace_back(rows.size(), as_computed * std::exp(point[of_tissue]));
  }
  return out;
}

// The rows under the model in force: the dearest part of these tests.
const Runs& in_force() {
  static const Runs runs = run_draws(0, 1);
  return runs;
}

}  // namespace

TEST_CASE("an error is at most one half-interval where a row holds") {
  JudgedRow both = row("a", 10, 2, 0);
  both.row.high = 16;  // the upper side is wider
  CHECK(both.two_sided());
  CHECK(both.error(9) == doctest::Approx(0.5));
  CHECK(both.error(13) == doctest::Approx(0.5));
  JudgedRow one = row("a", 10, 2, 0);
  one.row.low = 10;  // "10 or more, up to 12"
  CHECK_FALSE(one.two_sided());
  CHECK(one.error(11) == doctest::Approx(0.5));
  CHECK(one.error(9) == doctest::Approx(1.5));
}

TEST_CASE("a single value with a half-interval of scatter covers as a normal distribution does") {
  // The middle 50 % reaches 0.674 standard deviations, the middle 90 % 1.645.
  const auto at = [](double off) { return score(row("a", 10, 2, 0), single(10 + 2 * off), 1); };
  CHECK(at(0.6).in_half);
  CHECK_FALSE(at(0.75).in_half);
  CHECK(at(1.6).in_nine_tenths);
  CHECK_FALSE(at(1.7).in_nine_tenths);
  CHECK(at(0).width == doctest::Approx(1.645).epsilon(0.001));
  CHECK(at(100).error == doctest::Approx(5));  // wrong is wrong
}

TEST_CASE("a study counts as two rows at most") {
  const std::vector<JudgedRow> rows{row("a", 1, 1, 1), row("b", 1, 1, 1), row("b", 1, 1, 1),
                                    row("b", 1, 1, 1), row("b", 1, 1, 1)};
  const std::vector<double> weights = study_weights(rows);
  CHECK(weights[0] == 1);
  CHECK(weights[4] == 0.5);
}

TEST_CASE("the bootstrap over studies gives the interval of a mean") {
  std::vector<JudgedRow> rows;
  Scores first, same, mixed;
  constexpr int studies = 100;
  for (int i = 0; i < studies; ++i) {
    rows.push_back(row(std::to_string(i), 10, 2, 0));
    RowScore score;
    score.error = 2;
    first.push_back(score);
    score.error = 1.5;
    same.push_back(score);
    score.error = i % 2 == 0 ? 3 : 1;
    mixed.push_back(score);
  }
  const Difference sure = difference(rows, first, same, 1);
  CHECK(sure.studies == studies);
  CHECK(sure.mean == doctest::Approx(-0.5));
  CHECK(sure.interval.low == doctest::Approx(-0.5));
  CHECK(sure.interval.high == doctest::Approx(-0.5));
  // Differences of one either way: the mean of 100 has a standard error of 0.1, the middle 90 % is 0.1645.
  const Difference open = difference(rows, first, mixed, 1);
  CHECK(open.mean == doctest::Approx(0));
  CHECK(open.interval.low == doctest::Approx(-0.1645).epsilon(0.1));
  CHECK(open.interval.high == doctest::Approx(0.1645).epsilon(0.1));
}

TEST_CASE("one outlying study does not carry the posterior away") {
  // Six studies say 110, which is a logarithm of 0.095; one says 50 on an interval as narrow.
  std::vector<JudgedRow> rows;
  for (int i = 0; i < 6; ++i) rows.push_back(row(std::to_string(i), 110, 5, as_computed));
  const Runs agreed = made_up(rows);
  rows.push_back(row("outlier", 50, 5, as_computed));
  const Runs torn = made_up(rows);
  const Posterior without = posterior(agreed, Surface(agreed), 1), with = posterior(torn, Surface(torn), 1);
  CHECK(without.mean[of_tissue] == doctest::Approx(0.095).epsilon(0.2));
  CHECK(with.mean[of_tissue] == doctest::Approx(0.095).epsilon(0.3));
  // Forecast without itself, the outlier is missed.
  CHECK(with.scores.back()->error > 3);
  CHECK_FALSE(with.scores.back()->in_nine_tenths);
  // The same twice.
  CHECK(posterior(torn, Surface(torn), 1).mean == with.mean);
}

TEST_CASE("errors are sized so that studies left out are covered") {
  // Studies lie as a lognormal of twice the prior's spread of the tissue's conductance, measured narrowly.
  std::vector<JudgedRow> rows;
  constexpr int studies = 40;
  for (int i = 0; i < studies; ++i) {
    const double z = study::standard_normal_quantile((i + 0.5) / studies);
    rows.push_back(
        row(std::to_string(i), as_computed * std::exp(1.4 * parameters[of_tissue].sd * z), 0.5, as_computed));
  }
  const Runs runs = made_up(rows);
  const Surface surface(runs);
  const std::vector<bool> all(rows.size(), true);
  const ErrorGrid grid(runs, surface, 1);
  const Widths found = grid.best(all)[static_cast<std::size_t>(rows.front().region)];
  CHECK(found.conductance == doctest::Approx(1.5).epsilon(0.35));  // the grid's nearest step
  CHECK(found.heat == 1);  // changes nothing here: the narrowest there is
  const Summary covered = summarise(rows, with_error(runs, grid), all);
  CHECK(covered.in_nine_tenths >= 0.85);
  CHECK(covered.in_half >= 0.4);
  CHECK(covered.in_half <= 0.6);
  // The model as it is covers only those in the middle.
  CHECK(summarise(rows, of_model(runs), all).in_nine_tenths < 0.3);
}

TEST_CASE("a region's side is told where its rows agree") {
  const auto heat_made = [](const Runs& runs, constants::Region region, constants::Span span) {
    return forecast_in(runs, {}, region, span).heat_made;
  };
  const Runs high = made_up({row("a", 100, 10, 150), row("b", 100, 10, 180), row("c", 100, 10, 200)});
  const constants::Region cold = high.rows.front().region;
  const constants::Bias side = heat_made(high, cold, constants::later);
  CHECK(side.rows == 3);
  CHECK(side.biased);
  CHECK(side.low == doctest::Approx(1.5));
  CHECK(side.high == doctest::Approx(2));
  const Runs even = made_up({row("a", 100, 10, 60), row("b", 100, 10, 100), row("c", 100, 10, 150)});
  CHECK_FALSE(heat_made(even, cold, constants::later).biased);
  const Runs two = made_up({row("a", 100, 10, 150), row("a", 100, 10, 180), row("b", 100, 10, 200)});
  CHECK_FALSE(heat_made(two, cold, constants::later).biased);  // two studies
  CHECK(heat_made(even, constants::cool_water, constants::later).rows == 0);
  CHECK(heat_made(high, cold, constants::first_hours).rows == 0);
}

TEST_CASE("the first minutes do not hide the hours after") {
  std::vector<JudgedRow> rows{row("a", 100, 10, 150), row("b", 100, 10, 180), row("c", 100, 10, 200)};
  for (const char* early : {"d", "e", "f"}) {
    rows.push_back(row(early, 100, 10, 60));
    rows.back().span = constants::first_hours;
  }
  const Runs runs = made_up(rows);
  const constants::Region cold = rows.front().region;
  CHECK(forecast_in(runs, {}, cold, constants::later).heat_made.biased);
  CHECK(forecast_in(runs, {}, cold, constants::first_hours).heat_made.high == doctest::Approx(0.6));
}

// 16 % above rest measured, 105 % by the model: 2.05 / 1.16. Two groups compared say nothing of too much.
TEST_CASE("heat told in percent of rest counts with the rest, heat of two groups does not count") {
  JudgedRow percent = row("a", 16, 10, 105);
  percent.row.unit = "%";
  JudgedRow groups = row("b", 1, 0.2, 3);
  groups.about = "heat compared";
  const Runs runs = made_up({percent, groups});
  const constants::Bias side = forecast_in(runs, {}, percent.region, constants::later).heat_made;
  CHECK(side.rows == 1);
  CHECK(side.low == doctest::Approx(2.05 / 1.16));
}

TEST_CASE("covered counts the rows with two sides that the range holds, hands and water apart") {
  std::vector<JudgedRow> rows(5, row("a", 100, 10, 100));
  rows[2].row.low = rows[2].row.published;  // one side
  rows[3].about = "hands";
  RowScore held, missed, one_side;
  held.two_sided = missed.two_sided = true;
  held.in_nine_tenths = one_side.in_nine_tenths = true;
  const Runs runs = made_up(rows);
  const constants::Covered covered =
      forecast_in(runs, {held, missed, one_side, held, std::nullopt}, rows[0].region, constants::later)
          .covered;
  CHECK(covered.of == 1);
  CHECK(covered.rows == 2);
}

TEST_CASE("the table that the engine reads is what the judge says of the model in force") {
  const Runs& runs = in_force();
  const auto same = [](const constants::Bias& said, const constants::Bias& stands) {
    CHECK(said.rows == stands.rows);
    CHECK(said.biased == stands.biased);
    CHECK(std::abs(said.low - stands.low) <= 0.02);
    CHECK(std::abs(said.high - stands.high) <= 0.02);
  };
  for (int r = 0; r < constants::region_count; ++r)
    for (int s = 0; s < constants::span_count; ++s) {
      CAPTURE(constants::region_names[r]);
      CAPTURE(constants::span_names[s]);
      const constants::Forecast said =
          forecast_in(runs, {}, static_cast<constants::Region>(r), static_cast<constants::Span>(s));
      const constants::Forecast& stands = constants::left_out[r].when[s];
      same(said.heat_made, stands.heat_made);
      same(said.core, stands.core);
      CHECK(stands.covered.of <= stands.covered.rows);
    }
  for (const JudgedRow& each : runs.rows) {
    bool stands = false;
    for (const constants::Conditions& study : constants::studied)
      stands = stands || body::is_near(each.at, study);
    CHECK_MESSAGE(stands, each.row.id());
  }
}

// Both are scored on the same rows; what the body before gives is a file of its own tree's numbers.
TEST_CASE(
    "the body in force is nearer to what was measured than the one before, by more than studies differ") {
  const Runs& runs = in_force();
  const Difference more = difference(runs.rows, of_model(runs), of_values(runs.rows, values_before()), 1);
  CHECK(more.rows >= 150);
  CHECK(more.second > more.first);
  CHECK(more.interval.low > 0);
}

TEST_CASE("a value from elsewhere is scored on the row it was made for, and on no other") {
  const std::vector<JudgedRow> rows{row("a", 10, 2, 0), row("b", 10, 2, 0)};
  ValueBefore value{"topic", "quantity", 10, 8, 12, 13};
  CHECK(of_values(rows, {value})[0]->error == doctest::Approx(1.5));
  value.high = 13;  // another interval: another question
  CHECK_FALSE(of_values(rows, {value})[0].has_value());
}

// A third rule broken, or one of the two met again, is news.
TEST_CASE("whole runs stand outside the rules in two places, each with its reason") {
  std::vector<std::string> outside;
  for (const Row& rule : whole_run_rows()) {
    if (rule.holds()) continue;
    outside.push_back(rule.quantity);
    CHECK_MESSAGE(rule.why.find("; ") != std::string::npos, rule.quantity);
  }
  CHECK(outside ==
        std::vector<std::string>{"core after a day at 21 degC, indoor clothes",
                                 "largest move of the core in half an hour, 10 degC in indoor clothes"});
}

TEST_CASE("the judge repeats, bit for bit, whatever the number of threads") {
  constexpr std::size_t draws = Surface::terms + 3;
  const auto all_it_says = [] {
    const Judgement j = judge(draws, 5);
    return judge_text(j) + judge_csv(j) +
           left_out_text(j.runs, j.candidates[model_with_error].scores, j.widths);
  };
  const std::string once = all_it_says();
  const oneapi::tbb::global_control one_thread(oneapi::tbb::global_control::max_allowed_parallelism, 1);
  CHECK(all_it_says() == once);
}

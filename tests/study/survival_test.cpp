#include "bide/study/statistics/survival.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <stdexcept>

#include "bide/study/statistics/proportion.hpp"
#include "support/near.hpp"

using namespace bide::study;
using bide::test::Near;

namespace {

// Weeks in remission under 6-MP, Freireich et al. (1963), as printed in Le, Introductory Biostatistics
// (2003), example 11.1; negative: still in remission then.
std::vector<Observed> remission() {
  std::vector<Observed> cases;
  for (const double week : {6.,   6.,   6.,   7.,   10.,  13.,  16.,  22.,  23.,  -6., -9.,
                            -10., -11., -17., -19., -20., -25., -32., -32., -34., -35.}) {
    cases.push_back({std::abs(week), week > 0});
  }
  return cases;
}

}  // namespace

TEST_CASE("Kaplan and Meier's curve of the 6-MP remissions") {
  // Shares are products by hand (18/21, 16/17, 14/15, 11/12, 10/11, 6/7, 5/6). Standard errors and log-log
  // intervals as textbooks and statistics packages print them for these data (from memory).
  struct Printed {
    double time;
    std::size_t at_risk, ended;
    double share, standard_error, low, high;
  };
  const std::vector<Printed> printed{
      {6, 21, 3, 0.8571, 0.0764, 0.6197, 0.9516},  {7, 17, 1, 0.8067, 0.0869, 0.5631, 0.9228},
      {10, 15, 1, 0.7529, 0.0963, 0.5032, 0.8894}, {13, 12, 1, 0.6902, 0.1068, 0.4316, 0.8491},
      {16, 11, 1, 0.6275, 0.1141, 0.3675, 0.8049}, {22, 7, 1, 0.5378, 0.1282, 0.2678, 0.7468},
      {23, 6, 1, 0.4482, 0.1346, 0.1881, 0.6801}};
  const auto curve = survival_curve(remission(), 0.95);
  REQUIRE(curve.steps.size() == printed.size());
  for (std::size_t i = 0; i < printed.size(); ++i) {
    CAPTURE(printed[i].time);
    CHECK(curve.steps[i].time == printed[i].time);
    CHECK(curve.steps[i].at_risk == printed[i].at_risk);
    CHECK(curve.steps[i].ended == printed[i].ended);
    CHECK(std::abs(curve.steps[i].share - printed[i].share) < 0.00006);
    CHECK(std::abs(curve.steps[i].standard_error - printed[i].standard_error) < 0.00006);
    CHECK(std::abs(curve.steps[i].interval.low - printed[i].low) < 0.00006);
    CHECK(std::abs(curve.steps[i].interval.high - printed[i].high) < 0.00006);
  }
  CHECK(curve.share_at(5.9) == 1);
  CHECK(*curve.share_at(6) == Near(6.0 / 7));
  CHECK(curve.share_at(35) == curve.steps.back().share);
  CHECK_FALSE(curve.share_at(35.1));  // nobody was watched any longer
  CHECK_FALSE(curve.interval_at(36));

  const auto median = time_quantile(curve, 0.5);
  CHECK(median.time == 23);
  CHECK(median.low == 13);   // the first lower end at or below 0.5
  CHECK_FALSE(median.high);  // the upper ends stay above it
  CHECK_FALSE(time_quantile(curve, 0.9).time);
}

TEST_CASE("mean of the time within the horizon") {
  // 6 + 0.85714 + 3 (0.80672 + 0.75294 + 0.69020) + 6 * 0.62745 + 0.53782 + 12 * 0.44818 = 23.287 by hand;
  // the standard error 2.83 as statistics packages print it (from memory).
  const auto curve = survival_curve(remission(), 0.95);
  const auto mean = restricted_mean(curve, 35);
  REQUIRE(mean);
  CHECK(std::abs(mean->mean - 23.287) < 0.001);
  CHECK(std::abs(mean->standard_error - 2.83) < 0.005);
  // Up to the second step: 6 + 6/7.
  CHECK(restricted_mean(curve, 7)->mean == Near(6 + 6.0 / 7));
  CHECK(restricted_mean(curve, 3)->mean == 3);
  CHECK(restricted_mean(curve, 3)->standard_error == 0);
  CHECK_FALSE(restricted_mean(curve, 36));
  // All ended: the plain mean, with the divisor n in its variance: 1 2 3 6: mean 3, 14/4/4.
  const std::vector<Observed> ended{{1, true}, {2, true}, {3, true}, {6, true}};
  const auto plain = restricted_mean(survival_curve(ended, 0.95), 100);
  CHECK(plain->mean == Near(3));
  CHECK(plain->standard_error == Near(std::sqrt(14.0 / 16)));
}

TEST_CASE("ends of the curve, where the log-log scale has no value") {
  // None of 20 ended by 10: Wilson's for 20 of 20, as none of 20 in Newcombe (1998) mirrored: 0.8389.
  const std::vector<Observed> lasting(20, Observed{10, false});
  const auto flat = survival_curve(lasting, 0.95);
  CHECK(flat.steps.empty());
  CHECK(std::abs(flat.interval_at(10)->low - 0.8389) < 0.00006);
  CHECK(flat.interval_at(10)->high == 1);
  // All 20 ended at 10: none lasts, at most 0.1611.
  const std::vector<Observed> gone(20, Observed{10, true});
  const auto zero = survival_curve(gone, 0.95);
  REQUIRE(zero.steps.size() == 1);
  CHECK(zero.steps[0].share == 0);
  CHECK(zero.steps[0].interval.low == 0);
  CHECK(std::abs(zero.steps[0].interval.high - 0.1611) < 0.00006);
  CHECK(zero.share_at(1000) == 0);
  CHECK_THROWS_AS(survival_curve({}, 0.95), std::invalid_argument);
  CHECK_THROWS_AS(survival_curve(std::vector<Observed>{{-1, true}}, 0.95), std::invalid_argument);
  CHECK_THROWS_AS(survival_curve(std::vector<Observed>{{std::nan(""), true}}, 0.95), std::invalid_argument);
}

TEST_CASE("quantiles of times watched to one horizon") {
  // Ten cases, three beyond 72. Ranks of the median of ten at 95 %: 2 and 9; the ninth lies beyond the
  // horizon.
  std::vector<Observed> cases{{50, true}, {5, true},  {12, true},  {8, true},   {30, true},
                              {20, true}, {40, true}, {72, false}, {72, false}, {72, false}};
  const auto median = quantile_by_rank(cases, 72, 0.5, 0.95);
  CHECK(median.time == 30);  // the fifth of 5 8 12 20 30 40 50
  CHECK(quantile_by_rank(cases, 72, 0.4, 0.95).time == 20);
  CHECK(median.low == 8);
  CHECK(median.high_known);
  CHECK_FALSE(median.high);
  const auto early = quantile_by_rank(cases, 72, 0.05, 0.95);
  CHECK(early.time == 5);
  CHECK_FALSE(early.low_known);  // ten cases say nothing below their earliest
  CHECK_FALSE(quantile_by_rank(cases, 72, 0.8, 0.95).time);
  cases[0] = {60, false};  // lost from sight before the horizon
  CHECK_THROWS_AS(quantile_by_rank(cases, 72, 0.5, 0.95), std::invalid_argument);
  cases[0] = {80, true};
  CHECK_THROWS_AS(quantile_by_rank(cases, 72, 0.5, 0.95), std::invalid_argument);
}

TEST_CASE("first, middle and last of a group") {
  const auto four = order_of_ends(std::vector<Observed>{{9, true}, {3, true}, {24, false}, {6, true}}, 24);
  CHECK(four.first == 3);
  CHECK(four.middle == 6);  // by then two of four
  CHECK_FALSE(four.last);
  const auto three = order_of_ends(std::vector<Observed>{{9, true}, {3, true}, {24, true}}, 24);
  CHECK(three.middle == 9);
  CHECK(three.last == 24);
  CHECK_FALSE(order_of_ends(std::vector<Observed>{{24, false}}, 24).first);
  CHECK_THROWS_AS(order_of_ends({}, 24), std::invalid_argument);
}

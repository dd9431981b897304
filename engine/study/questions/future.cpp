#include "bide/study/questions/future.hpp"
#include "bide/core/units.hpp"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

namespace bide::study {

namespace {

template <class Time, class Cause>
void in_order(const std::vector<PersonResult>& persons, Time time, Cause cause,
              std::array<float, who_count>& hours, std::array<system::Limit, who_count>& causes) {
  std::vector<const PersonResult*> sorted;
  for (const PersonResult& p : persons) sorted.push_back(&p);
  std::sort(sorted.begin(), sorted.end(), [&](const PersonResult* a, const PersonResult* b) {
    return std::pair(a->*time, a->*cause) < std::pair(b->*time, b->*cause);
  });
  const std::array<std::size_t, who_count> place{0, (sorted.size() + 1) / 2 - 1, sorted.size() - 1};
  for (std::size_t w = 0; w < who_count; ++w) {
    hours[w] = static_cast<float>(sorted[place[w]]->*time / hour_s);
    causes[w] = sorted[place[w]]->*cause;
  }
}

}  // namespace

Futures all_of(std::span<const Future> futures) {
  return [futures](const VisitFuture& visit) {
    for (const Future& f : futures) visit(f);
  };
}

Future future_of(const SampleResult& result, const Help& help, const std::optional<LaunchDrawn>& launch) {
  Future f;
  f.sample = result.index;
  in_order(result.persons, &PersonResult::able_until_s, &PersonResult::able_cause, f.able_h, f.able_cause);
  in_order(result.persons, &PersonResult::alive_until_s, &PersonResult::alive_cause, f.alive_h,
           f.alive_cause);
  const auto first = std::min_element(
      result.persons.begin(), result.persons.end(),
      [](const PersonResult& a, const PersonResult& b) { return a.able_until_s < b.able_until_s; });
  for (std::size_t p = 0; p < result.persons.size(); ++p)
    f.first_unable[p] =
        std::isfinite(first->able_until_s) && result.persons[p].able_until_s == first->able_until_s;
  f.coldest_inside_degC = static_cast<float>(result.coldest_inside_degC);
  f.water_out_h = static_cast<float>(result.water_out_s / hour_s);
  f.rescue_h = static_cast<float>(help.at_h);
  f.held_back_h = static_cast<float>(help.held_back_h);
  f.no_weather_for_help = help.no_weather;
  f.launch = launch;
  f.flares_left = static_cast<float>(result.flares_left);
  f.lamp_left_h = static_cast<float>(result.lamp_left_h);
  f.beacon_left_h = static_cast<float>(result.beacon_left_h);
  return f;
}

}  // namespace bide::study

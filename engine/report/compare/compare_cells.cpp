#include "bide/report/compare/compare_cells.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "bide/core/units.hpp"
#include "bide/outcome/cause.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report {

using outcome::Figures;

std::string cell(const std::optional<double>& at_s, double horizon_s) {
  return at_s ? duration(*at_s) : "not in " + horizon(horizon_s);
}

std::string ended_by(const Figures& figures) {
  constexpr auto none = system::Limit::none;
  if (figures.able_limit != none) return outcome::short_cause(figures.able_limit);
  return figures.next_limit == none ? "nothing" : "next: " + outcome::short_cause(figures.next_limit);
}

std::string stores_out(const Figures& figures) {
  std::vector<outcome::StoreOutcome> out;
  for (const outcome::StoreOutcome& store : figures.stores)
    if (store.state == outcome::StoreState::runs_out) out.push_back(store);
  std::stable_sort(out.begin(), out.end(), [](const auto& a, const auto& b) { return a.at_s < b.at_s; });
  std::string text;
  for (const outcome::StoreOutcome& store : out)
    text += fmt::format("{}{} {}", text.empty() ? "" : ", ", store.store, duration(store.at_s));
  return text.empty() ? "none" : text;
}

std::string coldest_inside(const Figures& figures) {
  if (!figures.coldest_inside) return "none";
  return temperature(figures.coldest_inside->degC) + (figures.coldest_inside->dark ? ", night" : ", day");
}

std::string foul_air(const Figures& figures) {
  if (!figures.in_raft) return "no cabin";
  return figures.foul_air_h > 0 ? duration(figures.foul_air_h * hour_s) : "never";
}

}  // namespace bide::report

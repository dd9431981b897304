#include "bide/outcome/cause.hpp"

#include <fmt/format.h>

#include "bide/core/digits.hpp"

namespace bide::outcome {
namespace {

std::string number(double value) {
  constexpr double groups_from = 1000;
  return value < groups_from ? fmt::format("{:.6g}", value) : with_thousands(fmt::format("{:.0f}", value));
}

}  // namespace

std::string short_cause(system::Limit limit) {
  return limit == system::Limit::none ? "" : system::row_of(limit).cause;
}

std::string plain_cause(system::Limit limit, const scenario::Limits& stated, const scenario::Person& person) {
  std::string out = short_cause(limit);
  if (limit == system::Limit::none) return out;
  const system::LimitRow& row = system::row_of(limit);
  if (*row.clause != '\0') out += fmt::format(": {}", row.clause);
  if (row.stated.member != nullptr)
    out += fmt::format(" {}{}",
                       number(scenario::own_core_level(row.by_person, stated.*row.stated.member,
                                                       person.core_limit_shift_K, person.fever_K)),
                       system::quantities[row.of].unit);
  return out;
}

}  // namespace bide::outcome

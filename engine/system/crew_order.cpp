#include "bide/system/crew_order.hpp"

#include <algorithm>
#include <tuple>
#include <type_traits>

namespace bide::system {

bool Member::operator<(const Member& other) const {
  const auto shared = [](const Member& m) { return std::tie(m.injured, m.aid, m.medicine); };
  if (shared(*this) != shared(other)) return shared(*this) < shared(other);
  static_assert(std::is_trivially_copyable_v<body::Build<double>>);  // nothing but numbers
  constexpr std::size_t count = sizeof(build) / sizeof(double);
  const auto* mine = reinterpret_cast<const double*>(&build);
  const auto* theirs = reinterpret_cast<const double*>(&other.build);
  return std::lexicographical_compare(mine, mine + count, theirs, theirs + count);
}

void sort_crew(std::vector<Member>& crew) {
  std::stable_sort(crew.begin(), crew.end());
}

}  // namespace bide::system

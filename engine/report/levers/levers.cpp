#include "bide/report/levers/levers.hpp"

#include <fmt/format.h>

#include "bide/core/notice.hpp"
#include "bide/report/levers/levers_words.hpp"
#include "bide/report/run/answer_lines.hpp"
#include "bide/report/run/range.hpp"
#include "bide/report/words/words.hpp"

namespace bide::report {
Answer levers_answer(const study::LeversTried& levers, const scenario::ValidScenario& scenario) {
  constexpr std::size_t most = 3;
  return answer_of({levers.base, scenario, levers.base_members}, most_bought_words(levers, most));
}

}  // namespace bide::report

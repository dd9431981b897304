// Raft, pack and hours to help, as text and as CSV.
//
// What differs comes first, for each water and hour; then the table: ranges of chances, each with what ends
// it. A range is the sampling error of the futures drawn.
#pragma once

#include <string>

#include "bide/report/words/text.hpp"
#include "bide/study/questions/choose.hpp"

namespace bide::report {

// @param width of a line, terminal columns; limited to [40, 80]
std::string choose_text(const study::Chosen& chosen, Letters letters, int width);
std::string choose_csv(const study::Chosen& chosen);

}  // namespace bide::report

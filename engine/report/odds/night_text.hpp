// The odds told from now on: for people whose ship was abandoned some hours ago.
//
// Times are counted from now, in UTC and local time; the late end is told beside the early one. Output as in
// odds.hpp.
#pragma once

#include <string>

#include "bide/report/words/answer.hpp"
#include "bide/report/words/text.hpp"
#include "bide/study/questions/ask_odds.hpp"

namespace bide::report {

// The answer in lines.
// @param material of from_now(), asked with hours_from_now()
Answer night_answer(const study::OddsAnswer& material);
// The same as plain text, with the shares from now on.
// @param material of from_now(), asked with hours_from_now()
// @param width    of a line, terminal columns; limited to [40, 80]
// @param letters  what may be printed
// @param full     what was drawn and what it rests on as well
std::string night_text(const study::OddsAnswer& material, int width, Letters letters, bool full);

// What the futures run so far say, on one line.
// @param odds  at hours_from_now()
// @param now_h hours after the start
std::string night_so_far(const study::Odds& odds, double now_h);

}  // namespace bide::report

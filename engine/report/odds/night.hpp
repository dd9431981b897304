// The odds told from now on: for people whose ship was abandoned some hours ago.
//
// Times are counted from now, in UTC and local time; the late end is told beside the early one.
#pragma once

#include <string>

#include "bide/report/document/document.hpp"
#include "bide/report/words/answer.hpp"
#include "bide/study/questions/ask_odds.hpp"

namespace bide::report {

// The answer in lines.
// @param material of from_now(), asked with hours_from_now()
Answer night_answer(const study::OddsAnswer& material);
// Shares from now on, by the clock.
document::Section from_now_section(const study::OddsAnswer& material);
// What is not known and was drawn from priors.
document::Section drawn_section(const study::OddsAnswer& material);

// What the futures run so far say, on one line.
// @param odds  at hours_from_now()
// @param now_h hours after the start
std::string night_so_far(const study::Odds& odds, double now_h);

}  // namespace bide::report

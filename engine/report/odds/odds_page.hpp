// The page of odds: the window with its ranges, who is still able and alive against time, what ends it, help
// as stated, which unknown to ask for, and the two kinds of not knowing.
#pragma once

#include "bide/report/html/page.hpp"
#include "bide/report/odds/odds.hpp"

namespace bide::report::pages {

html::Page odds_page(const OddsMaterial& material);

}  // namespace bide::report::pages

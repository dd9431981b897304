// The page of odds: the window with its ranges, shares able and alive against time, causes, help as stated,
// the unknowns by expected variance reduction, and aleatory and epistemic spread.
#pragma once

#include "bide/report/document/document.hpp"
#include "bide/report/odds/odds.hpp"

namespace bide::report::pages {

document::Page odds_page(const study::OddsAnswer& material);

}  // namespace bide::report::pages

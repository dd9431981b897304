// The comparison with published findings as a page for a browser.
#pragma once

#include <vector>

#include "bide/report/document/document.hpp"
#include "validation/curve.hpp"

namespace bide::tool {

report::document::Page validation_page(const std::vector<validation::Row>& rows,
                                       const std::vector<validation::Curve>& curves);

}  // namespace bide::tool

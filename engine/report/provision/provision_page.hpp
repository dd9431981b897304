// The page of the least kit that meets a target: the kit and what it weighs, or that there is none and what
// ends it. Shares are those of the futures drawn, with the exact lower bound beside them.
#pragma once

#include "bide/report/document/document.hpp"
#include "bide/study/questions/provision.hpp"

namespace bide::report::pages {

document::Page provision_page(const study::Provision& provision);

}  // namespace bide::report::pages

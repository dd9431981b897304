// Raft, pack and hours to help, as a page.
#pragma once

#include "bide/report/html/page.hpp"
#include "bide/study/questions/choose.hpp"

namespace bide::report::pages {

html::Page choose_page(const study::Chosen& chosen);

}  // namespace bide::report::pages

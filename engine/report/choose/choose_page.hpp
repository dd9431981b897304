// Raft, pack and hours to help, as a page.
#pragma once

#include "bide/report/document/document.hpp"
#include "bide/study/questions/choose.hpp"

namespace bide::report::pages {

document::Page choose_page(const study::Chosen& chosen);

}  // namespace bide::report::pages

// Raft, pack and hours to help as CSV. A range is the sampling error of the futures drawn.
#pragma once

#include <string>

#include "bide/study/questions/choose.hpp"

namespace bide::report {

std::string choose_csv(const study::Chosen& chosen);

}  // namespace bide::report

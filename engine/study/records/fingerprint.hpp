// Which model made a result: stands for the engine's sources and what they were compiled for.
#pragma once

#include <string_view>

namespace bide::study {

// The same for two builds whose results are the same bits.
std::string_view fingerprint();

}  // namespace bide::study

// Identifies the model that made a result: the engine's sources and the processor they were compiled for.
#pragma once

#include <string_view>

namespace bide::study {

// The same for two builds whose results are the same bits.
std::string_view fingerprint();

}  // namespace bide::study

// Identifies the model that made a result: the engine's sources and the processor they were compiled for.
#pragma once

#include <string_view>

namespace bide::study {

// The same for two builds whose results are the same bits.
std::string_view fingerprint();

// What made a result, for those who must repeat it.
struct Build {
  std::string_view version;          // "0.1.0"
  std::string_view fingerprint;      // as above
  std::string_view compiler;         // "GNU 12.2.0"
  std::string_view instruction_set;  // "x86-64-v3", or "x86_64 baseline"
};
Build build();

}  // namespace bide::study

// The two lines that stand on every output, word for word.
#pragma once

#include <string_view>

namespace bide {

inline constexpr std::string_view standing_notice =
    "Planning and training aid. Not a forecast for named people. Never a reason to end, delay or narrow a "
    "search. Rescue belongs to the coordination centre.";

inline constexpr std::string_view standing_advice =
    "Follow local law, the raft's own instructions, approved service stations and licensed medical advice. "
    "Sea water and urine are not drinking water.";

}  // namespace bide

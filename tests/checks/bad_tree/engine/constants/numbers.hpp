#pragma once
inline constexpr Sourced good_W{1, "W", "known2001", "table 1; with a { in it", Trust::seen, 0.5, 2};
inline constexpr Sourced unknown_W{1, "W", "absent2002", "table 1", Trust::seen};
inline constexpr Sourced no_trust_W{1, "W", "known2001", "table 1", 0};
inline constexpr Sourced no_key_W{1, "W", "", "table 1", Trust::second_hand};
inline constexpr Sourced no_where_W{1, "W", "known2001", "", Trust::seen};
inline constexpr Sourced no_unit_W{1, "", "known2001", "table 1", Trust::seen};
inline constexpr Sourced outside_W{3, "W", "known2001", "table 1", Trust::seen, 0.5, 2};
#define BIDE_MADE(name, value) inline constexpr Sourced name{value, "W", "macro2003", "table 1", Trust::seen};
BIDE_MADE(made_W, 4)
#undef BIDE_MADE
inline constexpr Number hidden_W{4, "W", "known2001", "table 1", Trust::seen};

// The flags of `bide odds` without a scenario file: what is known of people in distress.
#pragma once

#include <fmt/format.h>

#include <optional>
#include <string>
#include <variant>

#include "arguments.hpp"
#include "bide/core/units.hpp"
#include "bide/scenario/situation.hpp"

namespace bide::tool {

struct NightFlags {
  std::optional<int> persons, month;
  std::optional<std::string> crew, abandoned, place, raft, clothing, boarding, last_contact, name,
      first_minutes;
  std::optional<double> sea_degC, air_degC, wind_m_s;
  std::string ahead = fmt::format("{:g}d", scenario::Situation{}.ahead_h* hour_s / day_s);

  bool any() const;  // whether anything but `ahead` was given
};

// Who they are, what they wear, how the raft is reached, and the sea.
void add_setting_flags(Command& command, NightFlags& flags, const Argument& scenario_file);
// All of them.
void add_night_flags(Command& command, NightFlags& flags, const Argument& scenario_file);

// What is known, from the flags.
// @param now an instant in UTC; empty: this machine's clock, to the minute
// @return the situation; or what is wrong, each with the name of its flag as the pointer
std::variant<scenario::Situation, scenario::Diagnostics> situation_of(const NightFlags& flags,
                                                                      const std::optional<std::string>& now);

}  // namespace bide::tool

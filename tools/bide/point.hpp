// Numbers and places as people type them.
#pragma once

#include <charconv>
#include <cmath>
#include <optional>
#include <string_view>

#include "bide/climate/climate.hpp"

namespace bide::tool {

// A number that is the whole text, spaces around it apart; empty for anything else.
template <class T>
std::optional<T> number_in(std::string_view text) {
  const std::size_t begin = text.find_first_not_of(' '), end = text.find_last_not_of(' ') + 1;
  if (begin == std::string_view::npos) return {};
  T value{};
  const auto [stop, wrong] = std::from_chars(text.data() + begin, text.data() + end, value);
  if (wrong != std::errc() || stop != text.data() + end) return {};
  return value;
}

// "latitude,longitude" in degrees; empty where it is not two numbers. Any numbers: ask on_earth().
inline std::optional<climate::Point> point_in(std::string_view text) {
  const std::size_t comma = text.find(',');
  if (comma == std::string_view::npos) return {};
  const auto latitude = number_in<double>(text.substr(0, comma));
  const auto longitude = number_in<double>(text.substr(comma + 1));
  if (!latitude || !longitude) return {};
  return climate::Point{*latitude, *longitude};
}

inline bool on_earth(const climate::Point& point) {
  constexpr double quarter_turn = 90, half_turn = 180;
  return std::abs(point.latitude_deg) <= quarter_turn && std::abs(point.longitude_deg) <= half_turn;
}

}  // namespace bide::tool

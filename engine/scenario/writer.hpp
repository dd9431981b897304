// From the structs to JSON, through describe(); what is empty is left out. Only inside this folder: others
// call the functions of write.hpp, which give text.
#pragma once

#include <cmath>
#include <cstdint>
#include <nlohmann/json.hpp>

#include "bide/scenario/reader.hpp"

namespace bide::scenario {

using Json = nlohmann::ordered_json;

template <class T>
Json to_json(const T& value);

template <class S>
Json object_to_json(const S& from) {
  Json out = Json::object();
  describe(As<S>{}, [&](auto member, const Field& field) {
    using M = std::remove_cvref_t<decltype(from.*member)>;
    const std::string key(field.key);
    const M& value = from.*member;
    if constexpr (!std::is_same_v<M, Plain<M>>) {
      if (value) out[key] = to_json(*value);
    } else if constexpr (detail::is_list<M>) {
      if (!value.empty() || field.absent.kind == Absent::Kind::required) out[key] = to_json(value);
    } else if constexpr (detail::is_named<M>) {
      if (!value.entries.empty()) out[key] = to_json(value);
    } else {
      out[key] = to_json(value);
    }
  });
  return out;
}

template <class T>
Json to_json(const T& value) {
  if constexpr (std::is_same_v<T, double>) {
    constexpr double exact = 1e15;  // whole numbers below this are written without ".0"
    if (value == std::floor(value) && std::abs(value) < exact) return static_cast<std::int64_t>(value);
    return value;
  } else if constexpr (std::is_arithmetic_v<T> || std::is_same_v<T, std::string>) {
    return value;
  } else if constexpr (std::is_enum_v<T>) {
    return std::string(word(value));
  } else if constexpr (std::is_same_v<T, Value>) {
    return std::visit(
        [](const auto& held) -> Json {
          if constexpr (std::is_same_v<std::remove_cvref_t<decltype(held)>, std::monostate>)
            return nullptr;
          else
            return to_json(held);
        },
        value);
  } else if constexpr (detail::is_named<T>) {
    Json out = Json::object();
    for (const auto& [key, entry] : value.entries) out[key] = to_json(entry);
    return out;
  } else if constexpr (detail::is_list<T> || detail::is_numbers<T>) {
    Json out = Json::array();
    for (const auto& item : value) out.push_back(to_json(item));
    return out;
  } else {
    return object_to_json(value);
  }
}

}  // namespace bide::scenario

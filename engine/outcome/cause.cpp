#include "bide/outcome/cause.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "bide/core/digits.hpp"

namespace bide::outcome {
namespace {

bool has(std::string_view text, std::string_view word) {
  return text.find(word) != std::string_view::npos;
}

struct Kind {
  const char* word;
  const char* short_words;
};

// The first match counts: "able_core_low" is cold before it could be anything else.
const Kind kinds[] = {
    {"core_low", "cold"},
    {"unconscious_core", "cold"},
    {"core_high", "heat"},
    {"water_deficit", "water loss"},
    {"osmolality", "salt in the blood"},
    {"co2", "foul air"},
    {"lethal_fat", "hunger"},
    {"protein", "hunger"},
    {"bmi", "hunger"},
    {"starv", "hunger"},
    {"airway", "loss of airway protection"},
    {"unconscious", "unconsciousness"},
};

std::string with_blanks(std::string_view name) {
  std::string text(name);
  std::replace(text.begin(), text.end(), '_', ' ');
  return text;
}

std::string value(const std::optional<double>& limit, std::string_view unit) {
  if (!limit) return "its limit";
  constexpr double groups_from = 1000;
  const std::string digits =
      *limit < groups_from ? fmt::format("{:.6g}", *limit) : with_thousands(fmt::format("{:.0f}", *limit));
  return fmt::format("{}{}", digits, unit);
}

}  // namespace

std::string short_cause(std::string_view limit) {
  for (const Kind& kind : kinds) {
    if (has(limit, kind.word)) return kind.short_words;
  }
  return with_blanks(limit);
}

std::string plain_cause(std::string_view limit, const scenario::Limits& limits) {
  const bool lethal = has(limit, "lethal");
  if (has(limit, "unconscious_core")) {
    return "cold: core temperature below " + value(limits.unconscious_core_degC, " C");
  }
  if (has(limit, "core_low")) {
    return "cold: core temperature below " +
           value(lethal ? limits.lethal_core_low_degC : limits.able_core_low_degC, " C");
  }
  if (has(limit, "core_high")) {
    return "heat: core temperature above " +
           value(lethal ? limits.lethal_core_high_degC : limits.able_core_high_degC, " C");
  }
  if (has(limit, "water_deficit")) {
    return "water loss: more than " +
           value(lethal ? limits.lethal_water_deficit_pct : limits.able_water_deficit_pct, " % of body mass");
  }
  if (has(limit, "osmolality")) {
    return "salt in the blood: above " + value(limits.lethal_osmolality_mOsm_kg, " mOsm/kg");
  }
  if (has(limit, "co2")) {
    return "foul air: CO2 above " + value(lethal ? limits.lethal_co2_ppm : limits.able_co2_ppm, " ppm");
  }
  if (has(limit, "lethal_fat")) return "hunger: body fat used up";
  if (has(limit, "protein")) return "hunger: too much body protein used";
  if (has(limit, "bmi")) return "hunger: body mass too low";
  return short_cause(limit);
}

}  // namespace bide::outcome

// Valid scenarios, drawn from the JSON Schema: a field that the schema gains is drawn without an edit here.
//
// Every number is drawn by the name of its place, so that a new field leaves the others as they were. What
// the schema cannot say (rules between fields) is met by trial: a draw that is refused is mended where the
// messages point, by leaving an optional field out or drawing it anew.
//
// Not drawn: `uncertain`, which a single run leaves aside, and weather from files, which tests/weather has.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <nlohmann/json.hpp>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "bide/core/random.hpp"
#include "bide/scenario/catalogue.hpp"
#include "bide/scenario/validate.hpp"
#include "bide/scenario/write.hpp"

namespace bide::test {

using nlohmann::json;

enum class Mode {
  ordinary,  // what people and weather at sea are like
  edges      // the whole range of every field, its ends as often as not
};

struct Drawn {
  json file;
  scenario::ValidScenario valid;
};

namespace detail {

struct Range {
  std::string_view pointer;
  double low, high;
};

// In the ordinary mode a number stays in the middle of its range (a quarter of the way from its default to
// either end, where it has a default), but here.
inline constexpr std::array ordinary_ranges{Range{"/position/latitude_deg", -65, 70},
                                            Range{"/weather/air_temperature_degC", -12, 36},
                                            Range{"/weather/water_temperature_degC", -1.8, 31},
                                            Range{"/weather/relative_humidity_pct", 35, 100},
                                            Range{"/weather/wind_speed_m_s", 0, 25},
                                            Range{"/weather/cloud_cover_fraction", 0, 1},
                                            Range{"/weather/rain_mm_h", 0, 10},
                                            Range{"/weather/wave_height_m", 0, 7},
                                            Range{"/weather/wave_period_s", 3, 12},
                                            Range{"/weather/air_temperature_swing_K", 0, 6},
                                            Range{"/raft/floor_area_m2", 1.5, 12},
                                            Range{"/raft/capacity_persons", 4, 25},
                                            Range{"/raft/canopy_height_m", 0.8, 1.6},
                                            Range{"/raft/opening_area_m2", 0.2, 3},
                                            Range{"/raft/canopy_heat_loss_position", 0, 1},
                                            Range{"/raft/leakage_position", 0, 1},
                                            Range{"/crew/*/age_years", 16, 75},
                                            Range{"/crew/*/height_m", 1.5, 1.95},
                                            Range{"/crew/*/mass_kg", 50, 110},
                                            Range{"/crew/*/body_fat_pct", 10, 40},
                                            Range{"/crew/*/vo2max_mL_kg_min", 18, 60},
                                            Range{"/crew/*/hours_since_meal_h", 0, 24},
                                            Range{"/crew/*/water_deficit_pct", 0, 3},
                                            Range{"/crew/*/exertion_met", 1, 8},
                                            Range{"/boarding/minutes_in_water", 0, 60},
                                            Range{"/boarding/water_shipped_L", 0, 60},
                                            Range{"/routine/opening_fraction_day", 0, 1},
                                            Range{"/routine/opening_fraction_night", 0, 1},
                                            Range{"/stores/extra/*/quantity", 0, 20},
                                            Range{"/routine/bail_every_h", 0.25, 8}};
// In both modes, so that runs are short enough to make many, and their steps are long as often as not.
inline constexpr std::array short_runs{Range{"/duration_h", 2, 12}, Range{"/output_interval_min", 1, 30},
                                       Range{"/failures/*/at_h", 0, 3}};
inline constexpr std::array fewest_most{Range{"/crew", 1, 6}, Range{"/failures", 0, 3},
                                        Range{"/stores/extra", 0, 4}};

template <std::size_t N>
const Range* find(const std::array<Range, N>& ranges, std::string_view pointer) {
  for (const Range& each : ranges)
    if (each.pointer == pointer) return &each;
  return nullptr;
}

// What a text may say; every text field of the schema needs its own.
inline std::vector<std::string> texts_of(std::string_view pointer) {
  std::vector<std::string> out;
  const auto keys = [&](const auto& kinds) {
    for (const auto& kind : kinds) out.emplace_back(kind.key);
  };
  if (pointer == "/raft/kind") keys(scenario::catalogue().rafts);
  if (pointer == "/crew/*/clothing") keys(scenario::catalogue().ensembles);
  if (pointer == "/crew/*/gloves") keys(scenario::catalogue().gloves);
  if (pointer == "/crew/*/boots") keys(scenario::catalogue().boots);
  if (pointer == "/stores/pack") keys(scenario::catalogue().packs);
  if (pointer == "/stores/extra/*/kind") keys(scenario::catalogue().items);
  if (pointer == "/start_time_utc")
    out = {"2031-01-15T02:00:00Z", "2031-06-21T12:00:00Z", "2031-09-30T18:30:00Z"};
  if (pointer.starts_with("/readiness/")) out = {"2024-02-29", "2030-12-31", "2033-05-01"};
  if (pointer == "/name" || pointer == "/crew/*/food_allergy" || pointer == "/setting")
    out = {"a", "=1+1, \"quoted\"", "<b>&amp;</b>", "\u6d77 na\u00efve"};
  return out;
}

class Generator {
 public:
  Generator(Mode mode, std::uint64_t seed, std::uint64_t sample)
      : mode_(mode), seed_(seed), sample_(sample), schema_(schema()) {}

  json object(const json& part, const std::string& pointer) {
    json out = json::object();
    const json required = part.value("required", json::array());
    for (const auto& [key, field] : part.at("properties").items()) {
      const std::string here = pointer + "/" + key;
      if (!drawn(here)) continue;
      const bool must = std::find(required.begin(), required.end(), key) != required.end();
      constexpr double stated = 0.4;
      if (must || uniform_at(here + "?") < stated) out[key] = value(field, here);
    }
    return out;
  }

  // A field's part of the schema, by its pointer.
  const json& field_at(const std::string& pointer) const {
    const json* at = &schema_;
    for (const std::string& key : keys_of(pointer)) {
      at = &followed(*at);
      at = at->contains("items") ? &at->at("items") : &at->at("properties").at(key);
    }
    return *at;
  }

  json value(const json& stated, const std::string& pointer) {
    const json& field = followed(stated);
    if (field.contains("const")) return field["const"];
    if (field.contains("enum")) return word(field["enum"], pointer);
    const std::string type = field.at("type");
    if (type == "object") return object(field, pointer);
    if (type == "boolean") return uniform_at(pointer) < 0.5;
    if (type == "array") return array(field, pointer);
    if (type == "string") return one_of(texts_of(scenario::any_index(pointer)), pointer);
    const double x = number(field, pointer);
    if (type == "integer") return static_cast<int>(std::lround(x));
    return x;
  }

  // The field is left out if it may be; drawn anew, or drawn, if not.
  void mend(json& file, const std::string& pointer) {
    const json::json_pointer at(pointer);
    const bool there = file.contains(at);
    const bool must = required(pointer);
    if (there && !must) {
      json& parent = file[at.parent_pointer()];
      if (parent.is_object()) parent.erase(at.back());
    } else if (!there || drawn(pointer)) {
      ++draw_;
      file[at] = value(field_at(pointer), pointer);
    }
  }

  static const json& schema() {
    static const json read = json::parse(scenario::json_schema());
    return read;
  }

 private:
  Mode mode_;
  std::uint64_t seed_, sample_;
  const json& schema_;
  std::uint32_t draw_ = 0;

  static bool drawn(const std::string& pointer) {
    return pointer != "/uncertain" && pointer != "/weather/file" && pointer != "/weather/fallback" &&
           pointer != "/weather/longest_gap_h" && pointer != "/weather/anemometer_height_m";
  }

  double uniform_at(const std::string& name) const { return uniform(seed_, sample_, stream_of(name), draw_); }

  const json& followed(const json& field) const {
    if (!field.contains("$ref")) return field;
    const std::string path = field["$ref"];
    return schema_.at(json::json_pointer(path.substr(1)));
  }

  static std::vector<std::string> keys_of(const std::string& pointer) {
    std::vector<std::string> out;
    for (json::json_pointer left(pointer); !left.empty(); left.pop_back())
      out.insert(out.begin(), left.back());
    return out;
  }

  bool required(const std::string& pointer) const {
    const json::json_pointer at(pointer);
    if (at.empty()) return true;
    const json& parent = followed(field_at(at.parent_pointer().to_string()));
    const json keys = parent.value("required", json::array());
    return std::find(keys.begin(), keys.end(), at.back()) != keys.end();
  }

  json word(const json& words, const std::string& pointer) const {
    std::vector<std::string> out;
    for (const std::string each : words)
      if (pointer != "/weather/kind" || (each != "csv" && each != "ndbc")) out.push_back(each);
    return one_of(out, pointer);
  }

  std::string one_of(const std::vector<std::string>& texts, const std::string& pointer) const {
    if (texts.empty()) throw std::logic_error("no texts to draw " + pointer + " from");
    return texts[static_cast<std::size_t>(uniform_at(pointer) * static_cast<double>(texts.size()))];
  }

  json array(const json& field, const std::string& pointer) {
    const Range* few = find(fewest_most, pointer);
    const double fewest = few ? few->low : field.value("minItems", 0.0);
    const double most = few ? few->high : fewest + 2;
    const auto count = static_cast<int>(fewest + uniform_at(pointer) * (most - fewest + 1));
    json out = json::array();
    for (int i = 0; i < count; ++i)
      out.push_back(value(field.at("items"), pointer + "/" + std::to_string(i)));
    return out;
  }

  double number(const json& field, const std::string& pointer) const {
    const std::string any = scenario::any_index(pointer);
    double low = field.at("minimum"), high = field.at("maximum");
    const double u = uniform_at(pointer);
    constexpr double third = 1.0 / 3, quarter = 0.25;
    if (const Range* bounds = find(short_runs, any)) {
      low = bounds->low, high = bounds->high;
    } else if (any == "/weather/water_temperature_degC" && mode_ == Mode::ordinary) {
      // Air over the sea takes its temperature: seldom more than 8 K colder or 4 K warmer.
      constexpr double warmer_sea_K = 8, colder_sea_K = -4;
      const double air = number(field_at("/weather/air_temperature_degC"), "/weather/air_temperature_degC");
      const Range* sea = find(ordinary_ranges, any);
      return std::clamp(air + colder_sea_K + u * (warmer_sea_K - colder_sea_K), sea->low, sea->high);
    } else if (mode_ == Mode::edges) {
      if (u < third) return low;
      if (u > 1 - third) return high;
      return low + (high - low) * (u - third) / third;
    } else if (const Range* ordinary = find(ordinary_ranges, any)) {
      low = ordinary->low, high = ordinary->high;
    } else {
      const double middle = field.value("default", 0.5 * (low + high));
      low = middle - quarter * (middle - low), high = middle + quarter * (high - middle);
    }
    return low + u * (high - low);
  }
};

}  // namespace detail

// Depends on its arguments alone. Empty where mending does not come to a valid scenario.
inline std::optional<Drawn> any_scenario(Mode mode, std::uint64_t seed, std::uint64_t sample) {
  detail::Generator generator(mode, seed, sample);
  json file = generator.object(detail::Generator::schema(), "");
  constexpr int most_mendings = 30;
  for (int i = 0; i < most_mendings; ++i) {
    auto validated = scenario::validate_text(file.dump(), "generated.json", ".");
    if (auto* valid = std::get_if<scenario::ValidScenario>(&validated))
      return Drawn{std::move(file), std::move(*valid)};
    for (const auto& wrong : std::get<scenario::Diagnostics>(validated)) generator.mend(file, wrong.pointer);
  }
  return std::nullopt;
}

}  // namespace bide::test

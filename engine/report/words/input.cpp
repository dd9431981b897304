#include "bide/report/words/input.hpp"

#include <algorithm>
#include <cctype>
#include <cstdlib>
#include <string_view>
#include <vector>

#include "bide/core/people.hpp"
#include "bide/report/words/units.hpp"
#include "bide/scenario/write.hpp"

namespace bide::report {
namespace {

std::string with_blanks(std::string text) {
  std::replace(text.begin(), text.end(), '_', ' ');
  return text;
}

bool is_index(const std::string& part) {
  return !part.empty() &&
         std::all_of(part.begin(), part.end(), [](unsigned char c) { return std::isdigit(c); });
}

// The ending of a key that tells its unit: "m/s" stands as "_m_s", "L per person and day" as "_L_per_day".
std::string suffix_of(const std::string& unit) {
  if (unit == "%") return "_pct";
  constexpr std::string_view each_day = " per person and day";
  if (unit.ends_with(each_day)) return "_" + unit.substr(0, unit.size() - each_day.size()) + "_per_day";
  std::string out = "_" + unit;
  std::replace(out.begin(), out.end(), '/', '_');
  return out;
}

std::string without_unit(std::string key, const std::string& pointer) {
  const auto fields = scenario::field_lines();
  const std::string any = scenario::any_index(pointer);
  const auto known =
      std::find_if(fields.begin(), fields.end(), [&](const auto& f) { return f.pointer == any; });
  std::vector<std::string> endings{"_position", "_fraction"};
  if (known != fields.end() && !known->unit.empty()) endings.push_back(suffix_of(known->unit));
  for (const std::string& ending : endings)
    if (key.size() > ending.size() && key.ends_with(ending)) key.erase(key.size() - ending.size());
  return key;
}

}  // namespace

std::string file_alone(const std::string& name) {
  return name.substr(0, name.find(" with /"));
}

std::string input_words(const std::string& name) {
  if (!name.starts_with('/')) {
    const std::size_t kind = name.starts_with("event ") ? name.find(": ") : std::string::npos;
    return with_blanks(kind == std::string::npos ? name : name.substr(kind + 2));
  }
  std::vector<std::string> parts;
  for (std::size_t at = 1; at <= name.size();) {
    const std::size_t end = std::min(name.find('/', at), name.size());
    parts.push_back(name.substr(at, end - at));
    at = end + 1;
  }
  std::string out;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    std::string word = i + 1 == parts.size() ? without_unit(parts[i], name) : parts[i];
    if (is_index(word)) word = std::to_string(std::atoi(word.c_str()) + 1);
    if (parts[i] == "crew" && i + 1 < parts.size() && is_index(parts[i + 1]))
      word = person_label(std::atoi(parts[++i].c_str()));
    out += (out.empty() ? "" : i == 1 || (i == 2 && parts[0] == "crew") ? ": " : " ") + with_blanks(word);
  }
  return out;
}

std::string setting_words(const std::string& pointer, const std::string& written) {
  using Holds = scenario::FieldLine::Holds;
  std::string name = input_words(pointer);
  constexpr std::string_view every = " every";
  if (name.ends_with(every) && written == "0") return name.erase(name.size() - every.size()) + " never";
  const auto fields = scenario::field_lines();
  const std::string any = scenario::any_index(pointer);
  const auto field =
      std::find_if(fields.begin(), fields.end(), [&](const auto& f) { return f.pointer == any; });
  if (field == fields.end()) return name + " " + written;
  if (field->holds == Holds::truth) return name + (written == "true" ? ": yes" : ": no");
  if (field->holds == Holds::word || field->holds == Holds::text) return name + " " + with_blanks(written);
  const std::string& unit = field->unit;
  if (unit.empty() || unit == "1" || name.ends_with(unit)) return name + " " + written;
  return name + " " + written + " " + unit_signs(unit);
}

}  // namespace bide::report

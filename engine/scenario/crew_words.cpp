#include "bide/scenario/crew_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "bide/core/csv.hpp"
#include "bide/scenario/patch.hpp"
#include "bide/scenario/priors.hpp"
#include "bide/scenario/words.hpp"

namespace bide::scenario {
namespace {

constexpr std::string_view between = " ,\t";

std::optional<KnownPerson> person_in(std::string_view entry) {
  KnownPerson out;
  if (entry[0] == 'M' || entry[0] == 'm')
    out.sex = Sex::male;
  else if (entry[0] == 'F' || entry[0] == 'f')
    out.sex = Sex::female;
  else
    return std::nullopt;
  std::vector<std::string_view> parts;
  for (std::string_view rest = entry.substr(1);;) {
    const std::size_t colon = rest.find(':');
    parts.push_back(rest.substr(0, colon));
    if (colon == std::string_view::npos) break;
    rest.remove_prefix(colon + 1);
  }
  constexpr std::size_t most_parts = 3;
  const auto age = parse_number(parts[0]);
  if (!age || parts.size() > most_parts) return std::nullopt;
  out.age_years = *age;
  if (parts.size() > 1 && !parts[1].empty() && !(out.mass_kg = parse_number(parts[1]))) return std::nullopt;
  if (parts.size() > 2 && !parts[2].empty() && !(out.height_m = parse_number(parts[2]))) return std::nullopt;
  return out;
}

}  // namespace

std::variant<std::vector<KnownPerson>, std::string> read_crew(std::string_view text) {
  std::vector<KnownPerson> out;
  for (std::size_t at = text.find_first_not_of(between); at != std::string_view::npos;
       at = text.find_first_not_of(between, at)) {
    const std::size_t end = std::min(text.find_first_of(between, at), text.size());
    const std::string_view entry = text.substr(at, end - at);
    const auto person = person_in(entry);
    if (!person)
      return fmt::format(
          "found {}; allowed M or F and the age, then mass in kg and height in m where known, "
          "as \"M40 F38 M12:45:1.52\"",
          in_quotes(entry));
    out.push_back(*person);
    at = end;
  }
  if (out.empty()) return std::string("found nobody; allowed one person or more, as \"M40 F38\"");
  return out;
}

Node person_node(const KnownPerson& person) {
  constexpr double hundredths = 100, tenths = 10;  // no closer than people know their own
  const Size usual = usual_size(person.sex, std::clamp(person.age_years, 1.0, 100.0));
  const double height_m = person.height_m.value_or(std::round(usual.height_m * hundredths) / hundredths);
  const double mass_kg = person.mass_kg.value_or(std::round(usual.mass_kg * tenths) / tenths);
  Node out = empty_object();
  put(out, "/sex", std::string(word(person.sex)));
  put(out, "/age_years", person.age_years);
  put(out, "/height_m", height_m);
  put(out, "/mass_kg", mass_kg);
  return out;
}

}  // namespace bide::scenario

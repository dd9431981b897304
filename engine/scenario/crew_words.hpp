// A crew in a few words, "M40 F38 M12:45:1.52": sex and age, then mass in kg and height in m where known.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "bide/scenario/document.hpp"
#include "bide/scenario/scenario.hpp"

namespace bide::scenario {

struct KnownPerson {
  Sex sex = Sex::male;
  double age_years = 0;
  std::optional<double> mass_kg, height_m;

  bool operator==(const KnownPerson&) const = default;
};

// Reads a crew: entries parted by blanks or commas, M or F, the age in years; ":mass", "::height" or
// ":mass:height" behind it. Ranges are checked by validation, like those of any file.
// @return the people; or what was found and what is allowed
std::variant<std::vector<KnownPerson>, std::string> read_crew(std::string_view text);

// The person as an entry of "crew"; what is not known of the size is usual for sex and age (priors.hpp).
Node person_node(const KnownPerson& person);

}  // namespace bide::scenario

// Odds in the words that text and page share.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "bide/report/odds/odds.hpp"
#include "bide/report/words/answer.hpp"

namespace bide::report {

inline constexpr std::array crew_order{"first person", "half of the crew", "last person"};

std::string odds_hours(const std::optional<double>& h,
                       double horizon_h);        // "14 h", "after 5 d", "before now"
std::string share(double value);                 // "12 %", "under 1 %"
std::string share(const study::Chance& chance);  // with its interval
// "48 h to 96 h (8 in 10 cases)": hours until help as the scenario states them.
std::string rescue_words(const scenario::Rescue& rescue);
std::string odds_range(const study::Window& window, double horizon_h);  // "14 h to 41 h (8 in 10 futures)"

// "the first person is no longer able: cold in 39 % of futures within 3 d; no longer alive: cold in 37 %".
// @param end what is said of the time looked at: "within 3 d"
std::string ends_by(const study::OddsAnswer& material, const std::string& end);

// What to ask next, and by how much an answer would narrow the first person's able until.
// @param most questions, at least 1
std::string ask_words(const study::OddsAnswer& material, std::size_t most);

// Over the futures: "most often Person B (woman, 41): first in 32 % of all futures"; "coldest 3 °C to 9 °C (8
// in 10 futures)"; "out within 3 d in 60 % of futures, half of these by 41 h".
std::string who_first(const study::OddsAnswer& material);
std::string inside_line(const study::OddsAnswer& material);
std::string water_line(const study::OddsAnswer& material);
// Losses in the first minutes in the water; empty where the scenario states none.
std::string first_minutes_line(const study::OddsAnswer& material);

// The answer in lines.
Answer odds_answer(const study::OddsAnswer& material);

std::vector<std::string> given_sentences(const study::OddsAnswer& material);
std::vector<std::string> help_sentences(const study::OddsAnswer& material);
std::vector<std::string> help_sentences(const HelpDrawn& drawn, const study::Help& help);
std::vector<std::string> launch_sentences(const study::OddsAnswer& material);        // none without one
std::vector<std::string> signals_left_sentences(const study::OddsAnswer& material);  // none without help
std::string nested_title(const study::OddsAnswer& material);
std::vector<std::string> nested_sentences(
    const study::OddsAnswer& material);  // none where there are no bands
std::vector<std::string> about_sentences(const study::OddsAnswer& material);

}  // namespace bide::report

// The words that text, CSV and page of a choice share.
#pragma once

#include <string>
#include <vector>

#include "bide/study/questions/choose.hpp"

namespace bide::report {

std::string choose_title(const study::Chosen& chosen);  // "Raft and pack for 4 people"
// "6-person SOLAS raft, inflated floor, canopy of two skins; SOLAS A pack (long voyages) (solas_6, solas_a)"
std::string choice_words(const study::Choice& choice);
std::string choice_name(const study::Choice& choice);  // "6-person SOLAS raft, SOLAS A pack"
std::string water_words(const study::Water& water);  // "Biscay in February: sea 12 °C, air 10 °C, wind 9 m/s"
std::string range_words(const study::Chance& chance);    // "62-75 %"
std::string cause_words(const study::ChoiceCell& cell);  // "cold"; "nothing"
std::string help_words(double help_h);                   // "5 d"

// For each hour of help, which choices are ahead of the first and which behind. One sentence where no hour
// sets any apart.
std::vector<std::string> verdict_sentences(const study::Chosen& chosen, const study::Water& water);

// What holds for all of it.
std::vector<std::string> about_choices(const study::Chosen& chosen);

}  // namespace bide::report

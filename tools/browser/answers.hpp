// The questions that a page may ask the engine, and their answers, as JSON. ask.cpp is the door to them.
//
// An answer either has what was asked for or "refused": a list of {file, pointer, words, message}. Texts for
// people are those of the reports: sections come as the HTML that a report's page has, without the lines that
// ask for a command of the program. "until" has for each case when the first person stops being able: its
// range and central case, of odds eight futures in ten and the median one, in hours and in the reports'
// words.
#pragma once

#include <nlohmann/json.hpp>
#include <string>

namespace bide::browser {

using Json = nlohmann::ordered_json;

// Catalogue, seas, fields of a scenario, the cautions that belong beside every answer, the drawing script.
Json lists();
// The file of a new scenario from a few facts, as text.
Json new_scenario(const Json& question);
// The uncertain scenario of people in distress, from what a caller knows ("persons" or "crew", "abandoned",
// "now", "latitude_deg", "longitude_deg"; "last_contact", "raft", "clothing", "boarding", "sea_degC" where
// known).
Json situation(const Json& question);
// Of which kind the weather file "file" is ("csv" or "ndbc"), and from when to when it has rows.
Json weather_file(const Json& question);
// One run as numbers against time, for a drawing.
Json run(const Json& question);
// The run with its range, as the sections of its report. With "levers", what would buy time is in the answer,
// and by itself in "levers" as HTML; with "levers_to_come" the answer says that it is being tried.
Json report(const Json& question);
// The same as one file, the run as a table, and its sheets for a workbook.
Json report_file(const Json& question);
Json timeline_file(const Json& question);
Json sheets(const Json& question);
// "scenarios" beside the first of them; with "vary", versions of the one scenario.
Json compare(const Json& question);
// Which of "rafts" ({kind, one_of_two}) with which of "packs" in the waters of "scenarios", for help after
// "help_h".
Json choose(const Json& question);
// Some futures, and the odds from all of them: counted from now where the scenario says when that is, and
// then with the shares from now on in "from_now" as HTML.
Json draw(const Json& question);
Json odds(const Json& question);

}  // namespace bide::browser

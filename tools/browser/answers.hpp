// The questions that a page may ask the engine, and their answers, as JSON. ask.cpp is the door to them.
//
// An answer either has what was asked for or "refused": a list of {file, pointer, message}. Texts for people
// are those of the reports: sections come as the HTML that a report's page has.
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
// Everything that is in force in a scenario, and what is doubtful.
Json check(const Json& question);
// One run as numbers against time, for a drawing.
Json run(const Json& question);
// The run with its range, as the sections of its report; with "levers", what would buy time as well.
Json report(const Json& question);
// The same as one file, and the run as a table.
Json report_file(const Json& question);
Json timeline_file(const Json& question);
// Scenarios beside the first.
Json compare(const Json& question);
// Some futures, and the odds from all of them.
Json draw(const Json& question);
Json odds(const Json& question);

}  // namespace bide::browser

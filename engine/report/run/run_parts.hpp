// The sections of a run's page, one file each.
#pragma once

#include "bide/report/run/run_page.hpp"

namespace bide::report::pages {

document::Section answer_section(const RunMaterial& material);
document::Section people_section(const Material& material);  // what ends it for each, and their figures
document::Section stay_section(const Material& material);    // states, stores and events against time; cabin
document::Table cabin_table(const Material& material);       // inside, foul air, signals left
document::Section course_section(const Material& material);  // temperatures, bodies, water, stores, air
document::Section hands_section(
    const Material& material);  // who can use their hands when; fingers, hands, feet
document::Section warmth_section(const Material& material);
document::Section margins_section(const Material& material);
document::Section ration_card(const Material& material);
document::Section first_hour(const Material& material, const study::LeversTried* levers);
document::Section basis_section(const Material& material);

inline constexpr std::size_t most_lines = 4;  // persons with a line each; more are drawn as a band

// Until when courses are drawn, s: a little longer than anybody lives, or to the end of the run.
double drawn_s(const Material& material);

// Hours since the start for courses; whole days are marked where they are long.
document::Axis hours_axis(const Material& material);

// People whose courses are the same, to be drawn once: places in the crew.
std::vector<std::vector<int>> alike(const Material& material);

// A column of each person against time: a line each, or a band and the middle of a large crew.
document::Chart of_persons(const Material& material, const char* title, const char* sentence,
                           const document::Axis& y, std::vector<double> timeline::PersonSeries::*column);

// From dark to light, as the events have it.
document::Series nights(const Material& material);

}  // namespace bide::report::pages

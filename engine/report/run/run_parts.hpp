// The sections of a run's page, one file each.
#pragma once

#include "bide/report/run/run_page.hpp"

namespace bide::report::pages {

html::Section answer_section(const RunMaterial& material);
html::Section stay_section(const Material& material);    // states, stores and events against time
html::Section course_section(const Material& material);  // temperatures, bodies, water, stores, air
html::Section hands_section(const Material& material);   // who can use their hands when; fingers, hands, feet
html::Section warmth_section(const Material& material);
html::Section margins_section(const Material& material);
html::Section ration_card(const Material& material);
html::Section first_hour(const Material& material, const study::LeversTried* levers);
html::Section basis_section(const Material& material);

inline constexpr std::size_t most_lines = 4;  // persons with a line each; more are drawn as a band

// Hours since the start; whole days are marked where the run is long.
html::Axis hours_axis(const Material& material);

// People whose courses are the same, to be drawn once: places in the crew.
std::vector<std::vector<int>> alike(const Material& material);

// A column of each person against time: a line each, or a band and the middle of a large crew.
html::Chart of_persons(const Material& material, const char* title, const char* sentence, const html::Axis& y,
                       std::vector<double> timeline::PersonSeries::*column);

// From dark to light, as the events have it.
html::Series nights(const Material& material);

}  // namespace bide::report::pages

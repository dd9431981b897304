// The list of topics. One folder each: README.md (source, conditions, digitisation, trust), data, case.cpp.
#pragma once

#include "validation/curve.hpp"
#include "validation/row.hpp"

namespace bide::validation {

std::vector<Row> cabin_air_rows();           // cabin_air/
std::vector<Row> desert_water_rows();        // desert_water/
std::vector<Row> dry_food_rows();            // dry_food/
std::vector<Row> kidney_rows();              // kidney/
std::vector<Row> losses_rows();              // losses/
std::vector<Row> humid_heat_rows();          // humid_heat/
std::vector<Row> starvation_rows();          // starvation/
std::vector<Row> seasickness_rows();         // seasickness/
std::vector<Row> hands_rows();               // hands/
std::vector<Row> pack_arithmetic_rows();     // pack_arithmetic/
std::vector<Row> shivering_rows();           // shivering/
std::vector<Row> immersion_rows();           // immersion/
std::vector<Row> cold_air_rows();            // cold_air/
std::vector<Row> immersion_guidance_rows();  // immersion_guidance/
std::vector<Row> air_steps_rows();           // air_steps/
std::vector<Row> fatness_rows();             // fatness/
std::vector<Row> raft_insulation_rows();     // raft_insulation/
std::vector<Row> raft_people_rows();         // raft_people/
std::vector<Row> floor_rows();               // floor/
std::vector<Row> common_practice_rows();     // common_practice/
std::vector<Row> depletion_rows();           // depletion/
std::vector<Row> without_water_rows();       // without_water/
std::vector<Row> sea_water_rows();           // sea_water/
std::vector<Row> cold_rooms_rows();          // cold_rooms/
std::vector<Row> cool_water_rows();          // cool_water/
std::vector<Row> effort_rows();              // effort/
std::vector<Row> groups_rows();              // groups/
std::vector<Row> rhythm_rows();              // rhythm/
std::vector<Row> heat_rows();                // heat/
std::vector<Row> crews_rows();               // crews/

using Topic = std::vector<Row> (*)();
inline constexpr Topic topics[] = {cabin_air_rows,
                                   desert_water_rows,
                                   dry_food_rows,
                                   kidney_rows,
                                   losses_rows,
                                   humid_heat_rows,
                                   starvation_rows,
                                   seasickness_rows,
                                   hands_rows,
                                   pack_arithmetic_rows,
                                   shivering_rows,
                                   immersion_rows,
                                   immersion_guidance_rows,
                                   cold_air_rows,
                                   air_steps_rows,
                                   fatness_rows,
                                   raft_insulation_rows,
                                   raft_people_rows,
                                   floor_rows,
                                   common_practice_rows,
                                   depletion_rows,
                                   without_water_rows,
                                   sea_water_rows,
                                   cold_rooms_rows,
                                   cool_water_rows,
                                   effort_rows,
                                   groups_rows,
                                   rhythm_rows,
                                   heat_rows,
                                   crews_rows};

// What a topic shows as charts, given its own rows.
std::vector<Curve> cabin_air_curves(const std::vector<Row>& rows);
std::vector<Curve> desert_water_curves(const std::vector<Row>& rows);
std::vector<Curve> losses_curves(const std::vector<Row>& rows);
std::vector<Curve> humid_heat_curves(const std::vector<Row>& rows);
std::vector<Curve> starvation_curves(const std::vector<Row>& rows);
std::vector<Curve> seasickness_curves(const std::vector<Row>& rows);
std::vector<Curve> hands_curves(const std::vector<Row>& rows);
std::vector<Curve> shivering_curves(const std::vector<Row>& rows);
std::vector<Curve> immersion_curves(const std::vector<Row>& rows);
std::vector<Curve> immersion_guidance_curves(const std::vector<Row>& rows);
std::vector<Curve> raft_insulation_curves(const std::vector<Row>& rows);
std::vector<Curve> raft_people_curves(const std::vector<Row>& rows);

struct CurveTopic {
  const char* name;
  std::vector<Curve> (*curves)(const std::vector<Row>& rows);
};
inline constexpr CurveTopic curve_topics[] = {{"cabin_air", cabin_air_curves},
                                              {"desert_water", desert_water_curves},
                                              {"losses", losses_curves},
                                              {"humid_heat", humid_heat_curves},
                                              {"starvation", starvation_curves},
                                              {"seasickness", seasickness_curves},
                                              {"hands", hands_curves},
                                              {"shivering", shivering_curves},
                                              {"immersion", immersion_curves},
                                              {"immersion_guidance", immersion_guidance_curves},
                                              {"raft_insulation", raft_insulation_curves},
                                              {"raft_people", raft_people_curves}};

}  // namespace bide::validation

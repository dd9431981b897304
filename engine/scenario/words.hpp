// The words that stand for each enumeration in a file, in the order of the enumerators.
#pragma once

#include <array>
#include <cstddef>
#include <string_view>
#include <type_traits>

#include "bide/scenario/catalogue.hpp"
#include "bide/scenario/levers.hpp"
#include "bide/scenario/study_file.hpp"

namespace bide::scenario {

inline constexpr std::string_view format_word = "bide scenario 1";

// Specialised once per enumeration; `words_of<E>[i]` is the word of enumerator i.
template <class E>
inline constexpr auto words_of = nullptr;

using Words = std::string_view;
template <>
inline constexpr std::array words_of<WeatherKind>{Words("constant"), Words("daily_cycle"), Words("variable"),
                                                  Words("csv"), Words("ndbc")};
template <>
inline constexpr std::array words_of<FloorKind>{Words("single"), Words("inflated"), Words("foam")};
template <>
inline constexpr std::array words_of<CanopyKind>{Words("none"), Words("one_skin"), Words("two_skins")};
template <>
inline constexpr std::array words_of<Sex>{Words("female"), Words("male")};
template <>
inline constexpr std::array words_of<Seat>{Words("floor"), Words("lifejacket"), Words("foam_pad")};
template <>
inline constexpr std::array words_of<Hands>{Words("sound"), Words("no_fine_work"), Words("useless")};
template <>
inline constexpr std::array words_of<BoardingKind>{Words("dry"), Words("swim"), Words("float_free"),
                                                   Words("none")};
template <>
inline constexpr std::array words_of<InWater>{Words("still"), Words("swimming"), Words("knees_drawn_up"),
                                              Words("huddled")};
template <>
inline constexpr std::array words_of<RationingRule>{Words("fixed_per_day"), Words("none_first_day"),
                                                    Words("spread"), Words("by_thirst")};
template <>
inline constexpr std::array words_of<FailureKind>{
    Words("floor_not_inflated"), Words("canopy_torn"),      Words("closure_lost"),
    Words("tube_leaking"),       Words("pump_lost"),        Words("capsize"),
    Words("bailer_lost"),        Words("desalinator_lost"), Words("lamp_dead")};
template <>
inline constexpr std::array words_of<LaunchWay>{Words("by_hand"), Words("float_free")};
template <>
inline constexpr std::array words_of<ShiveringEndurance>{Words("tires"), Words("tires_late"),
                                                         Words("gives_out")};
template <>
inline constexpr std::array words_of<DistributionKind>{
    Words("uniform"),    Words("normal"),   Words("truncated_normal"), Words("lognormal"),
    Words("triangular"), Words("discrete"), Words("empirical")};
template <>
inline constexpr std::array words_of<UnknownPart>{Words("height"), Words("mass"), Words("fat")};
template <>
inline constexpr std::array words_of<RescueKind>{Words("fixed"), Words("lognormal"), Words("weibull"),
                                                 Words("empirical"), Words("none")};
template <>
inline constexpr std::array words_of<ItemRole>{
    Words("water"),       Words("food"),           Words("seasick_medicine"), Words("desalinator"),
    Words("solar_still"), Words("protective_aid"), Words("foam_pad"),         Words("bailer"),
    Words("sponge"),      Words("pump"),           Words("hand_flare"),       Words("rocket"),
    Words("smoke"),       Words("lamp"),           Words("beacon"),           Words("torch"),
    Words("first_aid"),   Words("repair"),         Words("rain_vessel"),      Words("other")};

template <>
inline constexpr std::array words_of<LeverRaft>{Words("as_it_is"), Words("fitting"), Words("two")};
template <>
inline constexpr std::array words_of<DesignKind>{Words("grid"),  Words("random"),   Words("latin_hypercube"),
                                                 Words("sobol"), Words("saltelli"), Words("morris"),
                                                 Words("points")};
template <>
inline constexpr std::array words_of<PointScale>{Words("unit"), Words("natural")};

template <class E>
constexpr std::string_view word(E value) {
  static_assert(std::is_enum_v<E>);
  return words_of<E>[static_cast<std::size_t>(value)];
}

}  // namespace bide::scenario

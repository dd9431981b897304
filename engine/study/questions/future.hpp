// What odds keep of one sample: a few numbers.
//
// Units: hours since the scenario's start. A time beyond the horizon is infinite.
#pragma once

#include <array>
#include <bitset>
#include <cstdint>
#include <functional>
#include <limits>
#include <optional>
#include <span>

#include "bide/core/people.hpp"
#include "bide/study/ensemble/sample_result.hpp"
#include "bide/study/questions/help.hpp"
#include "bide/study/sampling/raft_draw.hpp"

namespace bide::study {

// half_of_crew: the person by whom at least half of the crew have come to it, as in outcome::CrewTimes.
enum Who : std::size_t { first_person, half_of_crew, last_person, who_count };

struct Future {
  std::uint64_t sample = 0;
  std::array<float, who_count> able_h{}, alive_h{};
  std::array<system::Limit, who_count> able_cause{}, alive_cause{};
  // Whose ability ends first, by place in the crew: several at the same moment, nobody within the horizon.
  std::bitset<largest_crew> first_unable{};
  float coldest_inside_degC = std::numeric_limits<float>::quiet_NaN();  // not a number: no cabin
  float water_out_h = std::numeric_limits<float>::infinity();           // 0: none aboard
  float rescue_h = std::numeric_limits<float>::infinity();  // infinite: no help comes, or not considered
  float held_back_h = 0;                                    // of help, as in Help
  bool no_weather_for_help = false;
  std::optional<LaunchDrawn> launch;
  // When help comes; not a number if that is not within the horizon, or nobody is alive.
  float flares_left = std::numeric_limits<float>::quiet_NaN();
  float lamp_left_h = std::numeric_limits<float>::quiet_NaN();
  float beacon_left_h = std::numeric_limits<float>::quiet_NaN();
};

// Futures, wherever they are kept: called with what to do with each, in the same order every time.
using VisitFuture = std::function<void(const Future&)>;
using Futures = std::function<void(const VisitFuture&)>;

// Those in memory, which must stay there.
Futures all_of(std::span<const Future> futures);

// Of a sample that has a result; help and launch that are not considered are left out.
Future future_of(const SampleResult& result, const Help& help = {},
                 const std::optional<LaunchDrawn>& launch = {});

}  // namespace bide::study

// What people need their hands for, whether hands can do it, and at what pace: one row each.
//
// States: none. Inputs: temperatures of fingers and hands, and whether they are hurt. Validity: bare or
// gloved alike, what gloves cost is left out (in 5.6 degC air bare hands lost 27 % of a pegboard's pace, with
// one glove 13 %: there a glove gains), and so is warming the hands on the body before a task. Source:
// function of a hand is lost below 8 degC (Ray 2019, constants/limits): of the fingers for fine work, of the
// hand for a grip. Until then cold fingers are slow at fine work, by their dexterity; no fine task takes so
// long that the model would notice. A grip keeps its pace: cold water took 13 to 16 % of the greatest grip
// (Vincent & Tipton 1988), for which no law by temperature is printed, and pumps and bailers ask for less.
#pragma once

#include <array>
#include <cstddef>

#include "bide/body/build.hpp"
#include "bide/body/hands.hpp"
#include "bide/constants/limits.hpp"
#include "bide/core/scalar.hpp"

namespace bide::system {

enum class Task : unsigned char { sachet, flare, entrance, pump, bailer };
enum class Grip : unsigned char { fingers, hand };

struct TaskRow {
  Task id;
  Grip by;
  const char* words;  // after "to"
};
// In the order of Task.
inline constexpr std::array<TaskRow, 5> tasks{{{Task::sachet, Grip::fingers, "open a sachet of water"},
                                               {Task::flare, Grip::fingers, "fire a signal"},
                                               {Task::entrance, Grip::hand, "open or close an entrance"},
                                               {Task::pump, Grip::hand, "work a pump"},
                                               {Task::bailer, Grip::hand, "bail"}}};
static_assert([] {
  for (std::size_t i = 0; i < tasks.size(); ++i)
    if (tasks[i].id != static_cast<Task>(i)) return false;
  return true;
}());

// @param y the person's block of the state
// @return 1 if a hand can do the task, else 0
template <class T>
inline T hand_can(Task task, const body::Build<T>& b, const T* y) {
  const bool fine = tasks[static_cast<std::size_t>(task)].by == Grip::fingers;
  const T& degC = y[fine ? body::at::finger : body::at::node(body::hands, body::skin)];
  return select(degC < T(constants::hand_function_lost_degC), T(0), fine ? b.fine_work : b.grip);
}

// @param y the person's block of the state
// @return pace at the task as a share of warm hands', [0, 1]; it takes the inverse of it as long
template <class T>
inline T hand_pace(Task task, const body::Build<T>& b, const T* y) {
  const bool fine = tasks[static_cast<std::size_t>(task)].by == Grip::fingers;
  return hand_can(task, b, y) * (fine ? body::dexterity(y[body::at::finger]) : T(1));
}

}  // namespace bide::system

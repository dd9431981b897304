// Notes of events, for the record.
#pragma once

#include <vector>

namespace bide::system {

enum class NoteKind {
  failure,
  boarded,
  daylight,
  darkness,
  fell_asleep,
  woke,
  clothes_wrung,
  medicine_taken,
  water_issued,
  water_lacking,
  food_issued,
  food_lacking,
  bailed,
  water_made,
  rain_caught,
  flare_fired,
  opened_for_air,
  closed_again,
  hands_failed,
  unable,
  able_again,
  unconscious,
  died
};

struct Note {
  double time_s;  // since the scenario's start
  NoteKind kind;
  int person = -1;              // in the crew, from 0; -1: no single person
  int index = 0;                // of a failure: its place in the scenario's list; of failed hands: the task
  double asked = 0, given = 0;  // amounts: L of water, kJ of food, kg wrung, pieces
};

// Null when nothing is recorded (lanes).
using Notes = std::vector<Note>*;

}  // namespace bide::system

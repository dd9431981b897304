// What events leave behind for the record.
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
  unable,
  able_again,
  unconscious,
  died
};

// `kind_index` is the failure's number in the scenario's list; asked and given are litres or kJ per person.
struct Note {
  double time_s;
  NoteKind kind;
  int person = -1;
  int index = 0;
  double asked = 0, given = 0;
};

// Null when nobody records (lanes).
using Notes = std::vector<Note>*;

}  // namespace bide::system

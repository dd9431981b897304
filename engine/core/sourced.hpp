// A published number together with where it comes from.
#pragma once

namespace bide {

// How the number reached us.
enum class Trust {
  seen,             // read in the source's own text, abstract or data
  second_hand,      // read in a secondary page or a public transcription
  derived,          // arithmetic on the numbers named in `where`
  from_memory,      // recalled, not verified
  common_practice,  // a fact of the trade, no source
  judgement,        // our own estimate; `where` says on what it rests
  fitted,           // set so that the model meets data: constants/fitted.hpp alone; `where` names the data
  definition        // exact by definition
};

// `key` is an entry of constants/references.bib; empty only for judgement, common practice and definitions.
// `low` and `high` bound the published spread (of a fitted number: what physics allows), or equal `value`
// where none is stated.
struct Sourced {
  double value;
  const char* unit;
  const char* key;
  const char* where;
  Trust trust;
  double low;
  double high;

  constexpr Sourced(double value_, const char* unit_, const char* key_, const char* where_, Trust trust_)
      : Sourced(value_, unit_, key_, where_, trust_, value_, value_) {}
  constexpr Sourced(double value_, const char* unit_, const char* key_, const char* where_, Trust trust_,
                    double low_, double high_)
      : value(value_), unit(unit_), key(key_), where(where_), trust(trust_), low(low_), high(high_) {}

  // A sourced number reads as its value in formulas.
  constexpr operator double() const { return value; }  // NOLINT(google-explicit-constructor)
};

}  // namespace bide

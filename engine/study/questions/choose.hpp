// Which raft and which pack: the chance that everybody is still able, or alive, when help comes after so many
// hours, for every raft with every pack, in one water or in several.
//
// Inputs: a validated scenario for each water; its own raft and pack give way to those asked about. Where
// nothing is uncertain in it, people's spread and what nobody has measured are drawn. Method: all rafts and
// packs of a water under the same futures, so that differences are those of raft and pack. Of two rafts, one
// of which is lost, the whole crew is in the other, with that one's pack. Same scenarios, question and seed:
// same answer, whatever the threads.
#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <variant>
#include <vector>

#include "bide/scenario/validate.hpp"
#include "bide/study/ensemble/refusal.hpp"
#include "bide/study/questions/odds.hpp"

namespace bide::study {

struct RaftChoice {
  std::string kind;         // catalogue key
  bool one_of_two = false;  // the other one is lost
  bool operator==(const RaftChoice&) const = default;
};

struct ChooseQuestion {
  std::vector<RaftChoice> rafts;   // at least one
  std::vector<std::string> packs;  // catalogue keys; empty: each raft's usual one
  std::vector<double> help_h;      // after the start, ascending, at least one, above 0
  std::uint64_t futures = 200, seed = 1;
  int threads = 0;  // 0: one to a core
};

// What ends it first in most of the futures that have ended.
struct LimitingCause {
  system::Limit limit = system::Limit::none;
  std::size_t futures = 0;
};

// Against the first choice of the same water, in the same futures.
struct AgainstFirst {
  std::size_t more = 0, fewer = 0;  // futures in which this one holds and the first does not, and the reverse
  bool apart = false;               // by the exact sign test, two-sided, at 5 %
};

// Everybody able, or everybody alive, when help comes.
struct ChoiceCell {
  Chance chance;
  LimitingCause ended_by;  // none: in no future
  AgainstFirst against_first;
};

struct Choice {
  RaftChoice raft;
  std::string pack;
  std::vector<ChoiceCell> able, alive;  // by hour of help
  // The limit that most futures are nearest to, or have come to, when all hours are over.
  system::Limit nearest = system::Limit::none;
  std::size_t without_result = 0;  // futures; left out of all choices of this water
};

// One water, with its choices in the order of the rafts, and for each raft of the packs.
struct Water {
  scenario::ValidScenario scenario;  // with the first raft and pack
  bool made_uncertain = false;       // the scenario had nothing uncertain
  std::size_t futures = 0;           // that have a result under every choice
  std::vector<Choice> choices;
};

struct Chosen {
  ChooseQuestion question;
  std::vector<Water> waters;
};

// @param waters   validated scenarios, at least one; the crew is the same in each
// @param question what is asked
// @param progress told the share done, [0, 1]; may be empty
// @return the table; refused where a raft or a pack is not in the catalogue, a single raft is too small for
//         the crew, the hours cannot be asked for, or more than one in a hundred futures has no result
std::variant<Chosen, Refusal> choose(const std::vector<scenario::ValidScenario>& waters,
                                     const ChooseQuestion& question,
                                     const std::function<void(double fraction)>& progress = {});

}  // namespace bide::study

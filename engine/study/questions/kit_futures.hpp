// A scenario with a kit aboard, and whether its futures meet a target.
//
// States: what is known so far of each kit's futures, so that none is run twice. The order in which futures
// are run follows how often they were missed: a kit that fails is then seen to fail early. Of items of which
// more never harms, a future that meets the target with a kit meets it with more of them, and one that misses
// it misses it with less: such futures are not run. Neither changes an answer.
#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <stdexcept>
#include <string>
#include <vector>

#include "bide/study/questions/future.hpp"
#include "bide/study/questions/provision.hpp"

namespace bide::study {

// A kit has no result.
struct KitRefused : std::runtime_error {
  Refusal refusal;
  explicit KitRefused(Refusal why) : std::runtime_error("refused"), refusal(std::move(why)) {}
};

class KitFutures {
 public:
  // @param scenario followed to the time of the target, with `uncertain`; must outlive this
  // @param items    offers; must outlive this
  // @param alive    the target is to be alive, else able
  // @param seed     of the futures
  // @param count    of futures, at least 1
  // @param threads  0: one to a core
  KitFutures(const scenario::ValidScenario& scenario, const std::vector<ProvisionItem>& items, bool alive,
             std::uint64_t seed, std::uint64_t count, int threads);

  // The scenario with a kit aboard. Throws KitRefused where the validation refuses it.
  scenario::ValidScenario with(const Kit& kit) const;
  // No more than so many futures miss the target. Throws KitRefused.
  bool misses_at_most(const Kit& kit, std::size_t most);
  // Over all futures. Throws KitRefused.
  KitTried all_of(const Kit& kit, double confidence);

  std::size_t kits_run() const { return known_.size(); }
  std::uint64_t futures_run() const { return futures_run_; }
  // Called after every batch of futures; may be empty.
  void when_run(std::function<void()> told) { told_ = std::move(told); }

 private:
  // follows: missed, because it is with more; by what is not known.
  enum class Seen : unsigned char { no, met, missed, follows, without_result };
  struct Known {
    std::vector<Seen> seen;
    std::vector<system::Limit> cause;
    std::size_t missed = 0;          // all but those met, among the known
    std::size_t without_result = 0;  // at most one in a hundred
    std::string why;
  };
  // Runs futures that are not known until they all are, or more than `most` are missed.
  // @param causes also those of which only the cause is not known
  const Known& learn(const Kit& kit, std::size_t most, bool causes);
  // Takes over what follows from kits with more or less of what never harms.
  void infer(const Kit& kit, Known& known) const;

  const scenario::ValidScenario& scenario_;
  const std::vector<ProvisionItem>& items_;
  bool alive_;
  std::uint64_t seed_, count_;
  int threads_;
  std::map<Kit, Known> known_;
  std::vector<std::size_t> times_missed_;
  std::uint64_t futures_run_ = 0;
  std::function<void()> told_;
};

}  // namespace bide::study

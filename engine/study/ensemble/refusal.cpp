#include "bide/study/ensemble/refusal.hpp"

#include <fmt/format.h>

namespace bide::study {

Refusal refusal_of(const std::string& file, const timeline::Failure& failure) {
  return {Refusal::Why::run,
          {{file, "", fmt::format("the run failed ({}): {}", failure.ledger, failure.message)}}};
}

}  // namespace bide::study

#include "bide/report/words/made_by.hpp"

#include <fmt/format.h>

#include "bide/report/json/shape.hpp"
#include "bide/study/records/fingerprint.hpp"

namespace bide::report {

std::string made_by_line() {
  const study::Build build = study::build();
  return fmt::format("Made by bide {}, model {}, compiled by {} for {}", build.version, build.fingerprint,
                     build.compiler, build.instruction_set);
}

nlohmann::ordered_json made_by() {
  return build_shape().of(study::build());
}

}  // namespace bide::report

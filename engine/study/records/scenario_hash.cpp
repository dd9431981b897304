#include "bide/study/records/scenario_hash.hpp"

#include <fstream>
#include <iterator>
#include <string>

#include "bide/scenario/patch.hpp"
#include "bide/study/records/hash.hpp"

namespace bide::study {
namespace {

std::string bytes_of(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

}  // namespace

std::uint64_t scenario_hash(const scenario::ValidScenario& scenario) {
  Hash hash;
  hash.add(scenario::write_document(*scenario.document));
  if (const auto* weather = std::get_if<scenario::FileWeather>(&scenario.weather))
    hash.add(bytes_of(scenario.folder / weather->file));
  return hash.value();
}

}  // namespace bide::study

// Two options under common futures, in words.
#pragma once

#include <string>
#include <vector>

#include "bide/study/questions/common_futures.hpp"

namespace bide::report {

// "Able until, first person: option 2 is longer in 83 of 100 futures ...": one sentence for able, one for
// alive, one for futures without a result.
// @param paired        the comparison
// @param first, second names of the options
std::vector<std::string> futures_sentences(const study::PairedFutures& paired, const std::string& first,
                                           const std::string& second);

}  // namespace bide::report

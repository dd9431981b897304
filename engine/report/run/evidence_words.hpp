// What stands behind results, in words: the same block for every question.
#pragma once

#include <string>
#include <vector>

#include "bide/outcome/compare.hpp"
#include "bide/report/document/document.hpp"
#include "bide/report/run/material.hpp"

namespace bide::report {

// A result and its evidence.
struct Judged {
  std::string result;  // "able until"
  outcome::Evidence evidence;
};
std::vector<Judged> judged(const Material& material);         // every result of a run
std::vector<Judged> judged(const outcome::Figures& figures);  // able until and alive until

// How studies like this were forecast without themselves, the sides to which the model errs first.
std::vector<std::string> left_out_sentences(const std::vector<Judged>& results);
// Ends of the measurements that these results went beyond.
std::vector<std::string> data_ends(const std::vector<Judged>& results);

// The grade of each result, how studies like it were forecast, and where the measurements end.
std::vector<document::Block> evidence_blocks(const std::vector<Judged>& results);

}  // namespace bide::report

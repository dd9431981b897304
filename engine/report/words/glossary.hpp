// The words of results, each explained once: at the foot of pages, and in README.md, which a test compares.
#pragma once

#include <span>

namespace bide::report {

struct Term {
  const char* word;
  const char* meaning;
};
std::span<const Term> glossary();

}  // namespace bide::report

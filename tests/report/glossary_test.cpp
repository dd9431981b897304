// The glossary is told once in the engine; README.md shows the same words.
#include "bide/report/words/glossary.hpp"

#include <doctest/doctest.h>

#include <fstream>
#include <iterator>
#include <set>
#include <string>

#include "bide/report/html/page.hpp"

TEST_CASE("the read-me and every page explain the same words, each once") {
  std::ifstream file(BIDE_SOURCE_DIR "/README.md");
  const std::string readme{std::istreambuf_iterator<char>(file), {}};
  const std::string page = bide::report::html::to_html({"Title", "Lead", {{"One", {}}}});
  std::set<std::string> words;
  for (const bide::report::Term& term : bide::report::glossary()) {
    CAPTURE(term.word);
    CHECK(words.insert(term.word).second);
    CHECK(readme.find(std::string("| ") + term.word + " | " + term.meaning + " |") != std::string::npos);
    CHECK(page.find(std::string("<dt>") + term.word + "</dt>") != std::string::npos);
  }
  CHECK(words.size() > 10);
}

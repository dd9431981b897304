// obeys SCHEMA DOCUMENT: 0 when the document obeys the schema; else 1, with the complaint.
#include <cstdio>
#include <fstream>

#include "support/schema_complaint.hpp"

int main(int count, char** arguments) {
  if (count != 3) return 2;
  std::ifstream schema(arguments[1]), document(arguments[2]);
  const std::string complaint =
      bide::test::schema_complaint(nlohmann::json::parse(schema), nlohmann::json::parse(document));
  std::puts(complaint.c_str());
  return complaint.empty() ? 0 : 1;
}

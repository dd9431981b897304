// The JSON Schema accepts what validation accepts, and refuses what a schema can refuse. Checked by an
// independent validator, which reads the parts of 2020-12 that are the same in draft 7 (all that is used
// here).
#include <doctest/doctest.h>

#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validator.hpp>

#include "scenario/support.hpp"

using namespace bide::scenario;
using nlohmann::json;

namespace {

class SchemaCheck {
 public:
  SchemaCheck() {
    valijson::SchemaParser parser;
    parser.populateSchema(valijson::adapters::NlohmannJsonAdapter(text_), schema_);
  }
  bool accepts(const json& scenario) const {
    valijson::Validator validator(valijson::Validator::kStrongTypes);
    return validator.validate(schema_, valijson::adapters::NlohmannJsonAdapter(scenario), nullptr);
  }

 private:
  json text_ = json::parse(json_schema());
  valijson::Schema schema_;
};

json full() {
  return json::parse(test::text_of(test::source("tests/scenario/full.json")));
}

}  // namespace

TEST_CASE("the schema accepts valid scenarios") {
  const SchemaCheck schema;
  CHECK(schema.accepts(test::minimal()));
  CHECK(schema.accepts(full()));
  for (const auto& entry : std::filesystem::directory_iterator(test::source("scenarios"))) {
    if (entry.path().extension() != ".json") continue;
    CAPTURE(entry.path().filename().string());
    CHECK(schema.accepts(json::parse(test::text_of(entry.path()))));
  }
}

TEST_CASE("the schema refuses each field out of range, of the wrong type, missing or unknown") {
  const SchemaCheck schema;
  int checked = 0;
  for (const FieldLine& field : field_lines()) {
    std::string pointer = field.pointer;
    for (std::size_t at; (at = pointer.find('*')) != std::string::npos;) pointer[at] = '0';
    const json::json_pointer place(pointer);
    if (!full().contains(place)) continue;
    CAPTURE(pointer);
    ++checked;
    json changed = full();
    changed[place] = nullptr;
    CHECK_FALSE(schema.accepts(changed));
    if (field.is_number) {
      changed[place] = field.high + 1;
      CHECK_FALSE(schema.accepts(changed));
      changed[place] = field.low - 1;
      CHECK_FALSE(schema.accepts(changed));
    }
    json left_out = full();
    left_out[place.parent_pointer()].erase(place.back());
    CHECK(schema.accepts(left_out) == (field.absent != "required"));
    left_out[place.parent_pointer() / (place.back() + "x")] = 1;
    CHECK_FALSE(schema.accepts(left_out));
  }
  CHECK(checked >= 90);
}

// What a JSON Schema has against a document, by a validator that is not ours.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validation_results.hpp>
#include <valijson/validator.hpp>

namespace bide::test {

// The first complaint; empty when there is none.
inline std::string schema_complaint(const nlohmann::json& schema_json, const nlohmann::json& document) {
  valijson::Schema schema;
  valijson::SchemaParser parser;
  parser.populateSchema(valijson::adapters::NlohmannJsonAdapter(schema_json), schema);
  valijson::Validator validator;
  valijson::ValidationResults results;
  const valijson::adapters::NlohmannJsonAdapter target(document);
  if (validator.validate(schema, target, &results)) return "";
  valijson::ValidationResults::Error error;
  std::string text = "refused";
  while (results.popError(error))
    text = (error.context.empty() ? "" : error.context.back()) + ": " + error.description;
  return text;
}

}  // namespace bide::test

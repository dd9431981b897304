// A parsed file with values put in: how a drawn scenario comes about.
#pragma once

#include "bide/scenario/document.hpp"

namespace bide::scenario {

// Puts a value at a JSON pointer, making the objects on the way that are not there; nothing takes the member
// away. False when the way leads through something that is no object, or past the end of a list.
bool put(Node& root, std::string_view pointer, const Value& value);

// Adds an entry to a list of the root, making the list if it is not there.
void append(Node& root, std::string_view list, Node entry);

Node number_node(double value);
Node word_node(std::string_view word);

// The tree as JSON text that reads back the same.
std::string write_document(const Node& root);

}  // namespace bide::scenario

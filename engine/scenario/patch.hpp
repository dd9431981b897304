// Puts values into a parsed file, to make a drawn scenario.
#pragma once

#include "bide/scenario/document.hpp"

namespace bide::scenario {

// Puts a value at a JSON pointer and makes missing objects on the way.
// @param root    the parsed file
// @param pointer JSON pointer of the member
// @param value   its new value; an empty one removes the member
// @return false when the path leads through something that is not an object, or past the end of a list
bool put(Node& root, std::string_view pointer, const Value& value);

// Adds an entry to a list of the root, making the list if it is not there.
void append(Node& root, std::string_view list, Node entry);

Node number_node(double value);
Node word_node(std::string_view word);

// The tree as JSON text that reads back the same.
std::string write_document(const Node& root);

}  // namespace bide::scenario

// Makes and changes the tree of a file: a drawn scenario, one with a lever pulled, a new one.
#pragma once

#include "bide/scenario/document.hpp"

namespace bide::scenario {

// The value of a key; null when it is not there.
// @param object null, or any node
const Node* member(const Node* object, std::string_view key);
Node* member(Node& object, std::string_view key);

// Puts a value at a JSON pointer and makes missing objects on the way.
// @param root    the parsed file
// @param pointer JSON pointer of the member
// @param value   its new value; an empty one removes the member
// @return false when the path leads through something that is not an object, or past the end of a list
bool put(Node& root, std::string_view pointer, const Value& value);

// Adds an entry to a list of the root, making the list if it is not there.
void append(Node& root, std::string_view list, Node entry);

Node empty_object();
Node number_node(double value);
Node word_node(std::string_view word);

// The tree as JSON text that reads back the same.
std::string write_document(const Node& root);

}  // namespace bide::scenario

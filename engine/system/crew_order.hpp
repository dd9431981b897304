// The order in which the model holds the people of a crew, and the way back to the order of their file.
//
// States: none. Inputs: person parameters. Sums over people differ in their last bits with the order of the
// terms, so people are held in an order that follows from what they are: the same crew written in another
// order has the same results, person by person and bit for bit. What all lanes of a block must share is
// compared first, so that samples of one crew keep one structure whatever was drawn for its people. The order
// of people who are equal in everything does not matter: the model never asks for a person's place, so they
// have equal results. Source: none, bookkeeping.
#pragma once

#include <cstddef>
#include <utility>
#include <vector>

#include "bide/body/build.hpp"

namespace bide::system {

// One person as the model knows them.
struct Member {
  bool injured = false, aid = false, medicine = false;  // the same in every lane, see Structure
  body::Build<double> build{};
  std::size_t file_place = 0;  // in the crew of the file, from 0

  // Whether this person comes first. The place in the file is not compared.
  bool operator<(const Member& other) const;
};

// Sorts a crew; equal people stay in the order of the file.
void sort_crew(std::vector<Member>& crew);

// Values of the model's people, brought to the order of the file.
// @param of_model   one value per person, in the order of the model
// @param file_place of each person of the model (Compiled::file_place)
template <class Value>
std::vector<Value> in_file_order(std::vector<Value> of_model, const std::vector<std::size_t>& file_place) {
  std::vector<Value> out(of_model.size());
  for (std::size_t i = 0; i < of_model.size(); ++i) out[file_place.at(i)] = std::move(of_model[i]);
  return out;
}

}  // namespace bide::system

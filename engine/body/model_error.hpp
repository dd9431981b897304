// The model's own error as multipliers of what it computes for one person. At 1 nothing changes, to the bit.
//
// States: none. Inputs: four factors. Validity: each within a factor of three or so of 1; what is multiplied
// is said at each. Source: the comparison's left-out studies.
#pragma once

#include "bide/body/build.hpp"
#include "bide/constants/regions.hpp"

namespace bide::body {

struct ErrorFactors {
  double heat_made = 1;             // shivering, its ceiling, what can be kept up, and (less) resting heat
  double tissue_conductance = 1;    // between the layers of every segment
  double clothing_conductance = 1;  // of what is worn, in air and in water
  double water_loss = 1;            // sweat, and vapour through skin that does not sweat
};

// Places in the ranges of the four, [0, 1]; 0.5 is the model as computed.
struct ErrorPositions {
  double heat_made = 0.5, tissue_conductance = 0.5, clothing_conductance = 0.5, water_loss = 0.5;
};
// Lognormal about 1, as wide as left-out studies of the region ask for (constants/left_out.hpp); twice as
// wide where no study is near.
ErrorFactors factors_at(const ErrorPositions& positions, const constants::Conditions& at);

// @param b as make_build() made it; changed
void apply(const ErrorFactors& factors, Build<double>& b);

}  // namespace bide::body

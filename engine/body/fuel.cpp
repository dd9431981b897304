#include "bide/body/fuel.hpp"

namespace bide::body {

using namespace constants;

double normal_glycogen_kJ(double lean_kg) {
  return normal_glycogen_g * carbohydrate_kJ_g * lean_kg / (standard_mass_kg - standard_fat_kg);
}

double body_protein_kg(double lean_kg) {
  return protein_per_lean_kg * lean_kg;
}

}  // namespace bide::body

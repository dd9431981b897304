// The two kinds of what is uncertain.
#pragma once

namespace bide::study {

// Variety is aleatory: it differs from one real case to the next (people, weather, failures). Ignorance is
// epistemic: the same in every case, but not measured. Bands of results are nested by kind.
enum class FactorKind { variety, ignorance };

}  // namespace bide::study

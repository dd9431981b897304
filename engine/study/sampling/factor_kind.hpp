// The two kinds of what is uncertain.
#pragma once

namespace bide::study {

// Aleatory: it differs from one real case to the next (people, weather, failures). Epistemic: the same in
// every case, but not measured. Bands of results are nested by kind.
enum class FactorKind { aleatory, epistemic };

}  // namespace bide::study

// A sample's result as the bytes of a record, of one size for all samples of a study.
//
// States: none. Numbers are little-endian. A failed sample has its reason in place of the numbers, cut to the
// room there is (the sample can be run again by its number).
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "bide/study/ensemble/sample_result.hpp"

namespace bide::study {

// Changes with the layout, so that records of two layouts never mix.
inline constexpr std::uint32_t sample_layout = 3;

std::size_t sample_bytes(std::size_t persons);
// The crew whose results take so many bytes; of other sizes the next smaller one.
std::size_t persons_of(std::size_t bytes);
void write_sample(const SampleResult& result, std::span<std::byte> out);
// Throws std::invalid_argument, saying why, when the bytes are no such record: every state, cause, time and
// length is checked, so that a damaged or made-up file cannot reach what reads the results.
SampleResult read_sample(std::uint64_t index, std::size_t persons, std::span<const std::byte> bytes);

}  // namespace bide::study

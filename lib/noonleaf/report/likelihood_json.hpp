#pragma once

#include <nlohmann/json.hpp>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/report/likelihood_words.hpp"

namespace noonleaf {
inline namespace v1 {

/// What an answer says once: members, seed, what was assumed, minutes, what to measure next.
nlohmann::ordered_json likelihood_json(const LikelihoodView& view);

/// The days of one planting, the mean bed and its low quarter; null where it did not take part.
nlohmann::ordered_json planting_likelihood_json(const Likelihood& likelihood, std::size_t bed,
                                                std::size_t planting);

}  // namespace v1
}  // namespace noonleaf

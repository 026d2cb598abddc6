#pragma once

#include <cstddef>
#include <span>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/plan/likelihood.hpp"
#include "noonleaf/plan/member_sky.hpp"
#include "noonleaf/plan/water_account.hpp"

namespace noonleaf {
inline namespace v1 {

/// What the caller has made already.
struct MembersOfBed {
  const MemberSky& sky;                       ///< the first day is the morning of the accounts
  std::span<const PlantingAccount> accounts;  ///< of the bed, looking ahead as many days as the sky has
};

/// One bed of likelihood_of, without planned water.
BedLikelihood bed_likelihood(const Garden& garden, std::size_t bed, const Journal& journal, const Sky& sky,
                             const MembersOfBed& made, const MemberOptions& options, LikelihoodScope scope);

}  // namespace v1
}  // namespace noonleaf

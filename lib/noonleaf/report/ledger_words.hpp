#pragma once

#include <string>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/plan/ledger.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// A ledger and the garden it is about. Both must outlive it.
struct LedgerView {
  const Garden& garden;  ///< must outlive the view
  const Ledger& ledger;  ///< must outlive the view
};

/// The table by bed and month, in the site's units, 80 columns wide; below it sums, cost, allowance, what is
/// not known.
std::string ledger_text(const LedgerView& view);

/// One row a bed and month, SI units in the headers (docs/ledger.md); an empty cell is not known.
std::string ledger_csv(const LedgerView& view);

/// A page of its own with two charts (water by month, depth by bed) and the table.
std::string ledger_html(const LedgerView& view);

/// For programs: shape "noonleaf.ledger" version 1 (docs/ledger.md).
std::string ledger_json(const LedgerView& view);

}  // namespace v1
}  // namespace noonleaf

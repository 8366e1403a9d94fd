// SPDX-License-Identifier: MIT
// A small plan made by hand for tests of writers. Its numbers are obviously invented: they agree
// with no formula, so that nothing can be computed where it should be copied.
#pragma once

#include "seamturn/plan/plan.hpp"

namespace seamturn::tests {

/// A tee with two fillets, a ring rolled round and a butt without a place, on a table.
[[nodiscard]] plan::Plan sample_plan();
/// The title of the sample: every character that XML gives a meaning, and letters beyond ASCII.
inline constexpr const char* sample_title =
    "B\xc3\xb6"
    "ck <A> & \"Lasche\" 'x' \xe2\x89\xa5 1";

}  // namespace seamturn::tests

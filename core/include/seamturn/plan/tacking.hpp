// SPDX-License-Identifier: MIT
// The tacks of a part and what they carry before the first run is laid.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "seamturn/tack/carry.hpp"
#include "seamturn/tack/tack_plan.hpp"
#include "seamturn/turn/hang.hpp"

namespace seamturn::plan {

/// Tacks of a seam, in the stage that fits its members. Those of a segment are the ones of the seam
/// drawn that lie in it, none of them perhaps; widest pitch and findings are the whole seam's.
struct PlannedTacks {
  std::string seam;
  std::string stage;  ///< empty: the file names none
  tack::TackPlan plan;
  std::string refused;  ///< why none can be laid by the rules; then the plan is empty
  double clear_of_ends_mm = 0.0;
  double preheat_c = 0.0;  ///< as the weld's, which counts the tack's own heat input
};

/// A member on its tacks in the worst attitude of all turns of its stage. Never a release.
struct CarriedMember {
  std::string stage;
  std::string member;
  std::vector<std::string> welded;  ///< to it in the stages before: one body
  std::vector<std::string> with;    ///< members further out that hang on it
  /// Some of them hang on others too, and their whole weight counts on each: on the safe side.
  bool shared = false;
  double mass_kg = 0.0;  ///< of all of them
  std::size_t tacks = 0;
  double site_factor = 1.0;
  std::optional<tack::Carry> carry;  ///< none: `refused`
  std::string refused;
  std::string attitude;            ///< the worst: "S03", "turn to S03"
  std::optional<int> more_needed;  ///< tacks, when they do not carry
  std::string no_more;             ///< why more of them do not help
};

/// The part on the hook when a stage hangs it, or takes it off.
struct PlannedHang {
  std::string stage;
  bool off = false;         ///< taken off the positioner at the stage's end
  turn::Angle turned_over;  ///< between this set-up and the one before: not judged
  std::string lifting;
  std::vector<std::string> points;
  double mass_kg = 0.0;
  std::optional<turn::Hang> hang;  ///< none: `refused`
  std::string refused;
};

}  // namespace seamturn::plan

// SPDX-License-Identifier: MIT
// What is said of a seam that no stance holds.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "detail_seam_fit.hpp"
#include "detail_stages.hpp"
#include "detail_stances.hpp"
#include "detail_work.hpp"
#include "seamturn/base/finding.hpp"
#include "seamturn/cell/cell.hpp"

namespace seamturn::planner::detail {

/// What rolling a ring takes of the last axis and what that has: "; rolled, it takes ...".
/// Pre: the seam is a ring of one stretch.
[[nodiscard]] std::string rolling_text(const cell::Positioner& positioner, const SeamWork& ring);

/// turn.load.too_heavy of part and fixture that weigh more than the plate says at any distance.
/// Pre: they do; a cell, a set-up.
[[nodiscard]] base::Finding heavier_than_plate(const Inputs& inputs, const StageWork& stage);

/// A stance the positioner must not be given, and why.
struct BarredStance {
  turn::Stance stance;
  geom::Mat3 R_WD;
  std::string why;  ///< "tilt 90.0 deg, rotate 0.0 deg: the load ..."
};
/// The first barred stance that would hold a seam, "; one that would is barred, ..."; nothing when
/// none would.
[[nodiscard]] std::string barred_text(const std::vector<BarredStance>& barred,
                                      const std::function<bool(const BarredStance&)>& would_hold);

/// Seams that no stance holds: those of one joint that lack the same are told together.
class UnplacedSeams {
 public:
  /// Adds a seam to the finding of those before it, or a finding of its own. `findings` is the same
  /// every time, and only grows.
  void tell(const std::string& seam,
            const std::string& why,
            const base::Place& joint,
            std::vector<base::Finding>& findings);

 private:
  struct Told {
    base::Place joint;
    std::string why;
    std::vector<std::string> seams;
    std::size_t finding;
  };
  std::vector<Told> told_;
};

/// Positions some stack of a seam is laid in: "PA, PB".
[[nodiscard]] std::string positions_text(const SeamWork& seam);

/// "; the nearest is tilt 90.0 deg, ...": how a seam lies at its nearest and what it lacks; nothing
/// where it lacks nothing.
[[nodiscard]] std::string near_text(const Near& near, const std::string& stance);

/// A setting no seam asked for, and how near to laying a seam it comes.
struct NearElsewhere {
  Near near;
  turn::Stance stance;
};
/// How far apart the settings are that are tried.
inline constexpr Angle settings_apart = Angle::deg(5.0);
/// The nearest of settings all over the travel of the axes that may stand; of equals the one nearer
/// to rest. None: none may stand, or the seam's directions tell no position.
[[nodiscard]] std::optional<NearElsewhere> nearest_elsewhere(
    const SeamFit& fit,
    const cell::Positioner& positioner,
    const std::function<bool(const turn::Stance&)>& may_stand);

/// The first finding of each code, told how many more there are: more would hide what they say.
[[nodiscard]] std::vector<base::Finding> one_of_a_kind(std::vector<base::Finding> findings);

}  // namespace seamturn::planner::detail

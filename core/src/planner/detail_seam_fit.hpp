// SPDX-License-Identifier: MIT
// Which stack of a seam may be laid as a stance holds it: position, working tolerance, bead.
#pragma once

#include <vector>

#include "detail_seam_directions.hpp"
#include "seamturn/position/sky_caps.hpp"

namespace seamturn::planner::detail {

/// The answer: a stack, and how near to the tolerance it is laid.
struct Fit {
  int stack = -1;             ///< index into SeamWork::stacks; -1: none
  double strain_ratio = 0.0;  ///< 0 as wanted, 1 at a limit
};

/// How near a stance comes to laying a seam as a stack wants it.
struct Near {
  process::WeldPosition wanted = process::WeldPosition::pa;
  position::Classified lies;  ///< at the worst station
  Angle beyond;               ///< of slope and bank, past the working tolerance
};

class SeamFit {
 public:
  /// Pre: the seam has a path and stacks; all outlive this.
  SeamFit(const Inputs& inputs, const SeamRef& ref, const SeamInD& seam);

  /// Held still: one stack must suit every station, the worst decides. The first that does, easiest
  /// position first, full beads before lighter ones.
  [[nodiscard]] Fit held(const geom::Mat3& R_WD, bool reversed) const;

  /// Rolled: at the arc's place, its travel and face there. Slope is the lead's affair and only has
  /// to stay in the position's range; bank and beads are judged as when held still.
  [[nodiscard]] Fit rolled(const geom::Vec3& travel_W, const geom::Vec3& face_W) const;

  /// Where held() finds none: the position that is missed by least, travelled either way. Nothing
  /// where the seam's directions tell no position.
  [[nodiscard]] std::optional<Near> nearest(const geom::Mat3& R_WD) const;

  /// Whether a sky may suit the first station at all: quick, never false where held() finds a
  /// stack.
  [[nodiscard]] bool may_suit(const geom::Vec3& sky_D) const;

  /// Patches of the sky that hold the seam, to search shared skies among. A seam that turns has
  /// round ones about the skies wanted. What they promise is judged by held().
  [[nodiscard]] const std::vector<position::SkyPatch>& patches() const { return patches_; }

 private:
  /// Per role of a stack: the largest bead over the largest permitted one.
  struct RoleNeed {
    process::PassRole role;
    double bead_ratio;
  };
  struct StackNeed {
    process::WeldPosition position;
    std::vector<RoleNeed> roles;
  };
  enum class Judge { slope_and_bank, bank };

  [[nodiscard]] StackNeed need_of(const StackChoice& choice) const;
  [[nodiscard]] Fit best_fit(const std::vector<position::Classified>& all, Judge judge) const;
  /// Strain of a stack at an attitude; none where it may not be laid.
  [[nodiscard]] std::optional<double> strain(const StackNeed& need,
                                             position::Attitude lie,
                                             Judge judge) const;
  [[nodiscard]] Angle beyond(const StackNeed& need, const position::Attitude& lie) const;
  [[nodiscard]] position::Slack widest(const StackNeed& need) const;
  [[nodiscard]] position::SkyPatch patch_at(const StationInD& at,
                                            const StackNeed& need,
                                            double side) const;
  void make_patches(const StackNeed& need, double side, const std::vector<geom::Vec3>& wanted);

  const Inputs& inputs_;
  const SeamRef& ref_;
  const SeamInD& seam_;
  process::WeldFamily family_;
  Angle pb_bank_;
  std::vector<StackNeed> needs_;
  std::vector<position::SkyPatch> first_station_;
  std::vector<position::SkyPatch> patches_;
};

}  // namespace seamturn::planner::detail

// SPDX-License-Identifier: MIT
#include <algorithm>
#include <string>

#include "detail_check.hpp"
#include "detail_problems.hpp"
#include "detail_walls.hpp"

namespace seamturn::section::detail {

namespace {

using joint::Groove;
using joint::GrooveForm;
using joint::GrooveSide;

constexpr Angle half_turn = Angle::deg(180.0);
constexpr Angle quarter_turn = Angle::deg(90.0);

class GrooveCheck {
 public:
  GrooveCheck(const Groove& groove, const SectionParams& params, Problems& problems)
      : groove_(groove), params_(params), problems_(problems) {}

  void run() {
    problems_.check_size("thickness", params_.thickness_mm);
    problems_.check_gap(groove_.gap_mm);
    if (is_square() && !groove_.is_double) {
      check_depth();
      check_side_and_gouge();
      return;
    }
    const bool sound_root = check_root_face();
    check_faces(groove_.side_1, groove_.is_double ? " of side 1" : "");
    if (groove_.is_double) check_faces(groove_.side_2, " of side 2");
    if (problems_.any() || !sound_root) return;  // depths mean nothing yet
    if (groove_.is_double && !check_sum()) return;
    const CutDepths cuts = cut_depths(groove_, params_.thickness_mm);
    check_bottom(groove_.side_1, cuts.side_1_mm);
    if (groove_.is_double) check_bottom(groove_.side_2, cuts.side_2_mm);
    check_depth();
    check_side_and_gouge();
  }

 private:
  [[nodiscard]] bool is_square() const { return groove_.form == GrooveForm::square; }
  [[nodiscard]] bool is_round() const {
    return groove_.form == GrooveForm::u || groove_.form == GrooveForm::j;
  }
  [[nodiscard]] bool opens_both_ways() const {
    return groove_.form == GrooveForm::v || groove_.form == GrooveForm::compound_v;
  }

  bool check_root_face() {
    const double root_face_mm = groove_.root_face_mm;
    if (root_face_mm < 0.0) {
      problems_.add(
          "section.root_face.negative",
          "the root face is " + mm_text(root_face_mm) + "; the least is 0 mm (sharp edge)");
      return false;
    }
    if (params_.thickness_mm > 0.0 && root_face_mm >= params_.thickness_mm) {
      problems_.add("section.root_face.too_thick",
                    "the root face of " + mm_text(root_face_mm) + " leaves nothing to bevel in " +
                        mm_text(params_.thickness_mm) + "; make it thinner, or take a square butt");
      return false;
    }
    return true;
  }

  void check_faces(const GrooveSide& side, const std::string& which) {
    if (is_square()) return;
    if (opens_both_ways()) {
      problems_.check_angle("included angle" + which, side.angle, half_turn);
      check_first_face(side, which);
    } else {
      problems_.check_angle(
          (is_round() ? "face angle" : "bevel angle") + which, side.angle, quarter_turn);
    }
    if (is_round()) problems_.check_size("root radius" + which, side.radius_mm);
    if (groove_.form == GrooveForm::compound_v) {
      problems_.check_size("lower part's depth" + which, side.lower_depth_mm);
      problems_.check_angle("lower part's included angle" + which, side.lower_angle, half_turn);
    }
  }

  void check_first_face(const GrooveSide& side, const std::string& which) {
    if (!side.first_face || groove_.form != GrooveForm::v) return;
    const Angle second = side.angle - *side.first_face;
    const Angle none = Angle::deg(0.0);
    const bool sound = *side.first_face >= none && *side.first_face < quarter_turn &&
                       second >= none && second < quarter_turn;
    if (sound) return;
    problems_.add("section.angle.out_of_range",
                  "the first face" + which + " leans " + deg_text(*side.first_face) + " of " +
                      deg_text(side.angle) +
                      " included; each face must lean at least 0 and less than 90 deg");
  }

  /// The two cuts and the root face make up the plate.
  bool check_sum() {
    const CutDepths cuts = cut_depths(groove_, params_.thickness_mm);
    const double sum_mm = cuts.side_1_mm + cuts.side_2_mm + groove_.root_face_mm;
    const bool both = cuts.side_1_mm > 0.0 && cuts.side_2_mm > 0.0;
    const double slack_mm = 1e-6;  // hand-written decimals of a sum
    if (both && std::abs(sum_mm - params_.thickness_mm) <= slack_mm) return true;
    problems_.add("section.depth.sum",
                  "cuts of " + mm_text(cuts.side_1_mm) + " and " + mm_text(cuts.side_2_mm) +
                      " with a root face of " + mm_text(groove_.root_face_mm) + " make " +
                      mm_text(sum_mm) + "; they must make the thickness of " +
                      mm_text(params_.thickness_mm) + ", each above 0 mm");
    return false;
  }

  /// Round bottoms and lower parts must end below the surface.
  void check_bottom(const GrooveSide& side, double cut_mm) {
    const double round_mm = is_round() ? round_height_mm(side.radius_mm, side.angle) : 0.0;
    if (round_mm > cut_mm) {
      problems_.add("section.radius.too_large",
                    "a root radius of " + mm_text(side.radius_mm) + " needs " + mm_text(round_mm) +
                        " of depth at " + deg_text(side.angle) + " and the cut is " +
                        mm_text(cut_mm) + " deep; take a smaller radius or cut deeper");
    }
    if (groove_.form == GrooveForm::compound_v && side.lower_depth_mm >= cut_mm) {
      problems_.add("section.depth.out_of_range",
                    "the lower part is " + mm_text(side.lower_depth_mm) + " deep in a cut of " +
                        mm_text(cut_mm) + "; it must end below the surface");
    }
  }

  void check_depth() {
    const double depth_mm = params_.depth_mm;
    const double thickness_mm = params_.thickness_mm;
    const bool sound = depth_mm >= 0.0 && depth_mm <= thickness_mm + length_slack_mm;
    if (!sound && thickness_mm > 0.0) {
      problems_.add("section.depth.out_of_range",
                    "the depth is " + mm_text(depth_mm) + "; it must lie above 0 and up to the " +
                        "thickness of " + mm_text(thickness_mm));
      return;
    }
    const bool partial = depth_mm > 0.0 && depth_mm < thickness_mm - length_slack_mm;
    if (!partial || is_square()) return;
    const CutDepths cuts = cut_depths(groove_, thickness_mm);
    const double cut_mm = params_.side == 2 && groove_.is_double ? cuts.side_2_mm : cuts.side_1_mm;
    if (depth_mm < cut_mm - length_slack_mm) {
      problems_.add("section.depth.in_bevel",
                    "a depth of " + mm_text(depth_mm) + " ends inside the bevel, which is " +
                        mm_text(cut_mm) + " deep, and would leave a hollow under the weld; state " +
                        "a root face of at least " +
                        mm_text(groove_.root_face_mm + cut_mm - depth_mm));
    }
    if (groove_.is_double && depth_mm > cut_mm + groove_.root_face_mm + length_slack_mm) {
      problems_.add("section.depth.out_of_range",
                    "a depth of " + mm_text(depth_mm) + " reaches into the other side's cut; " +
                        mm_text(cut_mm + groove_.root_face_mm) + " is all there is on this side");
    }
  }

  void check_side_and_gouge() {
    const joint::Gouge& gouge = params_.gouge;
    const bool gouged = gouge.depth_mm != 0.0;
    if (params_.side == 2 && !groove_.is_double && !gouged) {
      problems_.add("section.side.none",
                    "a second side is asked for and the groove is cut from one side only; state a "
                    "double preparation or what is gouged");
    }
    if (!gouged) return;
    if (gouge.depth_mm < 0.0 || gouge.depth_mm >= params_.thickness_mm) {
      problems_.add("section.gouge.out_of_range",
                    "the gouge is " + mm_text(gouge.depth_mm) + " deep; it must lie above 0 and " +
                        "below the thickness of " + mm_text(params_.thickness_mm));
    }
    problems_.check_size("gouge's radius", gouge.radius_mm);
    if (gouge.flank < Angle::deg(0.0) || gouge.flank >= quarter_turn) {
      problems_.add("section.angle.out_of_range",
                    "the gouge's flank leans " + deg_text(gouge.flank) +
                        "; it must lean at least 0 and less than 90 deg");
    }
    if (!problems_.any() && groove_.is_double) check_gouge_covers_gap();
  }

  /// Where the gouge enters the second side's root it must be as wide as the gap, or slivers of
  /// the gap would stay.
  void check_gouge_covers_gap() {
    const double cut_mm = cut_depths(groove_, params_.thickness_mm).side_2_mm;
    const Wall half = gouge_wall(params_.gouge);
    const double over_mm = params_.gouge.depth_mm - cut_mm;
    if (over_mm <= 0.0) return;
    const double half_mm = out_at_mm(half, over_mm);
    if (half_mm >= 0.5 * groove_.gap_mm) return;
    problems_.add("section.gouge.out_of_range",
                  "the gouge is " + mm_text(2.0 * half_mm) + " wide where it meets a gap of " +
                      mm_text(groove_.gap_mm) + "; gouge wider or deeper");
  }

  const Groove& groove_;
  const SectionParams& params_;
  Problems& problems_;
};

}  // namespace

CutDepths cut_depths(const Groove& groove, double thickness_mm) {
  const double all_mm = thickness_mm - groove.root_face_mm;
  if (!groove.is_double) {
    return {groove.form == GrooveForm::square ? 0.0 : all_mm, 0.0};
  }
  const double stated_1_mm = groove.side_1.depth_mm;
  const double stated_2_mm = groove.side_2.depth_mm;
  if (stated_1_mm == 0.0 && stated_2_mm == 0.0) return {0.5 * all_mm, 0.5 * all_mm};
  return {stated_1_mm == 0.0 ? all_mm - stated_2_mm : stated_1_mm,
          stated_2_mm == 0.0 ? all_mm - stated_1_mm : stated_2_mm};
}

double welded_depth_mm(const Groove& groove, const SectionParams& params) {
  const CutDepths cuts = cut_depths(groove, params.thickness_mm);
  if (params.depth_mm > 0.0 && params.depth_mm < params.thickness_mm) return params.depth_mm;
  if (!groove.is_double) return params.thickness_mm;
  return params.side == 2 ? cuts.side_2_mm : groove.root_face_mm + cuts.side_1_mm;
}

void check_groove(const Groove& groove, const SectionParams& params, Problems& problems) {
  GrooveCheck(groove, params, problems).run();
}

}  // namespace seamturn::section::detail

namespace seamturn::section {

double cut_depth_mm(const joint::Groove& groove, double thickness_mm, int side) {
  const detail::CutDepths cuts = detail::cut_depths(groove, thickness_mm);
  return side == 1 ? cuts.side_1_mm : cuts.side_2_mm;
}

}  // namespace seamturn::section

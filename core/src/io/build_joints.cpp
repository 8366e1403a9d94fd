// SPDX-License-Identifier: MIT
// Lays the joints on their members: prepared thickness, depth, legs, and which way each seam faces.
#include <algorithm>
#include <cmath>

#include "detail_drafts.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/joint/seam_faces.hpp"
#include "seamturn/joint/weld_size.hpp"

namespace seamturn::io::detail {

namespace {

using base::Angle;
using geom::Vec3;

const Angle same_angle = Angle::deg(1.0);       // a stated angle and a found one
const Angle same_side_angle = Angle::deg(0.5);  // the two sides of one joint
const Angle agrees = Angle::deg(30.0);          // a stated face and a found one
const Angle straight = Angle::deg(180.0);

std::string mm(double value) {
  return base::digits_text(value) + " mm";
}
std::string degrees(Angle angle) {
  return base::fixed_text(angle.deg(), 1) + " deg";
}

class JointBuilder {
 public:
  /// `joint`: taken out of the draft.
  JointBuilder(const WeldmentDraft& weldment,
               const JointDraft& draft,
               joint::Joint& joint,
               Report& report)
      : weldment_(weldment), draft_(draft), report_(report), joint_(joint) {}

  /// To be called once.
  void build() {
    const joint::Member* first = joint::find_member(weldment_.weldment, joint_.member_1);
    const joint::Member* second = joint::find_member(weldment_.weldment, joint_.member_2);
    if (first == nullptr || second == nullptr) return;  // told as an unknown member
    set_thickness(*first, *second);
    check_backing();
    joint_.seams.reserve(draft_.seams.size());
    for (const SeamDraft& seam : draft_.seams) joint_.seams.push_back(lay(seam, *first, *second));
    if (is_fillet()) set_legs();
    if (is_fillet() && joint_.type == joint::JointType::lap) check_edges(*first, *second);
    if (joint::has_two_sides(joint_)) set_sides();
    const auto [thinner_mm, thicker_mm] = std::minmax(
        {joint::wall_thickness_mm(first->shape), joint::wall_thickness_mm(second->shape)});
    build_lengths(draft_, Plates{thinner_mm, thicker_mm}, joint_, report_);
  }

 private:
  [[nodiscard]] bool is_fillet() const { return joint::is_fillet(joint_.preparation); }
  [[nodiscard]] bool is_butt() const { return joint_.type == joint::JointType::butt; }

  void error(const char* attribute, std::string code, std::string text) {
    report_.error(weldment_.weldment.places.nearest_spot(draft_.key, attribute),
                  std::move(code),
                  std::move(text));
  }

  void set_thickness(const joint::Member& first, const joint::Member& second) {
    const double wall_1_mm = joint::wall_thickness_mm(first.shape);
    const double wall_2_mm = joint::wall_thickness_mm(second.shape);
    const double thinner_mm = std::min(wall_1_mm, wall_2_mm);
    joint_.thickness_mm = is_fillet() || is_butt() ? thinner_mm : wall_2_mm;
    if (std::holds_alternative<joint::Plug>(joint_.preparation)) joint_.thickness_mm = wall_1_mm;
    if (is_fillet()) return;
    joint_.depth_mm = draft_.penetration_mm.value_or(joint_.thickness_mm);
    if (joint_.depth_mm > joint_.thickness_mm) {
      error("penetration",
            "read.joint.penetration",
            "the penetration is " + mm(joint_.depth_mm) + " and the prepared edge " +
                mm(joint_.thickness_mm) +
                " thick; expected at most that; write \"full\" or a depth");
    }
    const auto* groove = std::get_if<joint::Groove>(&joint_.preparation);
    const double root_face_mm = groove == nullptr ? 0.0 : groove->root_face_mm;
    if (root_face_mm < joint_.thickness_mm) return;
    error(
        "root-face",
        "read.joint.root_face",
        "the root face is " + mm(root_face_mm) + " and the prepared edge " +
            mm(joint_.thickness_mm) +
            " thick; expected less, or nothing is left to bevel; correct it or take a square edge");
  }

  /// On a backing the arc must reach it between the edges: a bevelled groove needs a gap there.
  /// Thin square edges may touch (GB 985-88, square with strip: gap from 0 mm).
  void check_backing() {
    const auto* groove = std::get_if<joint::Groove>(&joint_.preparation);
    const bool backed = joint_.root == joint::RootDecision::steel_backing ||
                        joint_.root == joint::RootDecision::ceramic_backing;
    if (groove == nullptr || !backed || groove->form == joint::GrooveForm::square) return;
    if (groove->gap_mm > 0.0) return;
    error(
        "gap",
        "read.joint.backing_gap",
        "the bevelled edges touch over a backing, which the arc then does not reach; expected a "
        "gap above 0 mm and at most " +
            base::shortest_text(ranges::gap.most) +
            " mm; open the root as far as a library's ranges recommend, or leave the backing out");
  }

  /// The leg along the edge of the lapping plate ends at that edge's upper corner.
  void check_edges(const joint::Member& first, const joint::Member& second) {
    const joint::Fillet& fillet = std::get<joint::Fillet>(joint_.preparation);
    if (joint_.seams.empty() || !(fillet.leg_1_mm > 0.0 && fillet.leg_2_mm > 0.0)) return;
    const bool of_first = joint::lapping_member(joint_, first, second) == 1;
    const double leg_mm = of_first ? fillet.leg_1_mm : fillet.leg_2_mm;
    const double edge_mm = joint::wall_thickness_mm((of_first ? first : second).shape);
    const Spot spot = size_spot(of_first ? "leg-1" : "leg-2");
    for (const base::Finding& finding : joint::edge_leg_findings(leg_mm, edge_mm)) {
      report_.add(finding.severity, spot, finding.code, "joint " + joint_.id + ": " + finding.text);
    }
  }

  /// Where the size of a fillet is written, whichever way.
  Spot size_spot(std::string_view leg) const {
    const joint::Places& places = weldment_.weldment.places;
    for (const std::string_view attribute : {leg, std::string_view("leg")}) {
      const auto spot = places.find_spot(draft_.key + "@" + std::string(attribute));
      if (spot) return *spot;
    }
    return places.nearest_spot(draft_.key, "throat");
  }

  joint::Seam lay(const SeamDraft& draft, const joint::Member& first, const joint::Member& second) {
    joint::Seam seam = draft.seam;
    seam.between_walls = is_butt() ? straight : draft_.dihedral.value_or(Angle::deg(90.0));
    if (!seam.path) return seam;
    const auto found =
        joint::find_seam_faces(joint_.type, joint_.preparation, first, second, *seam.path);
    const bool can_state_face = found || found.error().code == "joint.seam.no_corner";
    if (!found && !(draft.face && can_state_face)) {
      report_.error(draft.spot, found.error().code, found.error().text);
      return seam;
    }
    if (!found || (draft.face && geom::angle_between(*draft.face, found->face) > agrees)) {
      state_face(seam, *draft.face, first);
      return seam;
    }
    seam.wall_1 = found->wall_1;
    seam.wall_2 = found->wall_2;
    seam.face = found->face;
    seam.between_walls = found->between_walls;
    seam.second_on_left = found->second_on_left;
    check_angle(found->between_walls);
    return seam;
  }

  void check_angle(Angle found) {
    if (!draft_.dihedral) return;
    const Angle difference = Angle::rad(std::abs((*draft_.dihedral - found).rad()));
    if (difference <= same_angle) return;
    error("angle",
          "read.fillet.angle",
          "angle= says " + degrees(*draft_.dihedral) + " and the members stand at " +
              degrees(found) + "; expected the same; delete angle= or correct the members");
  }

  /// The walls lie evenly on both sides of a stated face. Which of them is the first member's is
  /// read off its surfaces when some run near; else the wall right of the path is.
  void state_face(joint::Seam& seam, const Vec3& face, const joint::Member& first) const {
    seam.face = face;
    seam.wall_1 = face;
    seam.wall_2 = face;
    if (is_butt()) return;
    const geom::Station start = geom::path_station(*seam.path, 0.0);
    const Angle half = (straight - seam.between_walls) / 2.0;
    const Vec3 right = geom::rotation_about(start.tangent, half) * face;
    const Vec3 left = geom::rotation_about(start.tangent, -half) * face;
    constexpr double near_mm = 5.0;
    double fits_right = 0.0;
    double fits_left = 0.0;
    for (const joint::Face& surface : joint::faces_at(first, start.point, near_mm, near_mm)) {
      fits_right = std::max(fits_right, surface.normal.dot(right));
      fits_left = std::max(fits_left, surface.normal.dot(left));
    }
    const bool first_is_right = fits_right >= fits_left;
    seam.wall_1 = first_is_right ? right : left;
    seam.wall_2 = first_is_right ? left : right;
  }

  /// The first seam fills side 1 of a double or gouged groove, the second side 2.
  void set_sides() {
    if (joint_.seams.size() == 2) {
      joint_.seams.back().side = 2;
      return;
    }
    error("id",
          "read.joint.sides",
          "the groove is closed from two sides and the joint has one seam; expected two: the first "
          "for the side welded first, the second for the other; add the second");
  }

  void set_legs() {
    if (!draft_.throat_mm || joint_.seams.empty()) return;
    const Angle between = joint_.seams.front().between_walls;
    const Angle other = joint_.seams.back().between_walls;
    if (std::abs((between - other).rad()) > same_side_angle.rad()) {
      error("throat",
            "read.joint.sides_differ",
            "the plates stand at " + degrees(between) + " on one side and " + degrees(other) +
                " on the other, so one throat asks for two legs; expected equal sides; write a "
                "joint for each side");
      return;
    }
    const double leg_mm = joint::leg_from_throat_mm(*draft_.throat_mm, between);
    joint::Fillet fillet = std::get<joint::Fillet>(joint_.preparation);
    fillet.leg_1_mm = fillet.leg_2_mm = leg_mm;
    fillet.stated_throat_mm = draft_.throat_mm;
    joint_.preparation = fillet;
  }

  const WeldmentDraft& weldment_;
  const JointDraft& draft_;
  Report& report_;
  joint::Joint& joint_;
};

}  // namespace

std::vector<joint::Joint> build_joints(WeldmentDraft& draft, Report& report) {
  std::vector<joint::Joint> joints;
  joints.reserve(draft.joints.size());
  for (JointDraft& joint : draft.joints) {
    const bool on_sound_members = !draft.unsound_members.contains(joint.joint.member_1) &&
                                  !draft.unsound_members.contains(joint.joint.member_2);
    if (joint.is_sound && on_sound_members) {
      JointBuilder(draft, joint, joints.emplace_back(std::move(joint.joint)), report).build();
    }
  }
  return joints;
}

}  // namespace seamturn::io::detail

// SPDX-License-Identifier: MIT
// Joints and their seams. One side of a two-sided joint is one seam.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "seamturn/geom/path.hpp"
#include "seamturn/joint/preparation.hpp"
#include "seamturn/joint/stated_heat.hpp"
#include "seamturn/joint/weld_length.hpp"
#include "seamturn/process/weld_position.hpp"

namespace seamturn::joint {

/// In a lap the second member lies flat on the first and ends on it.
enum class JointType { butt, tee, corner, lap };
[[nodiscard]] std::string_view joint_type_name(JointType type);

/// How the root of a groove is made sound. `open`: from one side, nothing behind it; `both_sides`:
/// the second side fuses into the first without gouging.
enum class RootDecision { open, steel_backing, ceramic_backing, gouge, both_sides };
[[nodiscard]] std::string_view root_decision_name(RootDecision root);

/// What a weld is for. `tight`: holds a medium, leak-tested; `seal`: keeps weather or dirt out;
/// `buttering`: laid on one member before the other is fitted; `build_up`: metal to be machined.
enum class Duty { strength, tight, seal, buttering, build_up };
/// In the order of Duty, as files write them.
[[nodiscard]] std::span<const std::string_view> duty_names();
[[nodiscard]] std::string_view duty_name(Duty duty);  ///< "strength", "tight" ... "build-up"

/// Of a double groove a third of side 1 is laid before side 2 is begun, so that the plates bend
/// little. Common practice.
inline constexpr double usual_first_share = 1.0 / 3.0;

/// A seam that is one of several segments of the course drawn. Where it meets another, its ends lie
/// asked.stop_stagger_mm further on in layers 2, 4 ..., so that the stops of layers do not lie
/// above one another.
struct Segment {
  int number = 1;          ///< along the course of the joint's first seam
  int of = 1;              ///< segments of the course
  int rank = 0;            ///< of a layer, those of a lower rank are welded first
  bool reversed = false;   ///< travelled against the path
  bool at_start = false;   ///< begins where the course drawn does, with its tab or return
  bool at_end = false;     ///< ends where it does
  double begins_mm = 0.0;  ///< station of the course where the segment's path begins
  std::string drawn;       ///< id of the seam drawn, "J1" or "J1.a"
  geom::Path course;       ///< as drawn, frame J
};

/// The path of one weld in frame J with the directions that tell which way it faces, all at the
/// start of the path (geom::carried_direction takes them along it).
struct Seam {
  std::string id;                           ///< "J1", or "J1.a" "J1.b"; a segment's "J1.a/2"
  std::string joint;                        ///< "J1"
  std::optional<geom::Path> path;           ///< none: priced and heated, not turned
  double length_mm = 0.0;                   ///< of the path, welded or not
  WeldLength asked;                         ///< how much of it is welded, in trade form
  WeldedLength welded;                      ///< the stretches that makes; none: the whole length
  int side = 1;                             ///< of a double or gouged groove: which one is filled
  geom::Vec3 wall_1 = geom::Vec3::UnitZ();  ///< outward normal of the first member's surface
  geom::Vec3 wall_2 = geom::Vec3::UnitY();  ///< outward normal of the second member's surface
  geom::Vec3 face = geom::Vec3::UnitZ();    ///< normal of the weld face, out of the joint
  Angle between_walls;                      ///< dihedral on the weld's side; 180 deg for a butt
  bool second_on_left = true;  ///< flush joints: the second member, seen along the path, face up
  std::optional<Segment> segment;  ///< none: welded in one
};

struct Joint {
  std::string id;
  JointType type = JointType::tee;
  std::string member_1;  ///< of a tee: the through member
  std::string member_2;  ///< of a tee: the one that stands on it
  Preparation preparation;
  Cap cap;      ///< of every side
  Gouge gouge;  ///< with root decision gouge
  RootDecision root = RootDecision::open;
  std::optional<double> first_share;  ///< as stated; of two sides, see first_share_of
  double thickness_mm = 0.0;          ///< of the prepared edge (grooves), else the thinner member
  double depth_mm = 0.0;              ///< of the groove; equals thickness for full penetration
  std::string quality = "C";          ///< ISO 5817 level
  std::string purpose;                ///< free text for the sheet, may be empty
  std::string wire;                   ///< id of the wire; empty: the weldment's wire
  std::string fit_up;                 ///< id of fit-up tolerances; empty: the library's first
  std::vector<std::string> after;     ///< joints that must be welded before
  std::string stage;                  ///< id; empty: the first in which both members are there
  Duty duty = Duty::strength;         ///< what the weld is for
  std::optional<int> tacks;           ///< stated number on each seam; none: by rule
  bool reach_proved = false;          ///< somebody has proved that a torch gets there
  StatedHeat heat;                    ///< stated by the user
  std::string balance_off;   ///< why its sides and twins need not keep step; empty: they do
  std::string balance_with;  ///< joint whose seams these keep step with, as stated; empty: by rule
  std::vector<Seam> seams;   ///< one or two, or their segments: J1.a/1, J1.b/1, J1.a/2 ...
};

/// Metal, arc time and price count this: the stretches welded with their end returns, else the
/// length.
[[nodiscard]] double welded_length_mm(const Seam& seam);
/// The stretches welded; the whole length when nothing else is asked for.
[[nodiscard]] std::vector<Stretch> stretches_of(const Seam& seam);

/// The second path starts nearer to the first's end than to its start; two circles: their axes
/// point apart. False for other closed seams and where one has no place. Source: none - geometry.
/// Tests: joint/joint - closed-form.
[[nodiscard]] bool runs_against(const Seam& second, const Seam& first);

/// Whether a member is one of the two.
[[nodiscard]] bool joins(const Joint& joint, std::string_view member);

/// Welded from two sides that make one groove: double preparations and gouged ones.
[[nodiscard]] bool has_two_sides(const Joint& joint);

/// Two sides: the part of the first one's metal that is laid before the second is begun. Unless
/// stated, the usual one of double grooves, and all of it where only a root is gouged behind.
/// Pre: has_two_sides(joint).
[[nodiscard]] double first_share_of(const Joint& joint);

/// Fillets and tee or corner grooves are judged by the fillet rows of ISO 6947, butts by the groove
/// rows (docs/decisions.md).
[[nodiscard]] process::WeldFamily position_family(const Joint& joint);

/// Directions of a section at a station of a seam.
struct SectionFrame {
  geom::Vec3 origin;   ///< on the seam's path
  geom::Vec3 tangent;  ///< t, travel direction
  geom::Vec3 face;     ///< n, normal of the weld face
  geom::Vec3 x;        ///< across the section (docs/methods/section.md)
  geom::Vec3 y;        ///< out of the root towards the weld face
};
/// Frame J. Which side is x > 0 is the contract of section/weld_section.hpp:
/// - fillet: y = n; x = unit vector across y and t towards the first member's toe (that leg runs
///   along the component of wall_2 in the first member's surface).
/// - groove in a tee or corner: y = second member's outward normal, x = the component of the first
///   member's outward normal across y.
/// - butt and flush corner: y = n, x = n x t or against it, towards the second member, whichever
///   way the path runs.
/// At a corner of the path: of the leg the travel leaves on, or of the one it arrives on.
/// Pre: the seam has a path.
[[nodiscard]] SectionFrame section_frame(const Joint& joint,
                                         const Seam& seam,
                                         double distance_mm,
                                         geom::AtCorner corner = geom::AtCorner::leaving);

}  // namespace seamturn::joint

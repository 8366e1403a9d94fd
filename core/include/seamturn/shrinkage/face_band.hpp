// SPDX-License-Identifier: MIT
// What welds do to a datum face: how far it bows, shrinks and tilts, as bands between rules that
// disagree. No band releases a face: measure it after welding, machine it where it must be true.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "seamturn/base/finding.hpp"
#include "seamturn/geom/path.hpp"
#include "seamturn/geom/vector.hpp"
#include "seamturn/shrinkage/cut_section.hpp"
#include "seamturn/shrinkage/rules.hpp"

namespace seamturn::shrinkage {

/// A face that must be true. Frame J.
struct DatumFace {
  geom::Vec3 point = geom::Vec3::Zero();    ///< in its plane, amid it: the cuts go through it
  geom::Vec3 normal = geom::Vec3::UnitZ();  ///< outward, unit
  geom::Vec3 u = geom::Vec3::UnitX();       ///< unit, in the face
  geom::Vec3 v = geom::Vec3::UnitY();       ///< unit, in the face, square to u
  double length_u_mm = 0.0;
  double length_v_mm = 0.0;
  bool round = false;  ///< a disc: both lengths are its diameter
};

/// The sections that resist while a weld is made: cuts across u and across v, of the parts
/// assembled by then, heights from the face (Cut::point and Cut::up are the face's point and
/// normal).
struct FaceStage {
  CutSection across_u;
  CutSection across_v;
};

/// How a weld lies on the plate that carries the face.
struct OnPlate {
  bool fillet = false;
  double thickness_mm = 0.0;  ///< of the plate
  double gap_mm = 0.0;        ///< groove: root gap
  double leg_mm = 0.0;        ///< fillet
  double width_mm = 0.0;      ///< fillet: the plate's width across the weld, for its tilt; 0: none
  bool balanced = false;      ///< fillet: a like one lies opposite
};

/// One weld, in the order of welding.
struct FaceWeld {
  std::string seam_id;
  std::size_t stage = 0;       ///< which sections resist it
  double area_mm2 = 0.0;       ///< weld metal
  double net_heat_j_mm = 0.0;  ///< that reached the steel, summed over the runs
  /// Integral of t t^T along the weld, t its unit direction; frame J (tangents_over_mm).
  geom::Mat3 tangents_mm = geom::Mat3::Zero();
  double height_mm = 0.0;  ///< of the weld's centroid above the face; below 0 in the metal
  /// Runs all round: the band then reaches to the turn of a whole ring, 4/pi of the mean's.
  bool closed_ring = false;
  std::optional<OnPlate> on_plate;
};

enum class Bend {
  none,       ///< no rule moves it
  hollow,     ///< middle low, ends towards the normal
  crowned,    ///< middle high
  undecided,  ///< the rules disagree
};
[[nodiscard]] std::string_view bend_name(Bend bend);

/// What one weld adds; bow above 0: hollow.
struct SeamShare {
  std::string seam_id;
  Band bow_mm;
};

struct DirectionBand {
  Band bow_mm;  ///< middle against ends, of the whole length; above 0: hollow
  Bend bend = Bend::none;
  Band worst_on_the_way_mm;           ///< largest amount of bow after any weld of the order, >= 0
  std::size_t worst_after_welds = 0;  ///< by the rule with the larger amount: after so many
  std::vector<SeamShare> shares;      ///< in the order of welding
  Band along_mm;                      ///< shortening by welds along it, >= 0
  Band across_mm;                     ///< shortening by welds of the face's plate across it, >= 0
};

/// Lift of the plate's edge by one fillet on it.
struct FilletTilt {
  std::string seam_id;
  Band lift_mm;
  bool one_rule = false;  ///< only the rule from memory speaks: the low end is 0
};

struct FaceBand {
  DirectionBand u;
  DirectionBand v;
  std::vector<FilletTilt> tilts;  ///< never added up
  std::vector<base::Finding> findings;
};

/// Integral of t t^T along a path: its trace is the length, s^T T s the share along s.
/// Units: mm. Pre: the path is as its struct says. Source: none - geometry.
/// Accuracy: arcs and circles in 1024 chords by midpoint, 1e-5. Tests: shrinkage/face_band.
[[nodiscard]] geom::Mat3 tangent_integral_mm(const geom::Path& path);
/// The same over the part of a path that lies over the face, seen along its normal: what lies
/// beside it pulls elsewhere. Pre: as above; the face as face_band asks for.
/// Accuracy: a path that leaves the face is cut to 1/720 of its length.
/// Tests: shrinkage/face_band - closed-form.
[[nodiscard]] geom::Mat3 tangents_over_mm(const DatumFace& face, const geom::Path& path);

/// Bow, shrinkage and tilt of a datum face by the welds in their order.
/// Bow in direction s: each weld pulls with F (s^T T s)/L on average, d from the centroid of the
/// cut across s: curvature F d (s^T T s)/(E I L), bow curvature L2/8. F by heat and by area. Along
/// s: F (s^T T s)/(E A) and 25 Aw/Ap mm/m. Across s: 0.1 and 0.2 A/t, fillets half of the
/// tee's 1.02 z/t and 0.8 mm, each times (p^T T p)/L_p, p square to s.
/// Units: mm, mm2, J/mm; frame J -> mm.
/// Pre: finite; lengths, areas > 0; u, v, normal unit and square; stage within stages; sections >
/// 0. Outside: warns shrinkage.section.small (weld metal 5 % of the section or more: the rule along
///   fillets falls out, the low end is 0), shrinkage.fillet.leg, shrinkage.tilt.one_rule.
/// Source: rules of shrinkage/rules.hpp, docs/methods/shrinkage.md; beams from elementary
/// mechanics. Accuracy: none claimed; the rules' spread is the band. Restraint, temperature, tacks,
/// clamps and
///   residual stress of the plates are not seen.
/// Tests: shrinkage/face_band - law, cross, closed-form, computed.
[[nodiscard]] FaceBand face_band(const DatumFace& face,
                                 const std::vector<FaceStage>& stages,
                                 const std::vector<FaceWeld>& welds);

/// How far the face is out of its plane at most: of a round one the bow of either direction, and
/// of both where they bend it like a saddle; of another one its corners against its middle; or a
/// fillet's tilt. At the end of the order; on the way it may be more.
/// Units: mm, >= 0. Source: none - geometry. Tests: shrinkage/face_band - closed-form.
[[nodiscard]] double out_of_plane_mm(const DatumFace& face, const FaceBand& band);

/// A weld round a bore or beside it.
struct BoreWeld {
  double area_mm2 = 0.0;
  double net_heat_j_mm = 0.0;
  double ring_section_mm2 = 0.0;  ///< of the metal round the bore that shrinks with it, cut once
};
/// By how much a bore closes: the hoop strain of full ring welds near it times its diameter, by
/// force and by the rule along fillets.
/// Units: mm, mm2, J/mm -> mm. Pre: finite, > 0 (heat >= 0).
/// Outside: weld metal 5 % of the ring's section or more: the low end of that weld is 0.
/// Source: [SHRINK-FORCE], [SHRINK-MEMORY] from memory; hoop strain from elementary mechanics.
/// Tests: shrinkage/face_band - closed-form, law.
[[nodiscard]] Band bore_closing_mm(double diameter_mm, const std::vector<BoreWeld>& welds);

}  // namespace seamturn::shrinkage

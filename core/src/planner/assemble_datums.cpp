// SPDX-License-Identifier: MIT
// What the welds, in their order and with the section as assembled, do to faces and bores.
#include <algorithm>
#include <cmath>
#include <map>

#include "detail_tacking.hpp"
#include "seamturn/base/factors.hpp"
#include "seamturn/base/listed.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/joint/segments.hpp"
#include "seamturn/order/job.hpp"

namespace seamturn::planner::detail {

namespace {

using base::Finding;
using base::Severity;
using geom::Vec3;

/// A seam of the plan with what it was made from, in the order of welding.
struct Welded {
  const JointWork* joint = nullptr;
  const SeamWork* work = nullptr;
  const plan::PlannedSeam* planned = nullptr;
  double first_s = 0.0;
  std::size_t stage = 0;
};

std::vector<Welded> in_order(const std::vector<StageWork>& stages,
                             const std::vector<JointWork>& joints,
                             const plan::Plan& plan) {
  std::vector<Welded> welded;
  for (std::size_t j = 0; j < joints.size(); ++j) {
    const std::size_t stage = stage_index(stages, *joints[j].joint);
    for (std::size_t s = 0; s < joints[j].seams.size(); ++s) {
      const plan::PlannedSeam& planned = plan.joints[j].seams[s];
      if (!joints[j].seams[s].seam->path) continue;
      double first_s = order::never_s;  // without a clock in the order of the file
      for (const plan::PlannedPass& pass : planned.passes) {
        first_s = std::min(first_s, pass.start_s.value_or(order::never_s));
      }
      welded.push_back({&joints[j], &joints[j].seams[s], &planned, first_s, stage});
    }
  }
  std::stable_sort(welded.begin(), welded.end(), [](const Welded& a, const Welded& b) {
    return a.first_s < b.first_s;
  });
  return welded;
}

double net_heat_j_mm(const plan::PlannedSeam& seam) {
  using base::j_per_kj;
  double sum = 0.0;
  for (const plan::PlannedPass& pass : seam.passes) sum += pass.pass.heat_input_kj_mm * j_per_kj;
  return sum;
}

class DatumMaker {
 public:
  DatumMaker(const Inputs& inputs,
             const std::vector<StageWork>& stages,
             const std::vector<Welded>& welded,
             plan::Plan& plan)
      : inputs_(inputs), stages_(stages), welded_(welded), plan_(plan) {}

  plan::PlannedDatum make(const joint::Datum& datum) {
    plan::PlannedDatum planned;
    planned.id = datum.id;
    planned.allowance_mm = datum.allowance_mm;
    if (datum.kind == joint::DatumKind::face) face(datum, planned);
    if (datum.kind == joint::DatumKind::bore) bore(datum, planned);
    compare(datum, planned);
    heat(datum);
    return planned;
  }

 private:
  void tell(const joint::Datum& datum, const char* code, const std::string& text) {
    plan_.findings.push_back(
        Finding{Severity::warning,
                code,
                std::string(joint::datum_kind_name(datum.kind)) + " " + datum.id + ": " + text,
                place_of(inputs_.weldment, "datum/" + datum.id),
                {}});
  }

  static shrinkage::DatumFace face_of(const joint::Datum& datum) {
    shrinkage::DatumFace face;
    face.point = datum.at;
    face.normal = datum.axis;
    face.u = datum.along;
    face.v = geom::unit(datum.axis.cross(datum.along));
    face.length_u_mm = datum.length_mm;
    face.length_v_mm = datum.width_mm;
    face.round = datum.round;
    return face;
  }

  void face(const joint::Datum& datum, plan::PlannedDatum& planned) {
    const shrinkage::DatumFace face = face_of(datum);
    std::vector<shrinkage::FaceStage> sections;
    std::map<std::size_t, std::size_t> section_of;
    std::vector<shrinkage::FaceWeld> welds;
    for (const Welded& weld : welded_) {
      if (!joint::joins(*weld.joint->joint, datum.member)) continue;
      if (section_of.count(weld.stage) == 0) {
        const auto cut = cut_face(face, stages_[weld.stage]);
        if (!cut) return tell(datum, "plan.datum.no_section", cut.error().text);
        section_of[weld.stage] = sections.size();
        sections.push_back(*cut);
      }
      welds.push_back(face_weld(datum, weld, section_of.at(weld.stage)));
    }
    planned.face = shrinkage::face_band(face, sections, welds);
    for (const Finding& finding : planned.face->findings) {
      // One rule alone on thick plate is the usual case; the sheet's words say it.
      if (finding.code != "shrinkage.tilt.one_rule")
        tell(datum, finding.code.c_str(), finding.text);
    }
    set_bent_by(planned);
    if (const auto form = shrinkage::find_form_class(datum.flatness)) {
      const auto tolerance =
          shrinkage::form_tolerance(*form, std::max(datum.length_mm, datum.width_mm));
      if (tolerance) {
        planned.flatness = *tolerance;
      } else {
        tell(datum, tolerance.error().code.c_str(), tolerance.error().text);
      }
    }
  }

  static base::Outcome<shrinkage::FaceStage> cut_face(const shrinkage::DatumFace& face,
                                                      const StageWork& stage) {
    const auto u = shrinkage::cut_section(stage.present, {face.point, face.u, face.normal});
    if (!u) return u.error();
    const auto v = shrinkage::cut_section(stage.present, {face.point, face.v, face.normal});
    if (!v) return v.error();
    return shrinkage::FaceStage{*u, *v};
  }

  shrinkage::FaceWeld face_weld(const joint::Datum& datum,
                                const Welded& weld,
                                std::size_t section) const {
    shrinkage::FaceWeld out;
    const joint::Seam& seam = *weld.work->seam;
    out.seam_id = seam.id;
    out.stage = section;
    out.area_mm2 = weld.planned->section.area_mm2;
    out.net_heat_j_mm = net_heat_j_mm(*weld.planned);
    out.tangents_mm = shrinkage::tangents_over_mm(face_of(datum), *seam.path) *
                      (weld.planned->welded_mm / geom::path_length_mm(*seam.path));
    const geom::Station middle = geom::path_middle(*seam.path);
    out.closed_ring = std::holds_alternative<geom::CirclePath>(joint::drawn_course(seam)) &&
                      joint::stretches_of(seam).size() == 1;
    out.height_mm = (middle.point - datum.at).dot(datum.axis);
    const joint::Joint& joint = *weld.joint->joint;
    const bool is_butt = joint.type == joint::JointType::butt;
    if (joint.member_1 == datum.member || is_butt) out.on_plate = on_plate(datum, weld);
    return out;
  }

  /// How the weld lies on the datum's own plate: a groove in a tee counts as the fillet of its
  /// area.
  shrinkage::OnPlate on_plate(const joint::Datum& datum, const Welded& weld) const {
    shrinkage::OnPlate on;
    const joint::Joint& joint = *weld.joint->joint;
    const bool first = joint.member_1 == datum.member;
    const joint::Member& plate = first ? *weld.joint->member_1 : *weld.joint->member_2;
    on.thickness_mm = joint::wall_thickness_mm(plate.shape);
    on.fillet = joint.type != joint::JointType::butt;
    if (const auto* groove = std::get_if<joint::Groove>(&joint.preparation)) {
      on.gap_mm = groove->gap_mm;
    }
    on.leg_mm = weld.planned->section.is_fillet ? weld.planned->section.leg_1_mm
                                                : std::sqrt(2.0 * weld.planned->section.area_mm2);
    on.balanced = joint::drawn_seams(joint) == 2 && !joint::has_two_sides(joint);
    const auto* ring = std::get_if<joint::Ring>(&plate.shape);
    const bool round =
        std::holds_alternative<geom::CirclePath>(joint::drawn_course(*weld.work->seam));
    on.width_mm = ring != nullptr && round
                      ? (ring->outer_diameter_mm - ring->inner_diameter_mm) / 2.0
                      : std::min(datum.length_mm, datum.width_mm);
    return on;
  }

  static void set_bent_by(plan::PlannedDatum& planned) {
    std::map<std::string, double> amount_mm;
    std::vector<std::string> seams;
    for (const auto* direction : {&planned.face->u, &planned.face->v}) {
      for (const shrinkage::SeamShare& share : direction->shares) {
        if (amount_mm.emplace(share.seam_id, 0.0).second) seams.push_back(share.seam_id);
        double& most = amount_mm[share.seam_id];
        most = std::max({most, std::abs(share.bow_mm.low), std::abs(share.bow_mm.high)});
      }
    }
    std::stable_sort(seams.begin(), seams.end(), [&](const std::string& a, const std::string& b) {
      return amount_mm[a] > amount_mm[b];
    });
    constexpr std::size_t shown = 4;
    for (std::size_t i = 0; i < std::min(shown, seams.size()); ++i) {
      if (amount_mm[seams[i]] > 0.0) planned.bent_by.push_back(seams[i]);
    }
  }

  void bore(const joint::Datum& datum, plan::PlannedDatum& planned) {
    std::vector<shrinkage::BoreWeld> welds;
    const joint::Member* member = joint::find_member(inputs_.weldment, datum.member);
    for (const Welded& weld : welded_) {
      if (!joint::joins(*weld.joint->joint, datum.member)) continue;
      const joint::Seam& seam = *weld.work->seam;
      const auto* circle = std::get_if<geom::CirclePath>(&joint::drawn_course(seam));
      if (circle == nullptr || !runs_round(*circle, datum)) continue;
      if (seam.segment && seam.segment->number > 1) continue;  // the ring counts once
      const double ring_mm2 = metal_round_mm2(*member, datum);
      if (!(ring_mm2 > 0.0)) continue;
      welds.push_back({weld.planned->section.area_mm2, net_heat_j_mm(*weld.planned), ring_mm2});
    }
    if (!welds.empty()) {
      planned.closing_mm = shrinkage::bore_closing_mm(datum.length_mm, welds);
    }
  }

  static bool runs_round(const geom::CirclePath& circle, const joint::Datum& datum) {
    constexpr double near = 1e-3;
    const Vec3 off = circle.centre - datum.at;
    return circle.axis.cross(datum.axis).norm() < near &&
           (off - off.dot(datum.axis) * datum.axis).norm() < near * datum.length_mm;
  }

  /// Of the bore's own member, cut once along its axis.
  static double metal_round_mm2(const joint::Member& member, const joint::Datum& datum) {
    const Vec3 any = std::abs(datum.axis.x()) < 0.9 ? Vec3::UnitX() : Vec3::UnitY();
    const Vec3 across = geom::unit(datum.axis.cross(any));
    const auto cut = shrinkage::cut_section({&member}, {datum.at, across, datum.axis});
    return cut ? cut->area_mm2 / 2.0 : 0.0;  // the plane meets the ring twice
  }

  void compare(const joint::Datum& datum, plan::PlannedDatum& planned) {
    if (planned.face) planned.worst_mm = shrinkage::out_of_plane_mm(face_of(datum), *planned.face);
    if (planned.closing_mm) planned.worst_mm = planned.closing_mm->high;
    const std::string band = base::fixed_text(planned.worst_mm, 1) + " mm at the band's high end";
    if (planned.flatness && planned.worst_mm > planned.flatness->mm) {
      tell(datum,
           "plan.datum.flatness",
           band + ", class " + datum.flatness + " permits " +
               base::fixed_text(planned.flatness->mm, 1) +
               " mm as welded; balance the welds, weld smaller, or machine after welding");
    }
    if (datum.allowance_mm && planned.worst_mm > *datum.allowance_mm) {
      tell(datum,
           "plan.datum.allowance",
           band + ", " + base::fixed_text(*datum.allowance_mm, 1) +
               " mm are left to be machined; leave more, or balance the welds");
    }
  }

  void heat(const joint::Datum& datum) {
    if (!datum.temperature_max_c) return;
    std::vector<std::string> hot;
    for (const plan::PlannedJoint& joint : plan_.joints) {
      const joint::Joint& described = *joint::find_joint(inputs_.weldment, joint.id);
      const double hottest_c = std::max(joint.heat.preheat_c, joint.heat.interpass_max_c);
      if (joint::joins(described, datum.member) && hottest_c > *datum.temperature_max_c) {
        hot.push_back(joint.id);
      }
    }
    if (hot.empty()) return;
    tell(datum,
         "plan.datum.hot",
         "it may not get hotter than " + base::fixed_text(*datum.temperature_max_c, 0) +
             " degC, and joints on its member may be that hot and more between passes: " +
             base::listed(hot));
  }

  const Inputs& inputs_;
  const std::vector<StageWork>& stages_;
  const std::vector<Welded>& welded_;
  plan::Plan& plan_;
};

}  // namespace

void assemble_datums(const Inputs& inputs,
                     const std::vector<StageWork>& stages,
                     const std::vector<JointWork>& joints,
                     plan::Plan& plan) {
  if (inputs.weldment.datums.empty()) return;
  const std::vector<Welded> welded = in_order(stages, joints, plan);
  for (const joint::Datum& datum : inputs.weldment.datums) {
    plan.datums.push_back(DatumMaker(inputs, stages, welded, plan).make(datum));
  }
}

}  // namespace seamturn::planner::detail

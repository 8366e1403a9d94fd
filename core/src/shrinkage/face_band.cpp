// SPDX-License-Identifier: MIT
#include "seamturn/shrinkage/face_band.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "detail_checks.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/listed.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::shrinkage {

namespace {

using geom::Mat3;
using geom::Vec3;

Band between(double one, double other) {
  return {std::min(one, other), std::max(one, other)};
}

/// A direction of the face: what the rules need of it.
struct Direction {
  Vec3 s, p;  ///< along it, and square to it in the face
  double length_mm = 0.0;
  double width_mm = 0.0;  ///< along p
  CutSection FaceStage::*section = nullptr;
};

double share_mm(const FaceWeld& weld, const Vec3& direction) {
  return std::max(0.0, direction.dot(weld.tangents_mm * direction));
}

double bow_mm(double force_n, const FaceWeld& weld, const Direction& d, const CutSection& section) {
  const double mean_force_n = force_n * share_mm(weld, d.s) / d.length_mm;
  const double arm_mm = weld.height_mm - section.centroid_mm;
  return bow_by_force(mean_force_n, {arm_mm, d.length_mm, section.second_moment_mm4}).mm;
}

Bend bend_of(const Band& bow) {
  constexpr double nothing_mm = 1e-9;
  const bool up = bow.high > nothing_mm;
  const bool down = bow.low < -nothing_mm;
  if (up && down) return Bend::undecided;
  if (up) return Bend::hollow;
  return down ? Bend::crowned : Bend::none;
}

/// A sum and the largest amount it had on the way.
struct Running {
  double sum = 0.0;
  double worst = 0.0;
  std::size_t worst_after = 0;
  void add(double value, std::size_t welds) {
    sum += value;
    if (std::abs(sum) > worst) worst = std::abs(sum), worst_after = welds;
  }
};

/// Shortening along a direction by force and by the rule along fillets, where that speaks.
Band along_mm(const FaceWeld& weld, const Direction& d, const CutSection& section) {
  const double length_mm = share_mm(weld, d.s);
  if (!(length_mm > 0.0)) return {};
  const double by_force =
      shortening_by_force(force_by_heat_n(weld.net_heat_j_mm), length_mm, section.area_mm2).mm;
  const base::Outcome<RuleValue> by_area =
      along_fillet({weld.area_mm2, section.area_mm2, length_mm});
  return by_area ? between(by_force, by_area->mm) : Band{0.0, by_force};
}

/// Full shrinkage across a weld of the face's plate.
Band across_weld_mm(const FaceWeld& weld, const OnPlate& on) {
  if (!on.fillet) {
    const ButtWeld butt{weld.area_mm2, on.thickness_mm, on.gap_mm};
    return between(butt_by_mean_width(butt).mm, butt_by_area_and_gap(butt).mm);
  }
  const FilletPair pair{on.leg_mm, on.thickness_mm};
  const double by_rule = tee_fillets(pair).mm / 2.0;  // the rule is one of two fillets
  const base::Outcome<Allowance> allowed = allowance_across_fillet(pair);
  return allowed ? between(by_rule, allowed->mm.high) : Band{0.0, by_rule};
}

void add(Band& sum, const Band& more, double times = 1.0) {
  sum.low += more.low * times;
  sum.high += more.high * times;
}

/// A rule's bow over the order: with the mean pull over the length, and with closed rings turning
/// as whole rings do. Nobody knows which is nearer: both count.
struct Rule {
  Running by_mean;
  Running by_ring;

  void add(double mean_mm, bool ring, std::size_t welds) {
    constexpr double ring_over_mean = 4.0 / std::numbers::pi;
    by_mean.add(mean_mm, welds);
    by_ring.add(ring ? ring_over_mean * mean_mm : mean_mm, welds);
  }
  [[nodiscard]] Band sums() const { return between(by_mean.sum, by_ring.sum); }
  [[nodiscard]] Band worsts() const { return between(by_mean.worst, by_ring.worst); }
  [[nodiscard]] const Running& worse() const {
    return by_ring.worst > by_mean.worst ? by_ring : by_mean;
  }
};

Band around(const Band& a, const Band& b) {
  return {std::min(a.low, b.low), std::max(a.high, b.high)};
}

/// What one weld adds by one rule.
Band share_band(double mean_mm, bool ring) {
  Rule rule;
  rule.add(mean_mm, ring, 1);
  return rule.sums();
}

DirectionBand direction_band(const Direction& d,
                             const std::vector<FaceStage>& stages,
                             const std::vector<FaceWeld>& welds) {
  DirectionBand out;
  Rule by_heat;
  Rule by_area;
  for (const FaceWeld& weld : welds) {
    const CutSection& section = stages[weld.stage].*d.section;
    const double heat_mm = bow_mm(force_by_heat_n(weld.net_heat_j_mm), weld, d, section);
    const double area_mm = bow_mm(force_by_area_n(weld.area_mm2), weld, d, section);
    const bool ring = weld.closed_ring;
    out.shares.push_back(
        {weld.seam_id, around(share_band(heat_mm, ring), share_band(area_mm, ring))});
    by_heat.add(heat_mm, ring, out.shares.size());
    by_area.add(area_mm, ring, out.shares.size());
    add(out.along_mm, along_mm(weld, d, section));
    if (weld.on_plate) {
      add(out.across_mm, across_weld_mm(weld, *weld.on_plate), share_mm(weld, d.p) / d.width_mm);
    }
  }
  out.bow_mm = around(by_heat.sums(), by_area.sums());
  out.bend = bend_of(out.bow_mm);
  out.worst_on_the_way_mm = around(by_heat.worsts(), by_area.worsts());
  const bool heat_is_worse = by_heat.worse().worst >= by_area.worse().worst;
  out.worst_after_welds = (heat_is_worse ? by_heat : by_area).worse().worst_after;
  return out;
}

FilletTilt tilt_of(const FaceWeld& weld, const OnPlate& on) {
  const double by_rule = flange_tilt({on.width_mm, on.leg_mm, on.thickness_mm}).mm;
  const base::Outcome<Allowance> lean = published_lean(on.width_mm, on.thickness_mm);
  FilletTilt out{weld.seam_id, {0.0, by_rule}, !lean.has_value()};
  if (lean && !on.balanced) {
    out.lift_mm = {std::min(by_rule, lean->mm.low), std::max(by_rule, lean->mm.high)};
  }
  return out;
}

/// Seams named in one finding, however many there are.
class Named {
 public:
  void take(bool yes, const std::string& seam_id) {
    if (!yes || std::find(ids_.begin(), ids_.end(), seam_id) != ids_.end()) return;
    ids_.push_back(seam_id);
  }
  void report(const char* code, const std::string& what, std::vector<base::Finding>& out) const {
    if (ids_.empty()) return;
    out.push_back(detail::warning(code, base::listed(ids_) + ": " + what));
  }

 private:
  std::vector<std::string> ids_;
};

bool is_large(const FaceWeld& weld, const FaceStage& stage, const DatumFace& face) {
  const auto fills = [&weld](const Vec3& s, const CutSection& section) {
    return share_mm(weld, s) > 0.0 && weld.area_mm2 >= weld_share_of_section * section.area_mm2;
  };
  return fills(face.u, stage.across_u) || fills(face.v, stage.across_v);
}

std::vector<base::Finding> findings_of(const DatumFace& face,
                                       const std::vector<FaceStage>& stages,
                                       const std::vector<FaceWeld>& welds,
                                       const std::vector<FilletTilt>& tilts) {
  Named large, leg, tilt;
  for (const FaceWeld& weld : welds) {
    large.take(is_large(weld, stages[weld.stage], face), weld.seam_id);
    const bool fillet = weld.on_plate && weld.on_plate->fillet;
    leg.take(
        fillet && !allowance_across_fillet({weld.on_plate->leg_mm, weld.on_plate->thickness_mm}),
        weld.seam_id);
  }
  for (const FilletTilt& one : tilts) tilt.take(one.one_rule, one.seam_id);
  std::vector<base::Finding> out;
  large.report("shrinkage.section.small",
               "weld metal is 5 % or more of the section that resists it; the rules are not made "
               "for so much, the true bow may lie outside the band: measure a trial part",
               out);
  leg.report("shrinkage.fillet.leg",
             "leg above 3/4 of the plate: across it only a rule from memory speaks, the low end "
             "is 0; measure",
             out);
  tilt.report("shrinkage.tilt.one_rule",
              "plate above 12.7 mm: of its tilt only a rule from memory speaks, the low end is 0; "
              "measure",
              out);
  return out;
}

void require(const DatumFace& face) {
  constexpr double square = 1e-9;
  SEAMTURN_REQUIRE(face.point.allFinite(), face.point.x(), face.point.y(), face.point.z());
  for (const Vec3& direction : {face.normal, face.u, face.v}) {
    SEAMTURN_REQUIRE(std::abs(direction.norm() - 1.0) <= square, direction.norm());
  }
  SEAMTURN_REQUIRE(std::abs(face.u.dot(face.v)) <= square, face.u.dot(face.v));
  SEAMTURN_REQUIRE(std::abs(face.u.dot(face.normal)) <= square, face.u.dot(face.normal));
  SEAMTURN_REQUIRE(std::abs(face.v.dot(face.normal)) <= square, face.v.dot(face.normal));
  SEAMTURN_REQUIRE(base::is_positive(face.length_u_mm), face.length_u_mm);
  SEAMTURN_REQUIRE(base::is_positive(face.length_v_mm), face.length_v_mm);
}

bool lies_over(const DatumFace& face, const Vec3& point) {
  const double u_mm = (point - face.point).dot(face.u);
  const double v_mm = (point - face.point).dot(face.v);
  if (face.round) return std::hypot(u_mm, v_mm) <= face.length_u_mm / 2.0;
  return std::abs(u_mm) <= face.length_u_mm / 2.0 && std::abs(v_mm) <= face.length_v_mm / 2.0;
}

void require(const FaceWeld& weld, std::size_t stages) {
  SEAMTURN_REQUIRE(weld.stage < stages, weld.stage, stages);
  SEAMTURN_REQUIRE(base::is_positive(weld.area_mm2), weld.area_mm2);
  SEAMTURN_REQUIRE(base::is_amount(weld.net_heat_j_mm), weld.net_heat_j_mm);
  SEAMTURN_REQUIRE(weld.tangents_mm.allFinite(), weld.tangents_mm(0, 0));
  SEAMTURN_REQUIRE(std::isfinite(weld.height_mm), weld.height_mm);
}

}  // namespace

std::string_view bend_name(Bend bend) {
  constexpr std::string_view names[] = {"none", "hollow", "crowned", "undecided"};
  const auto index = static_cast<std::size_t>(bend);
  SEAMTURN_REQUIRE(index < std::size(names), index);
  return names[index];
}

geom::Mat3 tangent_integral_mm(const geom::Path& path) {
  Mat3 sum = Mat3::Zero();
  const auto add_leg = [&sum](const Vec3& from, const Vec3& to) {
    const double length_mm = (to - from).norm();
    if (length_mm > 0.0) sum += (to - from) * (to - from).transpose() / length_mm;
  };
  if (const auto* line = std::get_if<geom::LinePath>(&path)) {
    add_leg(line->from, line->to);
  } else if (const auto* legs = std::get_if<geom::PolylinePath>(&path)) {
    for (std::size_t i = 1; i < legs->points.size(); ++i) {
      add_leg(legs->points[i - 1], legs->points[i]);
    }
    if (legs->closed) add_leg(legs->points.back(), legs->points.front());
  } else {
    constexpr int chords = 1024;
    const double step_mm = geom::path_length_mm(path) / chords;
    for (int i = 0; i < chords; ++i) {
      const Vec3 t = geom::path_station(path, (i + 0.5) * step_mm).tangent;
      sum += t * t.transpose() * step_mm;
    }
  }
  return sum;
}

geom::Mat3 tangents_over_mm(const DatumFace& face, const geom::Path& path) {
  constexpr int steps = 720;
  const double step_mm = geom::path_length_mm(path) / steps;
  Mat3 sum = Mat3::Zero();
  int over = 0;
  for (int i = 0; i < steps; ++i) {
    const geom::Station here = geom::path_station(path, (i + 0.5) * step_mm);
    if (!lies_over(face, here.point)) continue;
    ++over;
    sum += here.tangent * here.tangent.transpose() * step_mm;
  }
  return over == steps ? tangent_integral_mm(path) : sum;
}

double out_of_plane_mm(const DatumFace& face, const FaceBand& band) {
  const auto most = [](const Band& bow) { return std::max(std::abs(bow.low), std::abs(bow.high)); };
  const double u_mm = most(band.u.bow_mm);
  const double v_mm = most(band.v.bow_mm);
  const bool same_way = band.u.bend == band.v.bend && band.u.bend != Bend::undecided;
  double amount_mm = face.round && same_way ? std::max(u_mm, v_mm) : u_mm + v_mm;
  for (const FilletTilt& tilt : band.tilts) amount_mm = std::max(amount_mm, tilt.lift_mm.high);
  return amount_mm;
}

FaceBand face_band(const DatumFace& face,
                   const std::vector<FaceStage>& stages,
                   const std::vector<FaceWeld>& welds) {
  require(face);
  for (const FaceWeld& weld : welds) require(weld, stages.size());
  FaceBand out;
  out.u = direction_band(
      {face.u, face.v, face.length_u_mm, face.length_v_mm, &FaceStage::across_u}, stages, welds);
  out.v = direction_band(
      {face.v, face.u, face.length_v_mm, face.length_u_mm, &FaceStage::across_v}, stages, welds);
  for (const FaceWeld& weld : welds) {
    if (weld.on_plate && weld.on_plate->fillet && weld.on_plate->width_mm > 0.0) {
      out.tilts.push_back(tilt_of(weld, *weld.on_plate));
    }
  }
  out.findings = findings_of(face, stages, welds, out.tilts);
  return out;
}

Band bore_closing_mm(double diameter_mm, const std::vector<BoreWeld>& welds) {
  SEAMTURN_REQUIRE(base::is_positive(diameter_mm), diameter_mm);
  Band closing;
  for (const BoreWeld& weld : welds) {
    const double force_n = force_by_heat_n(weld.net_heat_j_mm);
    const double by_force = shortening_by_force(force_n, diameter_mm, weld.ring_section_mm2).mm;
    const base::Outcome<RuleValue> by_area =
        along_fillet({weld.area_mm2, weld.ring_section_mm2, diameter_mm});
    add(closing, by_area ? between(by_force, by_area->mm) : Band{0.0, by_force});
  }
  return closing;
}

}  // namespace seamturn::shrinkage

// SPDX-License-Identifier: MIT
#include <cmath>
#include <string>
#include <string_view>
#include <vector>

#include "detail_check.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/number_text.hpp"

namespace seamturn::section::detail {

namespace {

using base::Refusal;

// Project choice: no weld on a plate is a metre wide or deep; a slip of unit is.
constexpr double largest_size_mm = 1000.0;
constexpr Angle smallest_dihedral = Angle::deg(60.0);  // [SKEWED-TEE]: fillets from 60 to 135 deg
constexpr Angle largest_dihedral = Angle::deg(135.0);
constexpr Angle angle_slack = Angle::deg(1e-6);  // directions read off members
constexpr double length_slack_mm = 1e-9;

std::string mm_text(double value_mm) {
  return base::digits_text(value_mm) + " mm";
}
std::string deg_text(Angle angle) {
  return base::fixed_text(angle.deg(), 3) + " deg";
}

class Problems {
 public:
  void add(std::string code, std::string text) {
    all_.push_back(Refusal{std::move(code), std::move(text)});
  }
  void check_size(std::string_view what, double value_mm) {
    if (value_mm <= 0.0) {
      add("section.size.not_positive",
          "the " + std::string(what) + " is " + mm_text(value_mm) + "; it must be above 0 mm");
    }
    check_not_huge(what, value_mm);
  }
  void check_not_huge(std::string_view what, double value_mm) {
    if (value_mm > largest_size_mm) {
      add("section.size.too_large",
          "the " + std::string(what) + " is " + mm_text(value_mm) + "; up to " +
              mm_text(largest_size_mm) + " is worked with; check the unit");
    }
  }
  [[nodiscard]] std::optional<Refusal> as_one() const {
    if (all_.empty()) return std::nullopt;
    Refusal refusal = all_.front();
    for (std::size_t i = 1; i < all_.size(); ++i) refusal.text += "; " + all_[i].text;
    return refusal;
  }

 private:
  std::vector<Refusal> all_;
};

void check_gap(double gap_mm, Problems& problems) {
  if (gap_mm < 0.0) {
    problems.add("section.gap.negative",
                 "the root gap is " + mm_text(gap_mm) + "; the least gap is 0 mm (edges touch)");
  }
  problems.check_not_huge("root gap", gap_mm);
}

void check_angle(std::string_view what, Angle angle, Problems& problems, Angle below) {
  if (angle > Angle::deg(0.0) && angle < below) return;
  problems.add("section.angle.out_of_range",
               "the " + std::string(what) + " is " + deg_text(angle) +
                   "; it must lie between 0 and " + base::shortest_text(below.deg()) + " deg");
}

void check_root_face(const SectionParams& params, double root_face_mm, Problems& problems) {
  if (root_face_mm < 0.0) {
    problems.add("section.root_face.negative",
                 "the root face is " + mm_text(root_face_mm) + "; the least is 0 mm (sharp edge)");
    return;
  }
  if (params.thickness_mm > 0.0 && root_face_mm >= params.thickness_mm) {
    problems.add("section.root_face.too_thick",
                 "the root face of " + mm_text(root_face_mm) + " leaves nothing to bevel in " +
                     mm_text(params.thickness_mm) + "; make it thinner, or take a square butt");
    return;
  }
  const double bevel_mm = params.thickness_mm - root_face_mm;
  const bool stops_short = params.depth_mm > 0.0 && params.depth_mm < bevel_mm - length_slack_mm;
  if (stops_short) {
    problems.add("section.depth.in_bevel",
                 "a depth of " + mm_text(params.depth_mm) + " ends inside the bevel, which is " +
                     mm_text(bevel_mm) +
                     " deep, and would leave a hollow under the weld; state a " +
                     "root face of at least " + mm_text(params.thickness_mm - params.depth_mm));
  }
}

void check_depth(const SectionParams& params, Problems& problems) {
  problems.check_size("thickness", params.thickness_mm);
  const bool sound =
      params.depth_mm >= 0.0 && params.depth_mm <= params.thickness_mm + length_slack_mm;
  if (sound || params.thickness_mm <= 0.0) return;
  problems.add("section.depth.out_of_range",
               "the depth is " + mm_text(params.depth_mm) + "; it must lie above 0 and up to the " +
                   "thickness of " + mm_text(params.thickness_mm));
}

struct Checker {
  const SectionParams& params;
  Problems& problems;

  void operator()(const joint::Fillet& fillet) const {
    problems.check_size("leg on the first member", fillet.leg_1_mm);
    problems.check_size("leg on the second member", fillet.leg_2_mm);
    const Angle between = params.between_plates;
    if (between < smallest_dihedral - angle_slack || between > largest_dihedral + angle_slack) {
      problems.add("section.angle.out_of_range",
                   "the plates stand at " + deg_text(between) +
                       "; fillets are worked with from 60 to 135 deg; outside, prepare the edge "
                       "and state a groove");
    }
    if (params.cap.height_mm != 0.0 || params.cap.toe_lap_mm != 0.0) {
      problems.add("section.cap.on_fillet",
                   "a cap is stated on a fillet, whose face is taken as flat; leave it out and "
                   "state the legs or the throat");
    }
  }
  void operator()(const joint::SquareButt& square) const {
    check_depth(params, problems);
    check_gap(square.gap_mm, problems);
  }
  void operator()(const joint::SingleV& v) const {
    check_depth(params, problems);
    check_gap(v.gap_mm, problems);
    check_root_face(params, v.root_face_mm, problems);
    check_angle("included angle", v.included, problems, Angle::deg(180.0));
  }
  void operator()(const joint::SingleBevel& bevel) const {
    check_depth(params, problems);
    check_gap(bevel.gap_mm, problems);
    check_root_face(params, bevel.root_face_mm, problems);
    check_angle("bevel angle", bevel.bevel, problems, Angle::deg(90.0));
  }
};

void check_cap(const joint::Cap& cap, Problems& problems) {
  if (cap.height_mm < 0.0 || cap.toe_lap_mm < 0.0) {
    problems.add("section.cap.negative",
                 "the cap is " + mm_text(cap.height_mm) + " high with " + mm_text(cap.toe_lap_mm) +
                     " toe lap; neither may be below 0 mm");
  }
  problems.check_not_huge("cap height", cap.height_mm);
  problems.check_not_huge("toe lap", cap.toe_lap_mm);
}

struct FiniteSizes {
  bool operator()(const joint::Fillet& f) const {
    return std::isfinite(f.leg_1_mm) && std::isfinite(f.leg_2_mm);
  }
  bool operator()(const joint::SquareButt& s) const { return std::isfinite(s.gap_mm); }
  bool operator()(const joint::SingleV& v) const {
    return std::isfinite(v.gap_mm + v.root_face_mm + v.included.rad());
  }
  bool operator()(const joint::SingleBevel& b) const {
    return std::isfinite(b.gap_mm + b.root_face_mm + b.bevel.rad());
  }
};

}  // namespace

double welded_depth_mm(const SectionParams& params) {
  const bool full = params.depth_mm == 0.0 || params.depth_mm > params.thickness_mm;
  return full ? params.thickness_mm : params.depth_mm;
}

std::optional<Refusal> check_params(const SectionParams& params) {
  SEAMTURN_REQUIRE(std::visit(FiniteSizes{}, params.preparation));
  SEAMTURN_REQUIRE(std::isfinite(params.thickness_mm), params.thickness_mm);
  SEAMTURN_REQUIRE(std::isfinite(params.depth_mm), params.depth_mm);
  SEAMTURN_REQUIRE(std::isfinite(params.between_plates.rad()), params.between_plates.rad());
  SEAMTURN_REQUIRE(std::isfinite(params.cap.height_mm), params.cap.height_mm);
  SEAMTURN_REQUIRE(std::isfinite(params.cap.toe_lap_mm), params.cap.toe_lap_mm);
  Problems problems;
  std::visit(Checker{params, problems}, params.preparation);
  check_cap(params.cap, problems);
  return problems.as_one();
}

std::optional<Refusal> check_opening(double opening_mm) {
  if (opening_mm <= largest_size_mm) return std::nullopt;
  return Refusal{"section.size.too_large",
                 "the groove would be " + base::fixed_text(opening_mm, 0) + " mm wide; up to " +
                     mm_text(largest_size_mm) + " is worked with; check the angle"};
}

}  // namespace seamturn::section::detail

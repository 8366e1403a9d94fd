// SPDX-License-Identifier: MIT
// Sections, wires, settings and limits made by hand, so that the pass room is tested on its own.
#pragma once

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "seamturn/pass/pass_stack.hpp"

namespace seamturn::tests {

inline const std::vector<process::WeldPosition> all_positions = {process::WeldPosition::pa,
                                                                 process::WeldPosition::pb,
                                                                 process::WeldPosition::pc,
                                                                 process::WeldPosition::pd,
                                                                 process::WeldPosition::pe,
                                                                 process::WeldPosition::pf,
                                                                 process::WeldPosition::pg};

/// First plate at x > 0, second at x < 0, both from the origin at half the angle off y.
inline section::WeldSection fillet_section(double leg_1_mm,
                                           double leg_2_mm,
                                           double between_deg = 90.0) {
  const double angle = between_deg * std::numbers::pi / 180.0;
  const double sine = std::sin(angle / 2.0);
  const double cosine = std::cos(angle / 2.0);
  section::WeldSection made;
  made.is_fillet = true;
  made.leg_1_mm = leg_1_mm;
  made.leg_2_mm = leg_2_mm;
  made.area_mm2 = 0.5 * leg_1_mm * leg_2_mm * std::sin(angle);
  made.opening_mm = std::sqrt(leg_1_mm * leg_1_mm + leg_2_mm * leg_2_mm -
                              2.0 * leg_1_mm * leg_2_mm * std::cos(angle));
  made.throat_mm = 2.0 * made.area_mm2 / made.opening_mm;
  const double low = std::min(leg_1_mm, leg_2_mm);
  made.profile = {{0.0, 0.0, 0.0}, {low * cosine, -low * sine, low * sine}};
  if (leg_1_mm != leg_2_mm) {
    const double high = std::max(leg_1_mm, leg_2_mm);
    const double tip_mm = (leg_1_mm > leg_2_mm ? high : -high) * sine;
    made.profile.push_back({high * cosine, tip_mm, tip_mm});
  }
  made.height_mm = made.profile.back().y_mm;
  return made;
}

struct GrooveSize {
  double thickness_mm = 0.0;
  double gap_mm = 0.0;
  double root_face_mm = 0.0;
  double left_deg = 0.0;  ///< of each face, from the plate's edge
  double right_deg = 0.0;
  double cap_mm = 0.0;
  double toe_lap_mm = 0.0;
};

inline section::WeldSection groove_section(const GrooveSize& size) {
  const double rise_mm = size.thickness_mm - size.root_face_mm;
  const double left_mm = rise_mm * std::tan(size.left_deg * std::numbers::pi / 180.0);
  const double right_mm = rise_mm * std::tan(size.right_deg * std::numbers::pi / 180.0);
  const double half_mm = 0.5 * size.gap_mm;
  section::WeldSection made;
  made.profile = {{0.0, -half_mm, half_mm}};
  if (size.root_face_mm > 0.0) {
    made.profile.push_back({size.root_face_mm, -half_mm, half_mm});
  }
  if (rise_mm > 0.0) {
    made.profile.push_back({size.thickness_mm, -half_mm - left_mm, half_mm + right_mm});
  }
  made.opening_mm = size.gap_mm + left_mm + right_mm;
  made.height_mm = made.throat_mm = size.thickness_mm;
  if (size.cap_mm > 0.0) {
    made.cap_height_mm = size.cap_mm;
    made.cap_width_mm = made.opening_mm + 2.0 * size.toe_lap_mm;
    made.cap_area_mm2 = 2.0 / 3.0 * made.cap_width_mm * size.cap_mm;
  }
  made.area_mm2 =
      size.gap_mm * size.thickness_mm + 0.5 * rise_mm * (left_mm + right_mm) + made.cap_area_mm2;
  return made;
}

/// A U as slices: the arcs at the bottom are twelve short pieces, the faces stand at an angle.
struct USize {
  double thickness_mm = 0.0;
  double gap_mm = 0.0;
  double root_face_mm = 0.0;
  double radius_mm = 0.0;
  double face_deg = 0.0;  ///< each, from the plate's edge
  double cap_mm = 0.0;
};

inline section::WeldSection u_section(const USize& size) {
  constexpr double degree = std::numbers::pi / 180.0;
  section::WeldSection made;
  const auto add = [&](double y_mm, double half_mm) {
    made.profile.push_back({y_mm, -half_mm, half_mm});
  };
  const double half_mm = 0.5 * size.gap_mm;
  if (size.root_face_mm > 0.0) add(0.0, half_mm);
  const double turn_deg = 90.0 - size.face_deg;
  for (int i = 0; i <= 12; ++i) {
    const double turned = i / 12.0 * turn_deg * degree;
    add(size.root_face_mm + size.radius_mm * (1.0 - std::cos(turned)),
        half_mm + size.radius_mm * std::sin(turned));
  }
  const section::Slice knee = made.profile.back();
  add(size.thickness_mm,
      knee.right_mm + (size.thickness_mm - knee.y_mm) * std::tan(size.face_deg * degree));
  made.opening_mm = 2.0 * made.profile.back().right_mm;
  made.height_mm = made.throat_mm = size.thickness_mm;
  if (size.cap_mm > 0.0) {
    made.cap_height_mm = size.cap_mm;
    made.cap_width_mm = made.opening_mm + 2.0;
    made.cap_area_mm2 = 2.0 / 3.0 * made.cap_width_mm * size.cap_mm;
  }
  made.area_mm2 = made.cap_area_mm2;
  for (std::size_t i = 1; i < made.profile.size(); ++i) {
    made.area_mm2 += (made.profile[i].y_mm - made.profile[i - 1].y_mm) *
                     (made.profile[i].right_mm + made.profile[i - 1].right_mm);
  }
  return made;
}

/// A bevel in a tee: square wall at x = 0, bevel on the right, a triangular cover on top.
inline section::WeldSection tee_section(double thickness_mm, double bevel_deg, double cover_mm) {
  section::WeldSection made = groove_section({thickness_mm, 0.0, 0.0, 0.0, bevel_deg, 0.0, 0.0});
  for (section::Slice& slice : made.profile) {
    slice.right_mm += 3.0;  // the gap
  }
  made.opening_mm += 3.0;
  made.cap_shape = section::CapShape::triangle;
  made.cap_height_mm = cover_mm;
  made.cap_width_mm = made.opening_mm + 2.0;
  made.cap_area_mm2 = 0.5 * made.cap_width_mm * made.cap_height_mm;
  made.area_mm2 += 3.0 * thickness_mm + made.cap_area_mm2;
  return made;
}

inline process::Wire solid_wire() {
  process::Wire wire;
  wire.id = "wire-12";
  wire.process = "135";
  wire.diameter_mm = 1.2;
  wire.efficiency_ratio = 0.95;
  return wire;
}

/// Invented row; travel in cm/min, feed in m/min as a welder reads them.
struct RowSize {
  std::string id;
  process::PassRole role = process::PassRole::fill;
  double feed_m_min = 0.0;
  double slowest_cm_min = 0.0;
  double fastest_cm_min = 0.0;
  double preferred_cm_min = 0.0;
};

inline process::LinkedSettings settings_row(const RowSize& size) {
  process::LinkedSettings row;
  row.id = size.id;
  row.process = "135";
  row.wire = "wire-12";
  row.role = size.role;
  row.positions = all_positions;
  row.feed_mm_s = size.feed_m_min * 1000.0 / 60.0;
  row.voltage_v = 29.0;
  row.current_a = 280.0;
  row.travel_min_mm_s = size.slowest_cm_min / 6.0;
  row.travel_max_mm_s = size.fastest_cm_min / 6.0;
  row.travel_preferred_mm_s = size.preferred_cm_min / 6.0;
  return row;
}

/// Any travel closes: only the limits decide.
inline std::vector<process::LinkedSettings> any_travel() {
  using process::PassRole;
  std::vector<process::LinkedSettings> rows;
  for (const PassRole role : {PassRole::root, PassRole::fill, PassRole::cap, PassRole::single}) {
    rows.push_back(settings_row(
        {"any-" + std::to_string(static_cast<int>(role)), role, 9.0, 0.01, 1e7, 45.0}));
  }
  return rows;
}

/// Rows as a shop keeps them.
inline std::vector<process::LinkedSettings> shop_travel() {
  using process::PassRole;
  return {settings_row({"root", PassRole::root, 8.0, 32.0, 70.0, 50.0}),
          settings_row({"root-hot", PassRole::root, 9.5, 34.0, 75.0, 50.0}),
          settings_row({"fill", PassRole::fill, 9.0, 25.0, 65.0, 40.0}),
          settings_row({"fill-hot", PassRole::fill, 11.0, 23.0, 65.0, 36.0}),
          settings_row({"cap", PassRole::cap, 8.5, 24.0, 65.0, 38.0}),
          settings_row({"cap-hot", PassRole::cap, 10.0, 24.0, 65.0, 36.0}),
          settings_row({"single", PassRole::single, 9.0, 30.0, 80.0, 45.0}),
          settings_row({"single-hot", PassRole::single, 11.5, 24.0, 60.0, 34.0})};
}

/// Everything a request points at, kept together.
struct Bench {
  section::WeldSection section;
  process::WeldFamily family = process::WeldFamily::fillet;
  process::WeldPosition position = process::WeldPosition::pa;
  process::Wire wire = solid_wire();
  std::vector<process::LinkedSettings> settings;
  std::vector<process::BeadLimit> limits;
  std::optional<double> heat_min_kj_mm;
  std::optional<double> heat_max_kj_mm;

  [[nodiscard]] base::Outcome<pass::PassStack> lay() const {
    pass::StackRequest request;
    request.section = &section;
    request.family = family;
    request.position = position;
    request.length_mm = 500.0;
    request.wire = &wire;
    request.settings = settings;
    request.limits = limits;
    request.heat_input_min_kj_mm = heat_min_kj_mm;
    request.heat_input_max_kj_mm = heat_max_kj_mm;
    return pass::make_pass_stack(request);
  }
};

inline std::size_t count_passes(const Bench& bench) {
  return bench.lay().value().passes.size();
}

}  // namespace seamturn::tests

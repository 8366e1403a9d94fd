// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>

#include "pass/detail_cap.hpp"

namespace seamturn::pass {
namespace {

/// Where strip + cap, as a function of the share s, holds a share q of all. With s = 1/2 + t the
/// parabola's part 3 s2 - 2 s3 is 1/2 + 3/2 t - 2 t3: a depressed cubic with three real roots, the
/// middle one by a third of an angle.
[[nodiscard]] double parabola_share(double cap_mm2, double strip_mm2, double q) {
  const double p = (strip_mm2 + 1.5 * cap_mm2) / (2.0 * cap_mm2);
  const double r = (q - 0.5) * (strip_mm2 + cap_mm2) / (2.0 * cap_mm2);
  const double k = std::sqrt(p / 3.0);
  const double sine = std::clamp(r / (2.0 * k * k * k), -1.0, 1.0);
  return 0.5 + 2.0 * k * std::sin(std::asin(sine) / 3.0);
}

/// The same with the triangle's part 2 s - s2: a quadratic, its root without cancellation.
[[nodiscard]] double triangle_share(double cap_mm2, double strip_mm2, double q) {
  const double wanted_mm2 = q * (strip_mm2 + cap_mm2);
  const double half_mm2 = 0.5 * strip_mm2 + cap_mm2;
  const double root_mm2 = std::sqrt(std::max(0.0, half_mm2 * half_mm2 - cap_mm2 * wanted_mm2));
  return wanted_mm2 / (half_mm2 + root_mm2);
}

}  // namespace

CapSize cap_size(const section::WeldSection& section) {
  CapSize cap;
  if (section.cap_area_mm2 <= 0.0) {
    return cap;
  }
  cap.shape = section.cap_shape;
  cap.area_mm2 = section.cap_area_mm2;
  cap.height_mm = section.cap_height_mm;
  cap.width_mm = section.cap_width_mm;
  const section::Slice& face = section.profile.back();
  cap.left_mm = cap.shape == CapShape::triangle
                    ? face.left_mm
                    : 0.5 * (face.left_mm + face.right_mm - section.cap_width_mm);
  return cap;
}

CapPart cap_part(const CapSize& cap, double s) {
  const double lift_mm3 = cap.height_mm * cap.height_mm * cap.width_mm;
  if (cap.shape == CapShape::triangle) {
    const double rest = 1.0 - s;
    return {cap.area_mm2 * s * (2.0 - s),
            cap.area_mm2 * cap.width_mm * s * s * (1.0 - 2.0 / 3.0 * s),
            lift_mm3 * (1.0 - rest * rest * rest) / 6.0};
  }
  return {cap.area_mm2 * s * s * (3.0 - 2.0 * s),
          cap.area_mm2 * cap.width_mm * s * s * s * (2.0 - 1.5 * s),
          lift_mm3 * 8.0 * s * s * s * (1.0 / 3.0 - 0.5 * s + 0.2 * s * s)};
}

double width_share(const CapSize& cap, double strip_mm2, double area_share) {
  if (cap.area_mm2 <= 0.0 || area_share <= 0.0 || area_share >= 1.0) {
    return std::clamp(area_share, 0.0, 1.0);
  }
  const double share = cap.shape == CapShape::triangle
                           ? triangle_share(cap.area_mm2, strip_mm2, area_share)
                           : parabola_share(cap.area_mm2, strip_mm2, area_share);
  return std::clamp(share, 0.0, 1.0);
}

}  // namespace seamturn::pass

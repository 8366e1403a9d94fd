// SPDX-License-Identifier: MIT
#include "seamturn/reach/torch_body.hpp"

#include <algorithm>
#include <cmath>

#include "seamturn/base/error.hpp"

namespace seamturn::reach {

geom::Vec3 body_direction(const TorchPose& pose, Angle bend, Angle heading) {
  const geom::Vec3 along_wire = -pose.torch;
  const geom::Vec3 behind = geom::unit(-(pose.travel - pose.travel.dot(along_wire) * along_wire));
  const geom::Vec3 aside = pose.torch.cross(behind);
  const geom::Vec3 out = std::cos(heading.rad()) * behind + std::sin(heading.rad()) * aside;
  return std::cos(bend.rad()) * along_wire + std::sin(bend.rad()) * out;
}

std::vector<TorchBall> torch_balls(const TorchPose& pose,
                                   const cell::Torch& torch,
                                   const cell::TorchBody& body,
                                   Angle heading,
                                   double from_mm) {
  const double nozzle_mm = 0.5 * torch.nozzle_diameter_mm;
  const double body_mm = 0.5 * body.diameter_mm;
  SEAMTURN_REQUIRE(nozzle_mm > 0.0 && body_mm > 0.0, nozzle_mm, body_mm);
  std::vector<TorchBall> balls;
  const auto put = [&](const geom::Vec3& start,
                       const geom::Vec3& way,
                       double from,
                       double to,
                       double radius_mm) {
    constexpr double apart_ratio = 0.4;
    if (to < from) return;
    const int steps =
        std::max(1, static_cast<int>(std::ceil((to - from) / (apart_ratio * radius_mm))));
    for (int i = 0; i <= steps; ++i) {
      balls.push_back({start + (from + (to - from) * i / steps) * way, radius_mm});
    }
  };
  put(pose.point, -pose.torch, from_mm, body.tip_to_bend_mm, nozzle_mm);
  const geom::Vec3 bend = pose.point - body.tip_to_bend_mm * pose.torch;
  const geom::Vec3 away = body_direction(pose, body.bend, heading);
  put(bend, away, 0.0, std::min(body_mm, body.length_mm), nozzle_mm);
  put(bend, away, body_mm, body.length_mm, body_mm);
  return balls;
}

}  // namespace seamturn::reach

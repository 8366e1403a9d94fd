// SPDX-License-Identifier: MIT
#include "seamturn/pass/nozzle_access.hpp"

#include <algorithm>
#include <limits>

#include "pass/detail_groove.hpp"
#include "pass/detail_nozzle.hpp"
#include "pass/detail_profile.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/rounding.hpp"

namespace seamturn::pass {
namespace {

using base::fixed_text;

// Beyond this no torch holds its nozzle out: a plate parallel to the torch is never cleared.
constexpr double longest_stick_out_mm = 100.0;
// Widest opening tried, as the tangent by which each face is turned outwards.
constexpr double widest_opening = 2.0;
using base::rounding_mm;

[[nodiscard]] Mouth mouth_of(const NozzleAccessRequest& request, const Pass& pass) {
  return {pass.tip_distance_mm - request.nozzle.recess_mm, 0.5 * request.nozzle.outer_diameter_mm};
}

/// Clearance and the nearest wall only.
[[nodiscard]] PassAccess clearance_of(const NozzleAccessRequest& request,
                                      const std::vector<WallPiece>& walls,
                                      const Pass& pass) {
  PassAccess access;
  access.number = pass.number;
  access.clearance_mm = std::numeric_limits<double>::infinity();
  const Mouth mouth = mouth_of(request, pass);
  for (const WallPiece& wall : walls) {
    const double clearance_mm = piece_clearance_mm(seen_from_torch(wall, pass), mouth);
    if (clearance_mm < access.clearance_mm) {
      access.clearance_mm = clearance_mm;
      access.wall = wall.wall;
    }
  }
  return access;
}

/// What would clear this pass by the clearance due.
void set_ways_out(PassAccess& access,
                  const NozzleAccessRequest& request,
                  const std::vector<WallPiece>& walls,
                  const Pass& pass) {
  const Mouth mouth = mouth_of(request, pass);
  const double due_mm = request.clearance_mm;
  double furthest_mm = 0.0;
  double nearest_mm = std::numeric_limits<double>::infinity();
  for (const WallPiece& wall : walls) {
    const SeenPiece seen = seen_from_torch(wall, pass);
    if (const auto along_mm = furthest_along_mm(seen, mouth.half_mm + due_mm)) {
      furthest_mm = std::max(furthest_mm, *along_mm);
    }
    if (const auto beside_mm = nearest_beside_mm(seen, mouth.along_mm - due_mm)) {
      nearest_mm = std::min(nearest_mm, *beside_mm);
    }
  }
  if (furthest_mm < longest_stick_out_mm) {
    access.stick_out_mm = furthest_mm + due_mm + request.nozzle.recess_mm;
  }
  if (nearest_mm > due_mm) {
    access.slim_diameter_mm = 2.0 * (nearest_mm - due_mm);
  }
}

[[nodiscard]] bool clears(const NozzleAccessRequest& request, double opening) {
  const std::vector<WallPiece> walls = nozzle_walls(request, opening);
  return std::all_of(request.passes.begin(), request.passes.end(), [&](const Pass& pass) {
    return clearance_of(request, walls, pass).clearance_mm >= request.clearance_mm - rounding_mm;
  });
}

[[nodiscard]] std::optional<Angle> wider_angle(const NozzleAccessRequest& request) {
  if (!angle_between_faces(*request.section, 0.0) || !clears(request, widest_opening)) {
    return std::nullopt;
  }
  double low = 0.0;
  double high = widest_opening;
  for (int i = 0; i < 24; ++i) {
    const double mid = 0.5 * (low + high);
    (clears(request, mid) ? high : low) = mid;
  }
  return angle_between_faces(*request.section, high);
}

[[nodiscard]] std::string ways_out_text(const NozzleAccess& access, const process::Nozzle& nozzle) {
  std::string text =
      access.slim_diameter_mm
          ? "a slim nozzle of at most " + fixed_text(*access.slim_diameter_mm, 1) + " mm"
          : std::string("no nozzle is slim enough at this stick-out");
  text += access.included
              ? ", an included angle of at least " + fixed_text(access.included->deg(), 1) + " deg"
              : std::string(", no wider angle helps");
  if (!access.stick_out_mm) {
    return text + ", no stick-out helps";
  }
  text += ", or a stick-out of at least " + fixed_text(*access.stick_out_mm, 1) +
          " mm with settings of its own";
  if (*access.stick_out_mm > nozzle.stick_out_max_mm) {
    text += " (above the nozzle's " + fixed_text(nozzle.stick_out_max_mm, 1) + " mm)";
  }
  return text;
}

void add_no_access(NozzleAccess& access, const NozzleAccessRequest& request) {
  const auto tight =
      std::find_if(access.passes.begin(), access.passes.end(), [&](const PassAccess& each) {
        return each.number == access.tightest;
      });
  const double clearance_mm = access.clearance_mm;
  access.findings.push_back(base::Finding{
      base::Severity::warning,
      "pass.nozzle.no_access",
      "pass " + std::to_string(access.tightest) + ": the nozzle of " +
          fixed_text(request.nozzle.outer_diameter_mm, 1) + " mm " +
          (clearance_mm < 0.0 ? "runs " + fixed_text(-clearance_mm, 1) + " mm into the "
                              : "comes within " + fixed_text(clearance_mm, 1) + " mm of the ") +
          std::string(nozzle_wall_name(tight->wall)) + ", " + fixed_text(request.clearance_mm, 1) +
          " mm are due; ways out: " + ways_out_text(access, request.nozzle),
      {},
      {}});
}

void add_stick_outs(NozzleAccess& access, const NozzleAccessRequest& request) {
  const process::Nozzle& nozzle = request.nozzle;
  for (const Pass& pass : request.passes) {
    if (pass.tip_distance_mm >= nozzle.stick_out_min_mm - rounding_mm &&
        pass.tip_distance_mm <= nozzle.stick_out_max_mm + rounding_mm) {
      continue;
    }
    access.findings.push_back(base::Finding{
        base::Severity::warning,
        "pass.nozzle.stick_out",
        "pass " + std::to_string(pass.number) + ": settings " + pass.settings +
            " hold the contact tip " + fixed_text(pass.tip_distance_mm, 1) +
            " mm off the work, the nozzle is for " + fixed_text(nozzle.stick_out_min_mm, 1) +
            " to " + fixed_text(nozzle.stick_out_max_mm, 1) +
            " mm; take a row or a nozzle that fits the other",
        {},
        {}});
    return;  // the rows of one stack mostly share one distance: said once
  }
}

/// The narrowest of a way out over the passes; none when one pass has none.
void narrow(NozzleAccess& access) {
  access.slim_diameter_mm = std::numeric_limits<double>::infinity();
  access.stick_out_mm = 0.0;
  for (const PassAccess& pass : access.passes) {
    if (access.slim_diameter_mm) {
      access.slim_diameter_mm =
          pass.slim_diameter_mm
              ? std::optional(std::min(*access.slim_diameter_mm, *pass.slim_diameter_mm))
              : std::nullopt;
    }
    if (access.stick_out_mm) {
      access.stick_out_mm = pass.stick_out_mm
                                ? std::optional(std::max(*access.stick_out_mm, *pass.stick_out_mm))
                                : std::nullopt;
    }
  }
}

}  // namespace

std::string_view nozzle_wall_name(NozzleWall wall) {
  switch (wall) {
    case NozzleWall::left_face:
      return "left face";
    case NozzleWall::right_face:
      return "right face";
    case NozzleWall::left_plate:
      return "left plate";
    case NozzleWall::right_plate:
      return "right plate";
  }
  return "left face";
}

NozzleAccess find_nozzle_access(const NozzleAccessRequest& request) {
  SEAMTURN_REQUIRE(request.section != nullptr && !request.passes.empty(), request.passes.size());
  const process::Nozzle& nozzle = request.nozzle;
  SEAMTURN_REQUIRE(nozzle.outer_diameter_mm > 0.0, nozzle.outer_diameter_mm);
  SEAMTURN_REQUIRE(request.clearance_mm >= 0.0, request.clearance_mm);
  SEAMTURN_REQUIRE(
      nozzle.stick_out_min_mm >= 0.0 && nozzle.stick_out_min_mm <= nozzle.stick_out_max_mm,
      nozzle.stick_out_min_mm,
      nozzle.stick_out_max_mm);
  const std::vector<WallPiece> walls = nozzle_walls(request, 0.0);
  NozzleAccess access;
  access.clearance_mm = std::numeric_limits<double>::infinity();
  for (const Pass& pass : request.passes) {
    PassAccess each = clearance_of(request, walls, pass);
    set_ways_out(each, request, walls, pass);
    if (each.clearance_mm < access.clearance_mm) {
      access.clearance_mm = each.clearance_mm;
      access.tightest = each.number;
    }
    access.passes.push_back(each);
  }
  narrow(access);
  access.is_reached = access.clearance_mm >= request.clearance_mm - rounding_mm;
  if (!access.is_reached) {
    access.included = wider_angle(request);
    add_no_access(access, request);
  }
  add_stick_outs(access, request);
  return access;
}

Pass bead_at_height(const section::WeldSection& section, double height_mm) {
  SEAMTURN_REQUIRE(height_mm >= 0.0 && height_mm < section.height_mm, height_mm, section.height_mm);
  Pass bead;
  bead.number = 1;
  bead.aim.y_mm = height_mm;
  if (section.is_fillet) return bead;
  const section::Slice low = Profile(section).walls_at(height_mm);
  bead.aim = {0.5 * (low.left_mm + low.right_mm), low.y_mm};  // metal may begin higher
  bead.work_angle = halved_walls(low, section.profile.back());
  return bead;
}

}  // namespace seamturn::pass

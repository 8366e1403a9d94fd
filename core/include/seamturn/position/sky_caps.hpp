// SPDX-License-Identifier: MIT
// Which directions of a part may point to the sky: caps on the unit sphere, patches cut out by
// caps, and skies that lie in many patches at once. All directions in one frame, that of the
// faceplate (D), unit length.
#pragma once

#include <optional>
#include <vector>

#include "seamturn/geom/vector.hpp"
#include "seamturn/position/classify.hpp"

namespace seamturn::position {

/// All unit u with u . axis >= least: within arccos(least) of the axis.
struct SkyCap {
  geom::Vec3 axis = geom::Vec3::UnitZ();
  double least = 0.0;
};

/// Where a seam is held as wanted: inside every cap. Centre: a direction inside, the one wanted.
struct SkyPatch {
  geom::Vec3 centre = geom::Vec3::UnitZ();
  std::vector<SkyCap> caps;
};

/// How far a seam may lie off a nominal attitude, none below 0.
struct Slack {
  Angle downhill;
  Angle uphill;
  Angle bank;
};

/// True inside or up to 1e-6 degree outside.
[[nodiscard]] bool is_in(const SkyCap& cap, const geom::Vec3& u);
[[nodiscard]] bool is_in(const SkyPatch& patch, const geom::Vec3& u);

/// Angle from a direction to the nearest border of the patch; negative outside.
/// Pre: the patch has a cap.
/// Source: none - arccos(least) less the angle to the axis. Tests: position/sky_caps - closed-form.
[[nodiscard]] Angle depth(const SkyPatch& patch, const geom::Vec3& u);

/// Where the borders of two caps cross: two directions, one where they touch, none where they miss.
/// Units: unit directions. Pre: axes unit.
/// Source: none - u = (alpha a + beta b) +- gamma (a x b). Tests: position/sky_caps - closed-form,
///   law (on both borders).
[[nodiscard]] std::vector<geom::Vec3> border_crossings(const SkyCap& a, const SkyCap& b);

/// The skies that hold a seam of travel t and face n off a nominal slope and bank by no more than
/// `slack`: slope within two small circles about t, bank within two great circles through t.
/// Exact, not fitted.
/// Frame: of t and n. Pre: t, n unit and square; |slope| below 90 deg; bank slack below 90 deg.
/// Source: docs/methods/stance.md. Tests: position/sky_caps - law (the same as slope and bank found
///   by attitude, on a fine grid).
[[nodiscard]] SkyPatch attitude_patch(const geom::Vec3& t,
                                      const geom::Vec3& n,
                                      const Attitude& nominal,
                                      const Slack& slack);

/// Of several patches that must hold at once (the stations of a seam that turns): the largest round
/// cap about `centre` inside all of them; none when the centre is outside one.
/// Tests: position/sky_caps - law.
[[nodiscard]] std::optional<SkyPatch> inner_cap(const geom::Vec3& centre,
                                                const std::vector<SkyPatch>& all);

/// A sky and the patches it lies in, by number, rising.
struct SharedSky {
  geom::Vec3 u = geom::Vec3::UnitZ();
  std::vector<int> patches;
};

struct SharedSkyParams {
  int most_neighbours = 12;  ///< of a patch, nearest first, that it is crossed with
  int most_per_patch = 6;    ///< groups kept of those a patch is in, largest first
  /// Only skies on this border can be reached (one axis); none: all of the sphere.
  std::optional<SkyCap> only_on;
};

/// Skies that lie in two patches or more. Of every region where patches overlap some corner lies on
/// two borders, so corners of patches and crossings of the borders of neighbours find the regions;
/// the sky told is the middle of the region's corners, where that lies inside, else a corner.
/// Alike patches (centres closer than 1e-6 rad) count as one in the search and are all told.
/// Pre: every patch holds its centre and is one round cap about it or cut out by four borders as
///   attitude_patch does.
/// Outside: with more neighbours than most_neighbours, groups may be missed, never told wrongly.
/// Accuracy: every sky told lies in all its patches and in no other (is_in).
/// Cost: patches x neighbours x crossings of two patches; memory linear in patches.
/// Source: none - corners of an arrangement. Tests: position/sky_caps - brute force on a fine grid,
///   laws (membership, turned scene, order of the patches).
[[nodiscard]] std::vector<SharedSky> shared_skies(const std::vector<SkyPatch>& patches,
                                                  const SharedSkyParams& params = {});

}  // namespace seamturn::position

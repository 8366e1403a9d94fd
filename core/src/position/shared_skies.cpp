// SPDX-License-Identifier: MIT
// Skies that lie in many patches: corners where borders cross, then inward.
#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "position/detail_sky_grid.hpp"
#include "seamturn/position/sky_caps.hpp"

namespace seamturn::position {

namespace {

using geom::Vec3;
using Group = std::vector<int>;  ///< numbers of patches, rising

/// Corners of a patch: where its borders cross inside it.
std::vector<Vec3> corners_of(const SkyPatch& patch) {
  std::vector<Vec3> corners;
  for (std::size_t i = 0; i < patch.caps.size(); ++i) {
    for (std::size_t j = i + 1; j < patch.caps.size(); ++j) {
      for (const Vec3& u : border_crossings(patch.caps[i], patch.caps[j])) {
        if (is_in(patch, u)) corners.push_back(u);
      }
    }
  }
  return corners;
}

/// Farthest that a patch reaches from its centre.
double reach_rad(const SkyPatch& patch) {
  if (patch.caps.size() == 1) {
    return geom::angle_between(patch.caps[0].axis, patch.centre).rad() +
           std::acos(std::clamp(patch.caps[0].least, -1.0, 1.0));
  }
  double farthest = 0.0;
  for (const Vec3& corner : corners_of(patch)) {
    farthest = std::max(farthest, geom::angle_between(patch.centre, corner).rad());
  }
  // Between two corners a border bulges out by less than the way to a corner.
  return farthest > 0.0 ? 1.1 * farthest : 3.2;
}

bool is_alike(const SkyPatch& a, const SkyPatch& b) {
  constexpr double same = 1e-6;
  if (a.caps.size() != b.caps.size()) return false;
  return std::all_of(a.caps.begin(), a.caps.end(), [&](const SkyCap& cap) {
    return std::any_of(b.caps.begin(), b.caps.end(), [&](const SkyCap& other) {
      return (cap.axis - other.axis).norm() < same && std::abs(cap.least - other.least) < same;
    });
  });
}

class Search {
 public:
  Search(const std::vector<SkyPatch>& patches, const SharedSkyParams& params)
      : patches_(patches), params_(params) {
    double widest_rad = 0.0;
    for (const SkyPatch& patch : patches) {
      reach_.push_back(reach_rad(patch));
      widest_rad = std::max(widest_rad, reach_.back());
    }
    grid_ = SkyGrid(widest_rad);
    for (std::size_t i = 0; i < patches.size(); ++i) add(static_cast<int>(i));
  }

  std::vector<SharedSky> find() {
    for (const int i : firsts_) collect(i);
    std::map<Group, Vec3> told;
    for (const auto& [group, corner] : groups_) {
      const Vec3 u = inwards(group, corner);
      const Group members = members_at(u);
      if (members.size() >= group.size()) told.emplace(members, u);
    }
    std::vector<SharedSky> skies;
    for (const auto& [members, u] : told) skies.push_back(SharedSky{u, expanded(members)});
    return skies;
  }

 private:
  const SkyPatch& patch(int i) const { return patches_[static_cast<std::size_t>(i)]; }

  /// The first of alike patches stands for all.
  void add(int i) {
    const Vec3& centre = patch(i).centre;
    for (const int j : grid_.near(centre, 1e-5)) {
      if (!is_alike(patch(i), patch(j))) continue;
      alike_[j].push_back(i);
      return;
    }
    grid_.add(i, centre);
    firsts_.push_back(i);
    alike_[i] = {i};
  }

  /// Nearest first, those that may overlap.
  std::vector<int> neighbours(int i) const {
    std::vector<std::pair<double, int>> near;
    const double own = reach_[static_cast<std::size_t>(i)];
    for (const int j : grid_.near(patch(i).centre, own + grid_.widest_rad())) {
      if (j == i) continue;
      const double apart = geom::angle_between(patch(i).centre, patch(j).centre).rad();
      if (apart <= own + reach_[static_cast<std::size_t>(j)]) near.emplace_back(apart, j);
    }
    const auto most = std::min(near.size(), static_cast<std::size_t>(params_.most_neighbours));
    std::partial_sort(near.begin(), near.begin() + static_cast<std::ptrdiff_t>(most), near.end());
    std::vector<int> found;
    for (std::size_t k = 0; k < most; ++k) found.push_back(near[k].second);
    return found;
  }

  Group members_at(const Vec3& u) const {
    Group members;
    for (const int j : grid_.near(u, grid_.widest_rad())) {
      if (is_in(patch(j), u)) members.push_back(j);
    }
    std::sort(members.begin(), members.end());
    return members;
  }

  std::vector<Vec3> corners_at(int i) const {
    std::vector<Vec3> corners;
    if (params_.only_on) {
      for (const SkyCap& cap : patch(i).caps) {
        for (const Vec3& u : border_crossings(cap, *params_.only_on)) {
          if (is_in(patch(i), u)) corners.push_back(u);
        }
      }
      return corners;
    }
    corners = corners_of(patch(i));
    for (const int j : neighbours(i)) {
      for (const SkyCap& own : patch(i).caps) {
        for (const SkyCap& other : patch(j).caps) {
          for (const Vec3& u : border_crossings(own, other)) {
            if (is_in(patch(i), u) && is_in(patch(j), u)) corners.push_back(u);
          }
        }
      }
    }
    return corners;
  }

  /// The largest groups that meet in corners of a patch.
  void collect(int i) {
    std::map<Group, Vec3> found;
    const std::size_t fewest = params_.only_on ? 1 : 2;
    for (const Vec3& u : corners_at(i)) {
      Group members = members_at(u);
      if (members.size() >= fewest) found.emplace(std::move(members), u);
    }
    std::vector<std::map<Group, Vec3>::const_iterator> largest;
    for (auto it = found.begin(); it != found.end(); ++it) largest.push_back(it);
    std::stable_sort(largest.begin(), largest.end(), [](const auto& a, const auto& b) {
      return a->first.size() > b->first.size();
    });
    const auto most = static_cast<std::size_t>(params_.most_per_patch);
    for (std::size_t k = 0; k < largest.size() && k < most; ++k) groups_.insert(*largest[k]);
  }

  /// From a corner step by step away from the nearest border of all members, ever shorter; the
  /// deepest place seen.
  Vec3 inwards(const Group& group, const Vec3& corner) const {
    constexpr int steps = 40;
    double narrowest_rad = 3.2;
    for (const int i : group) {
      narrowest_rad = std::min(narrowest_rad, reach_[static_cast<std::size_t>(i)]);
    }
    Vec3 u = corner;
    Vec3 best = corner;
    double deepest_rad = -1.0;
    for (int k = 0; k <= steps; ++k) {
      const auto [away, deep_rad] = nearest_border(group, u);
      if (deep_rad > deepest_rad) {
        deepest_rad = deep_rad;
        best = u;
      }
      u = reachable(geom::unit(u + narrowest_rad / (k + 2) * away));
    }
    return best;
  }

  /// Unit direction on the sphere away from the nearest border, and how far it is.
  std::pair<Vec3, double> nearest_border(const Group& group, const Vec3& u) const {
    double least_rad = 10.0;
    const SkyCap* nearest = nullptr;
    for (const int i : group) {
      for (const SkyCap& cap : patch(i).caps) {
        const double deep_rad = std::acos(std::clamp(cap.least, -1.0, 1.0)) -
                                std::acos(std::clamp(cap.axis.dot(u), -1.0, 1.0));
        if (deep_rad >= least_rad) continue;
        least_rad = deep_rad;
        nearest = &cap;
      }
    }
    const Vec3 away = nearest->axis - nearest->axis.dot(u) * u;
    const double length = away.norm();
    return {length > 1e-12 ? Vec3(away / length) : Vec3(Vec3::Zero()), least_rad};
  }

  Vec3 reachable(const Vec3& u) const {
    if (!params_.only_on) return u;
    const SkyCap& only = *params_.only_on;
    const Vec3 across = u - u.dot(only.axis) * only.axis;
    if (across.norm() < 1e-12) return u;
    return only.least * only.axis +
           std::sqrt(std::max(0.0, 1.0 - only.least * only.least)) * geom::unit(across);
  }

  Group expanded(const Group& members) const {
    Group all;
    for (const int i : members) {
      const Group& alike = alike_.at(i);
      all.insert(all.end(), alike.begin(), alike.end());
    }
    std::sort(all.begin(), all.end());
    return all;
  }

  const std::vector<SkyPatch>& patches_;
  SharedSkyParams params_;
  std::vector<double> reach_;
  SkyGrid grid_;
  std::vector<int> firsts_;
  std::map<int, Group> alike_;
  std::map<Group, Vec3> groups_;
};

}  // namespace

std::vector<SharedSky> shared_skies(const std::vector<SkyPatch>& patches,
                                    const SharedSkyParams& params) {
  return Search(patches, params).find();
}

}  // namespace seamturn::position

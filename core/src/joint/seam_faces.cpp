// SPDX-License-Identifier: MIT
#include "seamturn/joint/seam_faces.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include "detail_solid.hpp"
#include "seamturn/base/number_text.hpp"

namespace seamturn::joint {

namespace {

using base::Refusal;
using geom::Vec3;

constexpr double path_off_mm = 1.0;   // a path drawn by hand; the header promises it
constexpr double leg_probe_mm = 1.0;  // beyond the tolerance: how far each surface must go on
constexpr double low_edge_mm = 0.5;   // of a sheet: how far its edge must go on
const Angle smallest_corner = Angle::deg(fillet_corner_deg.least);
const Angle largest_corner = Angle::deg(fillet_corner_deg.largest);
const Angle same_plane = Angle::deg(5.0);  // two surfaces of one butt
const Angle slack = Angle::deg(1e-6);

std::string at_text(const Vec3& p) {
  return "(" + base::fixed_text(p.x(), 1) + " " + base::fixed_text(p.y(), 1) + " " +
         base::fixed_text(p.z(), 1) + ") mm";
}

/// The two members, how far off them the path may lie, and what was found out about them.
struct Site {
  const Member& first;
  const Member& second;
  double off_mm;
  double gap_mm;  ///< so far apart they may be drawn
};

/// A place on the path where it must lie on both members: one in words, or of a leg or corner.
struct Probe {
  double distance_mm = 0.0;
  const char* word = "";
  std::size_t number = 0;  ///< 0: the word says all

  [[nodiscard]] std::string where() const {
    return word + (number > 0 ? " " + std::to_string(number) : std::string());
  }
};

/// The middle of every leg, then the corners and ends.
std::vector<Probe> probes_of_legs(const geom::Path& path) {
  std::vector<double> ends_mm = geom::corner_stations_mm(path);
  const double length = geom::path_length_mm(path);
  if (ends_mm.empty() || ends_mm.front() > 0.0) ends_mm.insert(ends_mm.begin(), 0.0);
  ends_mm.push_back(length);
  std::vector<Probe> probes;
  for (std::size_t k = 0; k + 1 < ends_mm.size(); ++k) {
    probes.push_back({(ends_mm[k] + ends_mm[k + 1]) / 2.0, "middle of leg", k + 1});
  }
  for (std::size_t k = 0; k < ends_mm.size(); ++k) {
    const bool is_end = k + 1 == ends_mm.size();
    if (k == 0 || is_end) {
      probes.push_back({ends_mm[k], k == 0 ? "start" : "end"});
    } else {
      probes.push_back({ends_mm[k], "corner after leg", k});
    }
  }
  return probes;
}

/// Middle first: it decides; then the ends, and on a curve the quarters.
std::vector<Probe> probes_of(const geom::Path& path) {
  if (std::holds_alternative<geom::PolylinePath>(path)) return probes_of_legs(path);
  const double length = geom::path_length_mm(path);
  constexpr std::size_t most = 5;
  std::vector<Probe> probes;
  probes.reserve(most);
  probes.push_back({0.5 * length, "middle"});
  if (!std::holds_alternative<geom::LinePath>(path)) {
    probes.push_back({0.25 * length, "first quarter"});
    probes.push_back({0.75 * length, "last quarter"});
  }
  if (!geom::is_closed(path)) {
    probes.push_back({0.0, "start"});
    probes.push_back({length, "end"});
  }
  return probes;
}

std::optional<Refusal> off_member(const Site& site, const Vec3& p, const Probe& probe) {
  for (const Member* member : {&site.first, &site.second}) {
    const double distance = detail::distance_to_surface_mm(*member, p);
    if (distance <= site.off_mm) continue;
    return Refusal{"joint.seam.not_on_member",
                   "the " + probe.where() + " of the path, " + at_text(p) + ", lies " +
                       base::fixed_text(distance, 1) + " mm off the surface of member " +
                       member->id + "; up to " + base::fixed_text(site.off_mm, 1) +
                       " mm is taken as meant; correct the path or the member's place"};
  }
  return std::nullopt;
}

std::optional<Refusal> leaves_members(const Site& site, const geom::Path& path) {
  for (const Probe& probe : probes_of(path)) {
    const Vec3 p = geom::path_station(path, probe.distance_mm).point;
    if (auto refusal = off_member(site, p, probe)) return refusal;
  }
  return std::nullopt;
}

/// Where the surfaces are read: half way, or half way along a polyline's longest leg.
double reading_station_mm(const geom::Path& path) {
  const std::vector<double> corners_mm = geom::corner_stations_mm(path);
  const double length = geom::path_length_mm(path);
  if (corners_mm.empty()) return length / 2.0;
  double from_mm = 0.0;
  double middle_mm = 0.0;
  double longest_mm = 0.0;
  const auto take = [&](double to_mm) {
    constexpr double clearly_mm = 1e-6;  // of legs of one length, the first
    if (to_mm - from_mm > longest_mm + clearly_mm) {
      longest_mm = to_mm - from_mm;
      middle_mm = (from_mm + to_mm) / 2.0;
    }
    from_mm = to_mm;
  };
  for (const double corner_mm : corners_mm) take(corner_mm);
  take(length);
  return middle_mm;
}

/// Does the surface with this normal go on from p along `leg`? Told apart from an edge that merely
/// touches the corner's line.
bool goes_on(
    const Member& member, const Site& site, const Vec3& p, const Vec3& leg, const Vec3& normal) {
  const auto is_there = [&](double along_mm) {
    return detail::has_face_towards(member, p + along_mm * leg, normal, site.off_mm);
  };
  if (is_there(site.off_mm + leg_probe_mm)) return true;
  // The edge of a lapped sheet ends before that: it lies ahead, and not behind.
  const auto is_ahead = [&](double along_mm) { return is_there(along_mm) && !is_there(-along_mm); };
  return is_ahead(low_edge_mm) || is_ahead(site.gap_mm + low_edge_mm);
}

struct Pair {
  Face first;
  Face second;
  [[nodiscard]] double off_mm() const { return first.distance_mm + second.distance_mm; }
  [[nodiscard]] Angle between_walls() const {
    return Angle::deg(180.0) - geom::angle_between(first.normal, second.normal);
  }
};

/// Both surfaces run on from the corner, each on the open side of the other.
bool is_open_corner(const Pair& pair, const Site& site, const Vec3& p) {
  const Vec3& n1 = pair.first.normal;
  const Vec3& n2 = pair.second.normal;
  if (n1.cross(n2).norm() < 1e-3) return false;  // in one plane, or face to face in contact
  const Vec3 leg_1 = geom::unit(n2 - n2.dot(n1) * n1);
  const Vec3 leg_2 = geom::unit(n1 - n1.dot(n2) * n2);
  return goes_on(site.first, site, p, leg_1, n1) && goes_on(site.second, site, p, leg_2, n2);
}

template <class Accept>
std::vector<Pair> pairs_at(const Site& site, const Vec3& p, const Accept& accept) {
  std::vector<Pair> pairs;
  const auto second_faces = faces_at(site.second, p, site.off_mm, site.off_mm);
  for (const Face& first : faces_at(site.first, p, site.off_mm, site.off_mm)) {
    for (const Face& second : second_faces) {
      const Pair pair{first, second};
      if (accept(pair)) pairs.push_back(pair);
    }
  }
  if (pairs.size() > 1) {
    std::stable_sort(pairs.begin(), pairs.end(), [](const Pair& a, const Pair& b) {
      return a.off_mm() < b.off_mm();
    });
  }
  return pairs;
}

/// Two answers equally near that face differently: the members alone do not say which is meant.
bool is_ambiguous(const std::vector<Pair>& pairs) {
  constexpr double equally_near_mm = 1e-3;
  if (pairs.size() < 2 || pairs[1].off_mm() > pairs[0].off_mm() + equally_near_mm) return false;
  const auto face = [](const Pair& pair) {
    return geom::unit(pair.first.normal + pair.second.normal);
  };
  return geom::angle_between(face(pairs[0]), face(pairs[1])) > Angle::deg(1.0);
}

Refusal no_corner(const Site& site, const Vec3& p, const std::string& why) {
  return Refusal{"joint.seam.no_corner",
                 "members " + site.first.id + " and " + site.second.id +
                     " enclose no weld at the middle of the path, " + at_text(p) + ": " + why +
                     "; correct the path, or state the weld face with face="};
}

bool can_be_welded(const Pair& pair) {
  const Angle between = pair.between_walls();
  return between >= smallest_corner - slack && between <= largest_corner + slack;
}

base::Outcome<Pair> find_corner(const Site& site, const Vec3& p) {
  std::vector<Pair> open =
      pairs_at(site, p, [&](const Pair& pair) { return is_open_corner(pair, site, p); });
  if (open.empty()) return no_corner(site, p, "no surface of one stands on a surface of the other");
  if (std::none_of(open.begin(), open.end(), can_be_welded)) {
    const auto from_square = [](const Pair& pair) {
      return std::abs(pair.between_walls().deg() - 90.0);
    };
    const Pair& nearest =
        *std::min_element(open.begin(), open.end(), [&](const Pair& a, const Pair& b) {
          return from_square(a) < from_square(b);
        });
    return no_corner(site,
                     p,
                     "their surfaces stand at " +
                         base::fixed_text(nearest.between_walls().deg(), 1) + " deg, and " +
                         base::digits_text(fillet_corner_deg.least) + " to " +
                         base::digits_text(fillet_corner_deg.largest) + " deg is worked with");
  }
  // A leaning plate opens a narrow wedge under its edge as well: only what can be welded counts.
  std::erase_if(open, [](const Pair& pair) { return !can_be_welded(pair); });
  if (is_ambiguous(open)) return no_corner(site, p, "two corners meet there");
  return open.front();
}

base::Outcome<Pair> find_common_face(const Site& site, const Vec3& p) {
  const auto flush = pairs_at(site, p, [](const Pair& pair) {
    return geom::angle_between(pair.first.normal, pair.second.normal) < same_plane;
  });
  if (flush.empty()) return no_corner(site, p, "no surface of one is level with one of the other");
  if (is_ambiguous(flush)) return no_corner(site, p, "they are level on two sides there");
  return flush.front();
}

base::Outcome<Pair> find_pair(JointType type,
                              const Preparation& preparation,
                              const Site& site,
                              const Vec3& p) {
  if (type == JointType::butt) return find_common_face(site, p);
  const bool groove = !std::holds_alternative<Fillet>(preparation);
  if (type == JointType::corner && groove) {
    // A groove in a corner is seen from outside, flush, or from inside, as in a tee.
    const base::Outcome<Pair> flush = find_common_face(site, p);
    if (flush) return flush;
  }
  return find_corner(site, p);
}

/// On every leg of a polyline the surfaces must stand as those of the leg that was read, carried
/// round the corners.
std::optional<Refusal> leg_differs(JointType type,
                                   const Preparation& preparation,
                                   const Site& site,
                                   const geom::Path& path,
                                   const SeamFaces& faces) {
  const Angle alike = Angle::deg(1.0);
  const std::vector<Probe> probes = probes_of_legs(path);
  const std::size_t legs = probes.size() / 2;
  for (std::size_t k = 0; k < legs; ++k) {
    const double at_mm = probes[k].distance_mm;
    const Vec3 p = geom::path_station(path, at_mm).point;
    const base::Outcome<Pair> found = find_pair(type, preparation, site, p);
    if (!found) return found.error();
    const geom::Mat3 turn = geom::turn_along(path, at_mm);
    const auto off = [&](const Vec3& at_start, const Vec3& there) {
      return geom::angle_between(turn * at_start, there);
    };
    const Vec3 face = geom::unit(found->first.normal + found->second.normal);
    const bool flush = faces.between_walls == Angle::deg(180.0);
    const Angle worst = flush ? off(faces.face, face)
                              : std::max(off(faces.wall_1, found->first.normal),
                                         off(faces.wall_2, found->second.normal));
    if (worst <= alike) continue;
    return Refusal{"joint.seam.leg_differs",
                   "at the " + probes[k].where() + ", " + at_text(p) +
                       ", the members' surfaces stand " + base::fixed_text(worst.deg(), 1) +
                       " deg off those of the rest of the path carried round its corners; one seam "
                       "has one section; end the seam at that corner and write another joint"};
  }
  return std::nullopt;
}

/// Where neither hand or both show the second member, the left is taken.
bool is_second_on_left(const Site& site, const geom::Station& middle, const Vec3& face) {
  const Vec3 left = geom::unit(face.cross(middle.tangent));
  return goes_on(site.second, site, middle.point, left, face) ||
         !goes_on(site.second, site, middle.point, -left, face);
}

}  // namespace

base::Outcome<SeamFaces> find_seam_faces(JointType type,
                                         const Preparation& preparation,
                                         const Member& first,
                                         const Member& second,
                                         const geom::Path& path) {
  const double length = geom::path_length_mm(path);
  SEAMTURN_REQUIRE(length > 0.0, length);
  // A butt's path runs in the middle of its gap, a tee's along one member.
  const double gap_share = type == JointType::butt ? 0.5 : 1.0;
  const double gap_mm = root_gap_mm(preparation);
  const Site site{first, second, path_off_mm + gap_share * gap_mm, gap_mm};
  if (auto refusal = leaves_members(site, path)) return *refusal;
  const double read_at_mm = reading_station_mm(path);
  const geom::Station middle = geom::path_station(path, read_at_mm);
  const base::Outcome<Pair> found = find_pair(type, preparation, site, middle.point);
  if (!found) return found.error();

  const geom::Mat3 to_start = geom::turn_along(path, read_at_mm).transpose();
  SeamFaces faces;
  faces.wall_1 = to_start * found->first.normal;
  faces.wall_2 = to_start * found->second.normal;
  faces.face = geom::unit(faces.wall_1 + faces.wall_2);
  faces.between_walls = found->between_walls();
  const bool flush = geom::angle_between(faces.wall_1, faces.wall_2) < same_plane;
  if (flush) {
    const Vec3 face_there = geom::unit(found->first.normal + found->second.normal);
    faces.second_on_left = is_second_on_left(site, middle, face_there);
    faces.wall_1 = faces.wall_2 = faces.face;
    faces.between_walls = Angle::deg(180.0);
  }
  if (std::holds_alternative<geom::PolylinePath>(path)) {
    if (auto refusal = leg_differs(type, preparation, site, path, faces)) return *refusal;
  }
  return faces;
}

int lapping_member(const Joint& joint, const Member& first, const Member& second) {
  SEAMTURN_REQUIRE(!joint.seams.empty(), joint.id);
  const Seam& seam = joint.seams.front();
  if (!seam.path) return 2;
  constexpr double across = 0.5;  // far from both: the faces of a plate stand square
  const auto is_edge = [&](const Member& member, const Vec3& wall) {
    if (!std::holds_alternative<Plate>(member.shape)) return false;
    return std::abs((member.X_JM.rotation.transpose() * wall).z()) < across;
  };
  return is_edge(first, seam.wall_1) && !is_edge(second, seam.wall_2) ? 1 : 2;
}

}  // namespace seamturn::joint

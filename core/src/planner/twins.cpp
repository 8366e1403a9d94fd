// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <numbers>

#include "detail_twins.hpp"
#include "seamturn/joint/segments.hpp"

namespace seamturn::planner::detail {

namespace {

using geom::Vec3;

constexpr double same_direction = 0.9;  // cosine: 26 deg
constexpr double same_axis = 1e-3;

/// The same for every joint between two members, whichever is named first.
std::pair<std::string, std::string> members_of(const joint::Joint& joint) {
  return std::minmax(joint.member_1, joint.member_2);
}

/// The full circle a seam is, or is a segment of.
const geom::CirclePath* circle_of(const joint::Seam& seam) {
  return std::get_if<geom::CirclePath>(&joint::drawn_course(seam));
}

/// Angle between the middles of two segments of rings about one axis, seen along it.
double apart_rad(const joint::Seam& a, const joint::Seam& b, const geom::CirclePath& about) {
  const auto out = [&](const joint::Seam& seam) {
    return Vec3((geom::path_middle(*seam.path).point - about.centre).cross(about.axis));
  };
  return geom::angle_between(out(a), out(b)).rad();
}

/// Arcs of two rings lie beside each other: no more than half of the shorter one off.
bool are_beside(const joint::Seam& a, const joint::Seam& b, const geom::CirclePath& about) {
  if (!a.segment || !b.segment) return !a.segment && !b.segment;
  const int most = std::max(a.segment->of, b.segment->of);
  return apart_rad(a, b, about) <= std::numbers::pi / most + same_axis;
}

bool is_on_axis(const Vec3& point, const Vec3& origin, const Vec3& axis, double size_mm) {
  const Vec3 off = point - origin;
  return (off - off.dot(axis) * axis).norm() < same_axis * size_mm;
}

bool about_one_axis(const geom::CirclePath& a, const geom::CirclePath& b) {
  return a.axis.cross(b.axis).norm() < same_axis &&
         is_on_axis(b.centre, a.centre, a.axis, a.radius_mm);
}

/// Walls at a station, the one of the member asked for first.
struct Walls {
  Vec3 point;
  Vec3 one;
  Vec3 other;
};
Walls walls_at(const joint::Joint& joint,
               const joint::Seam& seam,
               const std::string& one,
               double station_mm) {
  const auto carried = [&](const Vec3& wall) {
    return geom::carried_direction(*seam.path, station_mm, wall);
  };
  const bool first = joint.member_1 == one;
  return {geom::path_station(*seam.path, station_mm).point,
          carried(first ? seam.wall_1 : seam.wall_2),
          carried(first ? seam.wall_2 : seam.wall_1)};
}

/// Station of a path near a point; looked for in steps of a fortieth of its length.
double nearest_station_mm(const geom::Path& path, const Vec3& point) {
  constexpr int steps = 40;
  const double length_mm = geom::path_length_mm(path);
  double best_mm = 0.0;
  double least_mm = std::numeric_limits<double>::infinity();
  for (int i = 0; i <= steps; ++i) {
    const double at_mm = length_mm * i / steps;
    const double off_mm = (geom::path_station(path, at_mm).point - point).norm();
    if (off_mm >= least_mm) continue;
    least_mm = off_mm;
    best_mm = at_mm;
  }
  return best_mm;
}

/// How far from the middle of one seam the other lies, on the other side of one plate; nothing
/// where it does not. One wall or both look the other way there and none anywhere else, and no more
/// lies between them than a plate.
std::optional<double> seen_across_mm(const SeamRef& from, const SeamRef& to) {
  const joint::Joint& joint = *from.joint->joint;
  const joint::Seam& seam = *from.work->seam;
  const joint::Seam& other = *to.work->seam;
  const double middle_mm = geom::path_length_mm(*seam.path) / 2.0;
  const Walls here = walls_at(joint, seam, joint.member_1, middle_mm);
  const double beside_mm = nearest_station_mm(*other.path, here.point);
  const Walls there = walls_at(*to.joint->joint, other, joint.member_1, beside_mm);
  const double one = here.one.dot(there.one);
  const double two = here.other.dot(there.other);
  if (std::min(std::abs(one), std::abs(two)) < same_direction) return std::nullopt;
  if (one > 0.0 && two > 0.0) return std::nullopt;  // on one side
  const Vec3 between = there.point - here.point;
  const Vec3 tangent = geom::path_station(*seam.path, middle_mm).tangent;
  const double along_mm = std::abs(between.dot(tangent));
  const double across_mm = (between - between.dot(tangent) * tangent).norm();
  const double plate_mm = std::max(joint::wall_thickness_mm(from.joint->member_1->shape),
                                   joint::wall_thickness_mm(from.joint->member_2->shape));
  const double shorter_mm = std::min(2.0 * middle_mm, geom::path_length_mm(*other.path));
  if (along_mm > 0.1 * shorter_mm || across_mm > 1.5 * plate_mm) return std::nullopt;
  return across_mm;
}

struct Match {
  double apart_mm = 0.0;
  plan::TwinKind kind = plan::TwinKind::plate;
};

/// Two seams between the same two members.
std::optional<Match> match(const SeamRef& a, const SeamRef& b) {
  const geom::CirclePath* circle_a = circle_of(*a.work->seam);
  const geom::CirclePath* circle_b = circle_of(*b.work->seam);
  if (circle_a != nullptr && circle_b != nullptr) {
    const joint::Seam& one = *a.work->seam;
    const joint::Seam& other = *b.work->seam;
    if (joint::drawn_id(one) == joint::drawn_id(other)) return std::nullopt;
    if (!about_one_axis(*circle_a, *circle_b) || !are_beside(one, other, *circle_a)) {
      return std::nullopt;
    }
    if (one.segment)
      return Match{
          (geom::path_middle(*one.path).point - geom::path_middle(*other.path).point).norm(),
          plan::TwinKind::rings};
    const double along_mm = (circle_b->centre - circle_a->centre).dot(circle_a->axis);
    return Match{std::hypot(along_mm, circle_b->radius_mm - circle_a->radius_mm),
                 plan::TwinKind::rings};
  }
  if (a.joint == b.joint) {  // the file draws them as its two sides
    return joint::lie_beside(*a.work->seam, *b.work->seam) ? std::optional(Match{}) : std::nullopt;
  }
  const std::optional<double> apart_mm = seen_across_mm(a, b);
  if (!apart_mm || !seen_across_mm(b, a)) return std::nullopt;
  return Match{*apart_mm, plan::TwinKind::plate};
}

class Finder {
 public:
  Finder(const Inputs& inputs, const std::vector<SeamRef>& seams)
      : inputs_(inputs), seams_(seams), taken_(seams.size(), false) {}

  std::vector<Twins> find() {
    grooves();
    for (const auto& [members, seams] : by_members()) pair_up(seams);
    stated();
    std::stable_sort(found_.begin(), found_.end(), [](const Twins& a, const Twins& b) {
      return std::pair(a.first, a.second) < std::pair(b.first, b.second);
    });
    return std::move(found_);
  }

 private:
  [[nodiscard]] const joint::Joint& joint(std::size_t seam) const {
    return *seams_[seam].joint->joint;
  }
  [[nodiscard]] bool has_place(std::size_t seam) const {
    return seams_[seam].work->seam->path.has_value();
  }

  void grooves() {
    for (std::size_t i = 0; i + 1 < seams_.size(); ++i) {
      const bool pair = joint::lie_beside(*seams_[i].work->seam, *seams_[i + 1].work->seam) &&
                        joint::has_two_sides(joint(i));
      if (pair && has_place(i) && has_place(i + 1)) add(i, i + 1, plan::TwinKind::groove);
    }
  }

  /// Seams with a place that have no twin yet.
  std::map<std::pair<std::string, std::string>, std::vector<std::size_t>> by_members() const {
    std::map<std::pair<std::string, std::string>, std::vector<std::size_t>> groups;
    for (std::size_t i = 0; i < seams_.size(); ++i) {
      if (has_place(i) && !taken_[i]) groups[members_of(joint(i))].push_back(i);
    }
    return groups;
  }

  void pair_up(const std::vector<std::size_t>& seams) {
    for (std::size_t i = 0; i < seams.size(); ++i) {
      if (taken_[seams[i]]) continue;
      std::optional<Match> nearest;
      std::size_t with = 0;
      for (std::size_t j = i + 1; j < seams.size(); ++j) {
        if (taken_[seams[j]]) continue;
        const std::optional<Match> found = match(seams_[seams[i]], seams_[seams[j]]);
        if (!found || (nearest && found->apart_mm >= nearest->apart_mm)) continue;
        nearest = found;
        with = seams[j];
      }
      if (nearest) add(seams[i], with, nearest->kind);
    }
  }

  void add(std::size_t first, std::size_t second, plan::TwinKind kind) {
    taken_[first] = taken_[second] = true;
    Twins twins{first, second, kind, joint(first).balance_off, {}};
    if (twins.off.empty()) twins.off = joint(second).balance_off;
    if (twins.off.empty()) twins.off = inputs_.weldment.balance_off;
    found_.push_back(std::move(twins));
  }

  /// Seams of equal side keep step; a joint of one seam with both of the other.
  void stated() {
    for (std::size_t i = 0; i < seams_.size(); ++i) {
      if (joint(i).balance_with.empty() || !has_place(i)) continue;
      for (std::size_t j = 0; j < seams_.size(); ++j) {
        if (joint(j).id != joint(i).balance_with || !has_place(j)) continue;
        const bool alone = joint::drawn_seams(joint(i)) != joint::drawn_seams(joint(j));
        if (!face_each_other(i, j)) continue;
        if (alone || side(i) == side(j)) state(std::min(i, j), std::max(i, j));
      }
    }
  }
  /// Which of its joint's courses: the first, or the other.
  [[nodiscard]] bool side(std::size_t seam) const {
    return joint::drawn_id(*seams_[seam].work->seam) == joint::drawn_id(joint(seam).seams.front());
  }
  /// Of two courses in segments, those nearest to each other; a seam welded in one keeps step with
  /// all segments of another.
  [[nodiscard]] bool face_each_other(std::size_t a, std::size_t b) const {
    const joint::Seam& one = *seams_[a].work->seam;
    const joint::Seam& other = *seams_[b].work->seam;
    if (!one.segment || !other.segment) return true;
    return nearest_of(one, joint(b), other) == &other || nearest_of(other, joint(a), one) == &one;
  }
  /// Of the course `like` is a segment of, the one whose middle lies nearest to a segment's.
  static const joint::Seam* nearest_of(const joint::Seam& segment,
                                       const joint::Joint& of,
                                       const joint::Seam& like) {
    const joint::Seam* nearest = nullptr;
    double least_mm = std::numeric_limits<double>::infinity();
    for (const joint::Seam& seam : of.seams) {
      const double off_mm =
          (geom::path_middle(*seam.path).point - geom::path_middle(*segment.path).point).norm();
      if (joint::drawn_id(seam) != joint::drawn_id(like) || off_mm >= least_mm) continue;
      least_mm = off_mm;
      nearest = &seam;
    }
    return nearest;
  }
  void state(std::size_t first, std::size_t second) {
    for (Twins& known : found_) {
      if (known.first != first || known.second != second) continue;
      known.kind = plan::TwinKind::stated;
      known.off.clear();
      return;
    }
    found_.push_back(Twins{first, second, plan::TwinKind::stated, {}, {}});
  }

  const Inputs& inputs_;
  const std::vector<SeamRef>& seams_;
  std::vector<bool> taken_;
  std::vector<Twins> found_;
};

/// Arcs as drawn: those that segments make are told by their numbers.
const geom::ArcPath* arc_of(const SeamRef& ref) {
  const joint::Seam& seam = *ref.work->seam;
  return seam.path && !seam.segment ? std::get_if<geom::ArcPath>(&*seam.path) : nullptr;
}

bool of_one_ring(const SeamRef& a, const SeamRef& b) {
  const geom::ArcPath& one = *arc_of(a);
  const geom::ArcPath& two = *arc_of(b);
  return members_of(*a.joint->joint) == members_of(*b.joint->joint) &&
         one.axis.cross(two.axis).norm() < same_axis &&
         (one.centre - two.centre).norm() < same_axis * one.radius_mm &&
         std::abs(one.radius_mm - two.radius_mm) < same_axis * one.radius_mm;
}

/// Angle of an arc's middle about the axis of the ring, from where its first arc begins.
double middle_rad(const geom::ArcPath& first, const geom::ArcPath& arc) {
  const Vec3 out = geom::carried_direction(arc, geom::path_length_mm(arc) / 2.0, arc.start);
  const double rad = std::atan2(first.axis.cross(first.start).dot(out), first.start.dot(out));
  return rad < 0.0 ? rad + 2.0 * std::numbers::pi : rad;
}

Run opposite(const std::vector<std::size_t>& round) {
  Run run{true, std::vector<std::vector<std::size_t>>(round.size())};
  const int count = static_cast<int>(round.size());
  for (int i = 0; i < count; ++i) {
    const auto rank = static_cast<std::size_t>(joint::opposite_rank(i, count));
    run.ranks[rank] = {round[static_cast<std::size_t>(i)]};
  }
  return run;
}

/// Rings drawn as arcs: seams of each, in the order of the file.
std::vector<std::vector<std::size_t>> drawn_rings(const std::vector<SeamRef>& seams) {
  std::vector<std::vector<std::size_t>> rings;
  for (std::size_t i = 0; i < seams.size(); ++i) {
    if (arc_of(seams[i]) == nullptr) continue;
    const auto known = std::find_if(rings.begin(), rings.end(), [&](const auto& ring) {
      return of_one_ring(seams[ring.front()], seams[i]);
    });
    known == rings.end() ? rings.push_back({i}) : known->push_back(i);
  }
  std::erase_if(rings, [](const auto& ring) { return ring.size() < 3; });
  return rings;
}

/// Courses in segments, each with its ranks filled.
std::vector<Run> split_courses(const std::vector<SeamRef>& seams) {
  std::vector<Run> runs;
  std::map<std::string, std::size_t> run_of;
  for (std::size_t i = 0; i < seams.size(); ++i) {
    const joint::Seam& seam = *seams[i].work->seam;
    if (!seam.segment) continue;
    const auto [known, is_new] = run_of.emplace(seam.segment->drawn, runs.size());
    if (is_new) runs.push_back({geom::is_closed(seam.segment->course), {}});
    Run& run = runs[known->second];
    const auto rank = static_cast<std::size_t>(seam.segment->rank);
    run.ranks.resize(std::max(run.ranks.size(), rank + 1));
    run.ranks[rank].push_back(i);
  }
  return runs;
}

}  // namespace

std::vector<Twins> find_twins(const Inputs& inputs, const std::vector<SeamRef>& seams) {
  return Finder(inputs, seams).find();
}

std::vector<Run> find_runs(const std::vector<SeamRef>& seams) {
  std::vector<Run> runs = split_courses(seams);
  for (std::vector<std::size_t>& ring : drawn_rings(seams)) {
    const geom::ArcPath& first = *arc_of(seams[ring.front()]);
    std::stable_sort(ring.begin(), ring.end(), [&](std::size_t a, std::size_t b) {
      return middle_rad(first, *arc_of(seams[a])) < middle_rad(first, *arc_of(seams[b]));
    });
    runs.push_back(opposite(ring));
  }
  return runs;
}

}  // namespace seamturn::planner::detail

// SPDX-License-Identifier: MIT
#include "seamturn/joint/segments.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "seamturn/base/error.hpp"

namespace seamturn::joint {

namespace {

/// From the middle: 1 0 0 1, 2 1 0 1 2.
int outward_rank(int index, int count) {
  const int twice_off = std::abs(2 * index + 1 - count);
  return twice_off / 2;
}

class Cutter {
 public:
  Cutter(const Seam& drawn, const Splitting& splitting)
      : drawn_(drawn),
        splitting_(splitting),
        closed_(geom::is_closed(*drawn.path)),
        each_mm_(geom::path_length_mm(*drawn.path) / splitting.count) {}

  /// The segment of an index from 0 along the drawn path.
  Seam cut(int index) const {
    const int count = splitting_.count;
    Segment segment;
    segment.number = index + 1;
    segment.of = count;
    segment.at_start = !closed_ && index == 0;
    segment.at_end = !closed_ && index == count - 1;
    segment.rank = closed_ ? opposite_rank(index, count) : outward_rank(index, count);
    segment.reversed = is_reversed(index);
    segment.drawn = drawn_.id;
    segment.course = *drawn_.path;
    return seam_of(segment, index);
  }

 private:
  /// Left of the middle outward is against the path; the middle one of three runs along it. Back
  /// step, of an even count the second of the inner pair runs on outward: both would end in the
  /// middle, crater on crater.
  [[nodiscard]] bool is_reversed(int index) const {
    const bool back = splitting_.travel == SegmentTravel::back_step;
    if (closed_) return back;
    if (back && 2 * (index + 1) == splitting_.count) return true;
    return (2 * index + 1 < splitting_.count) != back;
  }

  [[nodiscard]] Seam seam_of(const Segment& segment, int index) const {
    // Layers 1, 3 ... meet half the stagger before, layers 2, 4 ... half of it behind the mark.
    const double half_mm = (splitting_.stagger_mm + splitting_.overlap_mm) / 2.0;
    const double from_mm = index * each_mm_ - (segment.at_start ? 0.0 : half_mm);
    const double to_mm = (index + 1) * each_mm_ + (segment.at_end ? 0.0 : half_mm);
    Seam seam = drawn_;
    seam.id = drawn_.id + '/' + std::to_string(segment.number);
    const double odd_mm = to_mm - from_mm - (segment.at_end ? 0.0 : splitting_.stagger_mm);
    seam.length_mm = each_mm_;
    const double course_mm = each_mm_ * splitting_.count;
    const double begins_mm = closed_ ? geom::wrapped_station_mm(from_mm, course_mm) : from_mm;
    seam.path = geom::part_of_path(*drawn_.path, from_mm, to_mm);
    for (geom::Vec3* direction : {&seam.wall_1, &seam.wall_2, &seam.face}) {
      *direction = geom::carried_direction(*drawn_.path, from_mm, *direction);
    }
    if (!segment.at_start) seam.asked.run_on_mm = 0.0;
    if (!segment.at_end) seam.asked.run_off_mm = 0.0;
    const int returns = (segment.at_start ? 1 : 0) + (segment.at_end ? 1 : 0);
    seam.asked.overlap_mm = splitting_.overlap_mm;
    seam.asked.stop_stagger_mm = splitting_.stagger_mm;
    seam.welded.stretches = {{-seam.asked.run_on_mm, odd_mm + seam.asked.run_off_mm}};
    seam.welded.tabs_mm = seam.asked.run_on_mm + seam.asked.run_off_mm;
    seam.welded.overlap_mm = (closed_ ? 2 : 2 - returns) * splitting_.overlap_mm / 2.0;
    seam.welded.returns_mm = returns * seam.asked.end_return_mm;
    seam.segment = segment;
    seam.segment->begins_mm = begins_mm;
    return seam;
  }

  const Seam& drawn_;
  const Splitting& splitting_;
  bool closed_;
  double each_mm_;
};

/// Where a circle passes nearest to a point.
double nearest_mm(const geom::CirclePath& circle, const geom::Vec3& point) {
  const base::Angle on =
      geom::signed_angle(circle.axis, circle.start, geom::Vec3(point - circle.centre));
  return geom::wrapped_station_mm(on.rad() * circle.radius_mm, geom::path_length_mm(circle));
}

/// A second ring begins beside the first one's start, so that segments lie beside segments.
Seam begun_beside(const Seam& second, const Seam& first) {
  const auto* circle = std::get_if<geom::CirclePath>(&*second.path);
  if (circle == nullptr) return second;
  const geom::Vec3 start = geom::path_station(*first.path, 0.0).point;
  if ((start - circle->centre).cross(circle->axis).norm() < 1e-9 * circle->radius_mm) return second;
  const double at_mm = nearest_mm(*circle, start);
  Seam out = second;
  geom::CirclePath turned = *circle;
  turned.start = geom::carried_direction(*circle, at_mm, circle->start);
  out.path = turned;
  for (geom::Vec3* direction : {&out.wall_1, &out.wall_2, &out.face}) {
    *direction = geom::carried_direction(*circle, at_mm, *direction);
  }
  return out;
}

/// Which of the first course's segments lies nearest and is not yet taken.
std::size_t beside(const Seam& segment, const std::vector<Seam>& first, std::vector<bool>& taken) {
  const geom::Vec3 middle = geom::path_middle(*segment.path).point;
  std::size_t best = 0;
  double least_mm = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < first.size(); ++i) {
    const double off_mm = (geom::path_middle(*first[i].path).point - middle).norm();
    if (taken[i] || off_mm >= least_mm) continue;
    least_mm = off_mm;
    best = i;
  }
  taken[best] = true;
  return best;
}

std::vector<Seam> cut_all(const Seam& drawn, const Splitting& splitting) {
  const Cutter cutter(drawn, splitting);
  std::vector<Seam> segments;
  for (int i = 0; i < splitting.count; ++i) segments.push_back(cutter.cut(i));
  return segments;
}

/// Segments of the second course in the order of those they lie beside, and numbered like them.
std::vector<Seam> cut_beside(const Seam& drawn,
                             const std::vector<Seam>& first,
                             const Seam& first_drawn,
                             const Splitting& splitting) {
  std::vector<Seam> segments = cut_all(begun_beside(drawn, first_drawn), splitting);
  const bool opposed = runs_against(drawn, first_drawn);
  std::vector<bool> taken(first.size(), false);
  std::vector<Seam> out(segments.size());
  for (Seam& segment : segments) {
    const std::size_t place = beside(segment, first, taken);
    segment.segment->number = first[place].segment->number;
    segment.segment->rank = first[place].segment->rank;
    segment.segment->reversed = first[place].segment->reversed != opposed;
    segment.segment->course = *drawn.path;
    if (const auto* circle = std::get_if<geom::CirclePath>(&*drawn.path)) {
      segment.segment->begins_mm =
          nearest_mm(*circle, geom::path_station(*segment.path, 0.0).point);
    }
    segment.id = drawn.id + '/' + std::to_string(segment.segment->number);
    out[place] = std::move(segment);
  }
  return out;
}

}  // namespace

int opposite_rank(int index, int count) {
  const int half = (count + 1) / 2;
  return index < half ? 2 * index : 2 * (index - half) + 1;
}

bool splits(const Joint& joint, const Splitting& splitting) {
  const double both_mm = splitting.stagger_mm + splitting.overlap_mm;
  return std::all_of(joint.seams.begin(), joint.seams.end(), [&](const Seam& seam) {
    return seam.length_mm / splitting.count > 2.0 * both_mm;
  });
}

Joint split_joint(const Joint& joint, const Splitting& splitting) {
  SEAMTURN_REQUIRE(splitting.count >= 2 && splits(joint, splitting), joint.id, splitting.count);
  SEAMTURN_REQUIRE(splitting.stagger_mm >= 0.0 && splitting.overlap_mm >= 0.0,
                   splitting.stagger_mm,
                   splitting.overlap_mm);
  std::vector<std::vector<Seam>> cut;
  for (const Seam& seam : joint.seams) {
    SEAMTURN_REQUIRE(seam.path && !seam.segment, seam.id);
    SEAMTURN_REQUIRE(seam.asked.form != LengthForm::intermittent, seam.id);
    cut.push_back(cut.empty() ? cut_all(seam, splitting)
                              : cut_beside(seam, cut.front(), joint.seams.front(), splitting));
  }
  Joint out = joint;
  out.seams.clear();
  for (std::size_t i = 0; i < static_cast<std::size_t>(splitting.count); ++i) {
    for (std::vector<Seam>& course : cut) out.seams.push_back(std::move(course[i]));
  }
  return out;
}

Stretch own_stretch(const Seam& seam) {
  SEAMTURN_REQUIRE(seam.segment && seam.path, seam.id);
  const double shared_mm = seam.asked.stop_stagger_mm + seam.asked.overlap_mm;
  const double length_mm = geom::path_length_mm(*seam.path);
  return {seam.segment->at_start ? 0.0 : shared_mm,
          length_mm - (seam.segment->at_end ? 0.0 : shared_mm)};
}

std::vector<Stretch> layer_stretches(const Seam& seam, int layer) {
  std::vector<Stretch> stretches = stretches_of(seam);
  if (!seam.segment || layer % 2 != 0) return stretches;
  const double on_mm = seam.asked.stop_stagger_mm;
  if (!seam.segment->at_start) stretches.front().from_mm += on_mm;
  if (!seam.segment->at_end) stretches.back().to_mm += on_mm;
  return stretches;
}

double layer_length_mm(const Seam& seam, int layer) {
  if (!seam.segment) return welded_length_mm(seam);
  double sum_mm = seam.welded.returns_mm;
  for (const Stretch& stretch : layer_stretches(seam, layer)) {
    sum_mm += stretch.to_mm - stretch.from_mm;
  }
  return sum_mm;
}

const std::string& drawn_id(const Seam& seam) {
  return seam.segment ? seam.segment->drawn : seam.id;
}

const geom::Path& drawn_course(const Seam& seam) {
  SEAMTURN_REQUIRE(seam.path.has_value(), seam.id);
  return seam.segment ? seam.segment->course : *seam.path;
}

std::size_t drawn_seams(const Joint& joint) {
  const bool two = std::any_of(joint.seams.begin(), joint.seams.end(), [&](const Seam& seam) {
    return drawn_id(seam) != drawn_id(joint.seams.front());
  });
  return two ? 2 : 1;
}

bool lie_beside(const Seam& a, const Seam& b) {
  const int number_a = a.segment ? a.segment->number : 0;
  const int number_b = b.segment ? b.segment->number : 0;
  return a.joint == b.joint && number_a == number_b && drawn_id(a) != drawn_id(b);
}

}  // namespace seamturn::joint

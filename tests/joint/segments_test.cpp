// SPDX-License-Identifier: MIT
// Long seams and rings in segments. Expected values are closed forms and laws: what is welded in
// segments is what is drawn, and the overlaps.
#include "seamturn/joint/segments.hpp"

#include <doctest/doctest.h>

#include <numbers>
#include <set>

#include "joint/tee_seam.hpp"
#include "seamturn/base/error.hpp"

namespace seamturn::tests {

namespace {

using geom::Vec3;
using joint::Joint;
using joint::Seam;
using joint::SegmentTravel;
using joint::Splitting;

Joint joint_of(std::vector<Seam> seams) {
  Joint joint;
  joint.id = "J1";
  joint.seams = std::move(seams);
  return joint;
}

const geom::LinePath metres_2{Vec3(0, 0, 0), Vec3(2000, 0, 0)};
const geom::LinePath back{Vec3(2000, -20, 0), Vec3(0, -20, 0)};
const geom::CirclePath ring{Vec3(0, 0, 0), Vec3::UnitZ(), Vec3::UnitX(), 400.0};

/// Ends of a layer of a segment in stations of the course drawn.
joint::Stretch drawn_stretch(const Seam& segment, int layer) {
  const joint::Stretch own = joint::layer_stretches(segment, layer).front();
  const Vec3 start = geom::path_station(*segment.path, own.from_mm).point;
  const Vec3 end = geom::path_station(*segment.path, own.to_mm).point;
  return {start.x(), end.x()};  // the courses here run along x
}

std::vector<int> ranks_of(const Joint& joint) {
  std::vector<int> ranks;
  for (const Seam& seam : joint.seams) ranks.push_back(seam.segment->rank);
  return ranks;
}

}  // namespace

TEST_SUITE("joint/segments") {
  // closed-form: 2000 mm in two, 30 mm of stagger, 10 mm of overlap: the mark lies at 1000 mm
  TEST_CASE("a line in two is begun in its middle, the layers' stops half the stagger each side") {
    const Joint split = joint::split_joint(joint_of({tee_seam("J1", metres_2)}),
                                           {2, SegmentTravel::outward, 30.0, 10.0});
    REQUIRE(split.seams.size() == 2);
    const Seam& left = split.seams[0];
    const Seam& right = split.seams[1];
    CHECK(left.id == "J1/1");
    CHECK(right.id == "J1/2");
    CHECK(left.segment->reversed);
    CHECK_FALSE(right.segment->reversed);
    CHECK(ranks_of(split) == std::vector<int>{0, 0});
    for (const int layer : {1, 3}) {
      CHECK(drawn_stretch(left, layer).from_mm == doctest::Approx(0.0));
      CHECK(drawn_stretch(left, layer).to_mm == doctest::Approx(1000.0 - 15.0 + 5.0));
      CHECK(drawn_stretch(right, layer).from_mm == doctest::Approx(1000.0 - 15.0 - 5.0));
      CHECK(drawn_stretch(right, layer).to_mm == doctest::Approx(2000.0));
    }
    CHECK(drawn_stretch(left, 2).to_mm == doctest::Approx(1000.0 + 15.0 + 5.0));
    CHECK(drawn_stretch(right, 2).from_mm == doctest::Approx(1000.0 + 15.0 - 5.0));
    CHECK(left.length_mm + right.length_mm == doctest::Approx(2000.0));
  }

  TEST_CASE("law: of every layer the segments weld the course and their overlaps, with its ends") {
    Seam with_ends = tee_seam("J1", metres_2);
    with_ends.asked.run_on_mm = 40.0;
    with_ends.asked.run_off_mm = 25.0;
    Seam with_returns = tee_seam("J1", metres_2);
    with_returns.asked.end_return_mm = 12.0;
    const std::pair<Seam, double> cases[] = {
        {tee_seam("J1", metres_2), 2000.0}, {with_ends, 2065.0}, {with_returns, 2024.0}};
    for (const auto& [seam, welded_mm] : cases) {
      for (const int count : {2, 3, 5}) {
        const Joint split =
            joint::split_joint(joint_of({seam}), {count, SegmentTravel::outward, 30.0, 10.0});
        for (const int layer : {1, 2, 3, 4}) {
          double sum_mm = 0.0;
          for (const Seam& one : split.seams) sum_mm += joint::layer_length_mm(one, layer);
          CHECK(sum_mm == doctest::Approx(welded_mm + 10.0 * (count - 1)));
        }
      }
    }
  }

  TEST_CASE("law: stops of neighbouring layers lie a stagger apart, segments meet without a gap") {
    for (const int count : {2, 3, 4, 7}) {
      const Joint split = joint::split_joint(joint_of({tee_seam("J1", metres_2)}),
                                             {count, SegmentTravel::back_step, 24.0, 8.0});
      for (std::size_t i = 0; i + 1 < split.seams.size(); ++i) {
        for (const int layer : {1, 2, 3}) {
          const double end_mm = drawn_stretch(split.seams[i], layer).to_mm;
          const double start_mm = drawn_stretch(split.seams[i + 1], layer).from_mm;
          CHECK(end_mm - start_mm == doctest::Approx(8.0));
          CHECK(std::abs(drawn_stretch(split.seams[i], layer + 1).to_mm - end_mm) ==
                doctest::Approx(24.0));
        }
      }
    }
  }

  TEST_CASE("ranks run from the middle outward, travel away from it or, back step, towards it") {
    const auto split = [](int count, SegmentTravel travel) {
      return joint::split_joint(joint_of({tee_seam("J1", metres_2)}), {count, travel, 0.0, 0.0});
    };
    CHECK(ranks_of(split(4, SegmentTravel::outward)) == std::vector<int>{1, 0, 0, 1});
    CHECK(ranks_of(split(5, SegmentTravel::outward)) == std::vector<int>{2, 1, 0, 1, 2});
    const Joint outward = split(5, SegmentTravel::outward);
    const Joint stepped = split(5, SegmentTravel::back_step);
    for (std::size_t i = 0; i < 5; ++i) {
      CHECK(outward.seams[i].segment->reversed == (i < 2));
      CHECK(stepped.seams[i].segment->reversed == (i >= 2));
    }
    // of an even count one of the inner pair runs outward: their craters lie apart
    const Joint even = split(4, SegmentTravel::back_step);
    const bool reversed[] = {false, true, true, true};
    for (std::size_t i = 0; i < 4; ++i) CHECK(even.seams[i].segment->reversed == reversed[i]);
  }

  TEST_CASE("a ring's arcs go 1 3 2 4, of six 1 4 2 5 3 6, all one way, overlapping all round") {
    const auto split = [](int count, SegmentTravel travel) {
      return joint::split_joint(joint_of({tee_seam("J1", ring)}), {count, travel, 30.0, 10.0});
    };
    const Joint four = split(4, SegmentTravel::outward);
    CHECK(ranks_of(four) == std::vector<int>{0, 2, 1, 3});
    CHECK(ranks_of(split(6, SegmentTravel::outward)) == std::vector<int>{0, 2, 4, 1, 3, 5});
    for (const int layer : {1, 2}) {
      double sum_mm = 0.0;
      for (const Seam& arc : four.seams) {
        CHECK_FALSE(arc.segment->reversed);
        CHECK_FALSE(geom::is_closed(*arc.path));
        sum_mm += joint::layer_length_mm(arc, layer);
      }
      CHECK(sum_mm == doctest::Approx(2.0 * std::numbers::pi * 400.0 + 4.0 * 10.0));
    }
    // Opposite: the middles of the first two welded lie across from each other.
    const auto middle = [](const Seam& seam) {
      return geom::path_station(*seam.path, geom::path_length_mm(*seam.path) / 2.0).point;
    };
    CHECK((middle(four.seams[0]) + middle(four.seams[2])).norm() < 1e-9);
    for (const Seam& arc : split(4, SegmentTravel::back_step).seams) CHECK(arc.segment->reversed);
  }

  TEST_CASE("walls and face of a segment are those of the course there") {
    const Seam whole = tee_seam("J1", ring);
    const Joint split = joint::split_joint(joint_of({whole}), {4, SegmentTravel::outward, 20, 6});
    for (const Seam& arc : split.seams) {
      const Vec3 start = geom::path_station(*arc.path, 0.0).point;
      const double at_mm = 400.0 * std::atan2(start.y(), start.x());
      CHECK((arc.wall_2 - geom::carried_direction(ring, at_mm, whole.wall_2)).norm() < 1e-9);
      CHECK((arc.face - geom::carried_direction(ring, at_mm, whole.face)).norm() < 1e-9);
    }
  }

  TEST_CASE("of two sides, segments of one number lie beside each other whichever way they run") {
    const geom::CirclePath under{Vec3(0, 0, -30), -Vec3::UnitZ(), Vec3(0.6, 0.8, 0), 400.0};
    const std::pair<geom::Path, geom::Path> sides[] = {
        {metres_2, back}, {metres_2, geom::LinePath{back.to, back.from}}, {ring, under}};
    for (const auto& [first, second] : sides) {
      const Joint split =
          joint::split_joint(joint_of({tee_seam("J1.a", first), tee_seam("J1.b", second)}),
                             {4, SegmentTravel::outward, 30.0, 10.0});
      REQUIRE(split.seams.size() == 8);
      CHECK(joint::drawn_seams(split) == 2);
      std::set<std::string> ids;
      for (std::size_t i = 0; i < split.seams.size(); i += 2) {
        const Seam& a = split.seams[i];
        const Seam& b = split.seams[i + 1];
        CAPTURE(a.id);
        CHECK(joint::lie_beside(a, b));
        CHECK(a.segment->rank == b.segment->rank);
        CHECK(joint::drawn_id(a) == "J1.a");
        CHECK(joint::drawn_id(b) == "J1.b");
        const auto middle = [](const Seam& seam) {
          return geom::path_station(*seam.path, geom::path_length_mm(*seam.path) / 2.0).point;
        };
        CHECK((middle(a) - middle(b)).norm() < 20.0 + 30.0 + 10.0);
        const auto travel = [&](const Seam& seam) {
          const double at_mm = geom::path_length_mm(*seam.path) / 2.0;
          const Vec3 along = geom::path_station(*seam.path, at_mm).tangent;
          return Vec3(seam.segment->reversed ? -along : along);
        };
        CHECK(travel(a).dot(travel(b)) > 0.9);  // the same way on the part
        ids.insert({a.id, b.id});
      }
      CHECK(ids.size() == 8);
      CHECK_FALSE(joint::lie_beside(split.seams[0], split.seams[2]));
      CHECK_FALSE(joint::lie_beside(split.seams[0], split.seams[3]));
    }
  }

  TEST_CASE("a seam in one is its own course, all its layers alike") {
    const Joint joint = joint_of({tee_seam("J1.a", metres_2), tee_seam("J1.b", back)});
    CHECK(joint::drawn_id(joint.seams[1]) == "J1.b");
    CHECK(joint::drawn_seams(joint) == 2);
    CHECK(joint::lie_beside(joint.seams[0], joint.seams[1]));
    CHECK(joint::layer_length_mm(joint.seams[0], 2) == doctest::Approx(2000.0));
    CHECK(joint::layer_stretches(joint.seams[0], 2) == joint::stretches_of(joint.seams[0]));
    CHECK(std::holds_alternative<geom::LinePath>(joint::drawn_course(joint.seams[0])));
  }

  TEST_CASE("segments not twice as long as stagger and overlap are refused") {
    const Joint joint = joint_of({tee_seam("J1", metres_2)});
    CHECK(joint::splits(joint, {24, SegmentTravel::outward, 30.0, 10.0}));  // 83.3 > 80
    CHECK_FALSE(joint::splits(joint, {24, SegmentTravel::outward, 32.0, 10.0}));
    CHECK_THROWS_AS((void)joint::split_joint(joint, {24, SegmentTravel::outward, 32.0, 10.0}),
                    base::ContractViolation);
  }
}

}  // namespace seamturn::tests

// SPDX-License-Identifier: MIT
// Long seams and rings in segments, from the file to the clock. Laws: split or not, the same metal
// is laid and the same face bows; orders are read off the clock.
#include <numbers>
#include <set>

#include "planner/detail_joints.hpp"
#include "planner/detail_order_links.hpp"
#include "planner/detail_segments.hpp"
#include "planner/detail_stages.hpp"
#include "planner/detail_stances.hpp"
#include "seamturn/joint/segments.hpp"
#include "split_part.hpp"

namespace seamturn::tests {

TEST_SUITE("planner/segments_plan") {
  TEST_CASE("given a ring in four arcs, each layer goes 1 3 2 4 and all roots come first") {
    planner::Inputs inputs = part_of({"R1"});
    ask(inputs, "R1", 4, 10.0);
    const Plan plan = quick_plan(inputs);
    REQUIRE(segments_of(plan, "R1").size() == 4);
    double last_root_s = 0.0;
    double first_fill_s = 1e12;
    for (const plan::PlannedSeam* arc : segments_of(plan, "R1")) {
      CHECK_FALSE(arc->rolling);
      REQUIRE(arc->stack.layers >= 2);
      last_root_s = std::max(last_root_s, layer_span(*arc, 1).to_s);
      first_fill_s = std::min(first_fill_s, layer_span(*arc, 2).from_s);
    }
    CHECK(last_root_s <= first_fill_s);
    CHECK(order_of_layer(plan, "R1", 1) == "R1/1 R1/3 R1/2 R1/4 ");
    CHECK(order_of_layer(plan, "R1", 2) == "R1/1 R1/3 R1/2 R1/4 ");
    CHECK(told(plan, "R1 (4): as the file says") == 1);
  }

  TEST_CASE("law: a ring split in four is the ring drawn in four arcs") {
    // R1 and A1 to A4 are drawn alike, on two tubes
    planner::Inputs inputs = part_of({"R1", "A1", "A2", "A3", "A4"});
    inputs.library.long_seams.reset();  // its overlap would count
    inputs.library.layer_stops.reset();
    for (joint::Seam& seam : joint_in(inputs, "R1").seams) seam.asked.segments = 4;
    const Plan plan = quick_plan(inputs);
    CHECK(sum_of(plan, "R1", &plan::PlannedSeam::welded_mm) ==
          doctest::Approx(2.0 * std::numbers::pi * 120.0));
    for (int i = 1; i <= 4; ++i) {
      const plan::PlannedSeam& segment = seam_of(plan, "R1/" + std::to_string(i));
      const plan::PlannedSeam& drawn = seam_of(plan, "A" + std::to_string(i));
      CHECK(segment.metal_kg == doctest::Approx(drawn.metal_kg));
      CHECK(segment.position == drawn.position);
      CHECK(segment.stack.arc_time_s == doctest::Approx(drawn.stack.arc_time_s));
      REQUIRE(segment.passes.size() == drawn.passes.size());
      const geom::Vec3 off(0.0, 300.0, 0.0);
      for (std::size_t k = 0; k < drawn.passes.size(); ++k) {
        const bool alike = segment.passes[k].reversed == drawn.passes[k].reversed;
        const auto& points = drawn.passes[k].points;
        const geom::Vec3& begun = alike ? points.front().point : points.back().point;
        CHECK((segment.passes[k].points.front().point + off - begun).norm() < 1e-6);
      }
    }
  }

  TEST_CASE("given a line in segments, it is welded from the middle outward, layer by layer") {
    planner::Inputs inputs = part_of({"J1"});
    inputs.library.long_seams.reset();
    inputs.library.layer_stops.reset();
    ask(inputs, "J1", 4);
    joint_in(inputs, "J1").seams.front().asked.stop_stagger_mm = 20.0;
    const Plan plan = quick_plan(inputs);
    const auto segments = segments_of(plan, "J1");
    REQUIRE(segments.size() == 4);
    for (int layer = 1; layer <= segments.front()->stack.layers; ++layer) {
      CAPTURE(layer);
      const double inner_s =
          std::max(layer_span(*segments[1], layer).to_s, layer_span(*segments[2], layer).to_s);
      CHECK(inner_s <= layer_span(*segments[0], layer).from_s);
      CHECK(inner_s <= layer_span(*segments[3], layer).from_s);
    }
    // away from the middle: the arc is put out farther from it than it was struck
    const geom::Vec3 middle(180.0, 120.0, 30.0);
    for (const plan::PlannedSeam* segment : segments) {
      for (const plan::PlannedPass& pass : segment->passes) {
        CHECK((pass.points.front().point - middle).norm() <
              (pass.points.back().point - middle).norm());
      }
    }
  }

  TEST_CASE("law: where segments meet, stops of one layer lie a stagger from those of the next") {
    planner::Inputs inputs = part_of({"J1"});
    ask(inputs, "J1", 2, 10.0);
    const Plan plan = quick_plan(inputs);
    const auto segments = segments_of(plan, "J1");
    REQUIRE(segments.size() == 2);
    const auto begun_x = [](const plan::PlannedSeam& seam, int layer) {
      for (const plan::PlannedPass& pass : seam.passes) {
        if (pass.pass.layer == layer) return pass.points.front().point.x();
      }
      FAIL("no layer ", layer);
      return 0.0;
    };
    // The middle lies at 180 mm; the tip's place along the seam does not change with the layer.
    CHECK(begun_x(*segments[0], 1) == doctest::Approx(180.0 - 15.0 + 5.0));
    CHECK(begun_x(*segments[1], 1) == doctest::Approx(180.0 - 15.0 - 5.0));
    CHECK(begun_x(*segments[0], 2) == doctest::Approx(180.0 + 15.0 + 5.0));
    CHECK(begun_x(*segments[1], 2) == doctest::Approx(180.0 + 15.0 - 5.0));
    // and each layer takes the arc and the metal of its own length
    for (std::size_t i = 0; i < 2; ++i) {
      const joint::Seam& described = plan.weldment.joints.front().seams[i];
      double metal_kg = 0.0;
      for (const plan::PlannedPass& pass : segments[i]->passes) {
        const bool even = pass.pass.layer % 2 == 0;
        const double length_mm = i == 0 ? (even ? 160.0 : 130.0) : (even ? 130.0 : 160.0);
        CHECK(joint::layer_length_mm(described, pass.pass.layer) == doctest::Approx(length_mm));
        CHECK(pass.pass.arc_time_s == doctest::Approx(length_mm / pass.pass.travel_mm_s));
        metal_kg += pass.pass.area_mm2 * length_mm * 7.85e-6;
      }
      CHECK(segments[i]->metal_kg == doctest::Approx(metal_kg));
    }
  }

  TEST_CASE("law: a layer is laid over its neighbours' layer below, balanced or not") {
    for (const bool balanced : {true, false}) {
      planner::Inputs inputs = part_of({"J1", "R1"});
      ask(inputs, "J1", 3, 6.0);
      joint_in(inputs, "J1").seams.front().asked.stop_stagger_mm = 20.0;
      ask(inputs, "R1", 4, 10.0);
      if (!balanced) inputs.weldment.balance_off = "a trial";
      const Plan plan = quick_plan(inputs);
      for (const char* joint : {"J1", "R1"}) {
        const auto segments = segments_of(plan, joint);
        for (std::size_t i = 0; i < segments.size(); ++i) {
          const bool ring = segments.size() == 4;
          if (i + 1 == segments.size() && !ring) break;
          const plan::PlannedSeam& one = *segments[i];
          const plan::PlannedSeam& next = *segments[(i + 1) % segments.size()];
          CAPTURE(one.id);
          for (int layer = 2; layer <= std::min(one.stack.layers, next.stack.layers); ++layer) {
            CHECK(layer_span(next, layer - 1).to_s <= layer_span(one, layer).from_s);
            CHECK(layer_span(one, layer - 1).to_s <= layer_span(next, layer).from_s);
          }
        }
      }
    }
  }

  TEST_CASE("given both sides of a plate in segments, those that face each other keep step") {
    planner::Inputs inputs = part_of({"J3"});
    ask(inputs, "J3", 2, 10.0);
    const Plan plan = quick_plan(inputs);
    std::set<std::string> pairs;
    for (const plan::PlannedTwins& twins : plan.twins) {
      CHECK(twins.keeps_step);
      pairs.insert(twins.first + " " + twins.second);
      CHECK(keep_step(plan, twins.first, twins.second));
    }
    CHECK(pairs == std::set<std::string>{"J3.a/1 J3.b/1", "J3.a/2 J3.b/2"});
  }

  TEST_CASE(
      "given a double groove in segments, each pair of sides takes turns and shares its heat") {
    planner::Inputs inputs = io::read_inputs(repository() / "tests/good/double_grooves.xml");
    std::erase_if(inputs.weldment.joints, [](const joint::Joint& one) { return one.id != "X"; });
    inputs.library.long_seams.reset();
    inputs.library.layer_stops.reset();
    for (joint::Seam& seam : joint_in(inputs, "X").seams) seam.asked.segments = 2;
    const Plan plan = quick_plan(inputs);
    REQUIRE(segments_of(plan, "X").size() == 4);
    std::set<std::string> pairs;
    for (const plan::PlannedTwins& twins : plan.twins) {
      CHECK(twins.kind == plan::TwinKind::groove);
      pairs.insert(twins.first + " " + twins.second);
    }
    CHECK(pairs == std::set<std::string>{"X.a/1 X.b/1", "X.a/2 X.b/2"});
    for (const char* segment : {"/1", "/2"}) {
      const plan::PlannedSeam& a = seam_of(plan, std::string("X.a") + segment);
      const plan::PlannedSeam& b = seam_of(plan, std::string("X.b") + segment);
      CHECK(layer_span(a, 1).to_s <= layer_span(b, 1).from_s);
      CHECK(layer_span(b, 1).to_s <= layer_span(a, a.stack.layers).from_s);
    }
  }

  TEST_CASE("an order by hand names the seam as drawn, and all its segments follow") {
    planner::Inputs inputs = part_of({"J1", "R1"});
    ask(inputs, "J1", 2, 10.0);
    for (const auto& entries : {std::vector<std::string>{"J1", "R1"}, {"R1", "J1"}}) {
      inputs.weldment.hand_orders = {hand_order(entries)};
      const Plan plan = quick_plan(inputs);
      double line_from_s = 1e12;
      double line_to_s = 0.0;
      for (const plan::PlannedSeam* segment : segments_of(plan, "J1")) {
        line_from_s = std::min(line_from_s, layer_span(*segment, 1).from_s);
        line_to_s = std::max(line_to_s, layer_span(*segment, segment->stack.layers).to_s);
      }
      const plan::PlannedSeam& ring = seam_of(plan, "R1");
      const bool line_first = line_to_s <= layer_span(ring, 1).from_s;
      const bool ring_first = layer_span(ring, ring.stack.layers).to_s <= line_from_s;
      CHECK(line_first == (entries.front() == "J1"));
      CHECK(ring_first == (entries.front() == "R1"));
    }
  }

  TEST_CASE("arcs of two rings keep step where they lie beside each other, wherever they begin") {
    planner::Inputs inputs = part_of({"R1", "R2"});
    ask(inputs, "R1", 4, 10.0);
    ask(inputs, "R2", 4, 10.0);
    auto& inner = std::get<geom::CirclePath>(*joint_in(inputs, "R2").seams.front().path);
    inner.axis = -inner.axis;
    const geom::Mat3 on = geom::rotation_about(geom::Vec3::UnitZ(), base::Angle::deg(80.0));
    joint::Seam& seam = joint_in(inputs, "R2").seams.front();
    for (geom::Vec3* direction : {&inner.start, &seam.wall_1, &seam.wall_2, &seam.face}) {
      *direction = on * *direction;
    }
    const Plan plan = quick_plan(inputs);
    CHECK(plan.twins.size() == 4);
    const geom::Vec3 centre(550.0, 150.0, 30.0);
    for (const plan::PlannedTwins& twins : plan.twins) {
      const auto out = [&](const std::string& id) {
        const auto& points = seam_of(plan, id).passes.front().points;
        return geom::Vec3(points[points.size() / 2].point - centre);
      };
      INFO(twins.first, " ", twins.second);
      CHECK(geom::angle_between(out(twins.first), out(twins.second)).deg() < 50.0);
    }
  }

  TEST_CASE(
      "side 2 of a groove is begun when the roots beside it stand, gouging counts one entry") {
    planner::Inputs inputs = io::read_inputs(repository() / "tests/good/double_grooves.xml");
    std::erase_if(inputs.weldment.joints, [](const joint::Joint& one) { return one.id != "X"; });
    inputs.library.long_seams.reset();
    inputs.library.layer_stops.reset();
    joint_in(inputs, "X").first_share = 0.05;  // side 2 after the root of side 1
    const Plan whole = quick_plan(inputs);
    for (joint::Seam& seam : joint_in(inputs, "X").seams) seam.asked.segments = 3;
    const Plan plan = quick_plan(inputs);
    for (int side_2 = 1; side_2 <= 3; ++side_2) {
      for (int side_1 = std::max(1, side_2 - 1); side_1 <= std::min(3, side_2 + 1); ++side_1) {
        INFO(side_2, " ", side_1);
        CHECK(layer_span(seam_of(plan, "X.a/" + std::to_string(side_1)), 1).to_s <=
              layer_span(seam_of(plan, "X.b/" + std::to_string(side_2)), 1).from_s);
      }
    }
    const auto gouge = static_cast<std::size_t>(timeline::SecondKind::gouge);
    CHECK(plan.seconds[gouge] == doctest::Approx(whole.seconds[gouge]));
  }

  TEST_CASE("law: side 2 is linked behind the roots of side 1 beside it") {
    namespace detail = planner::detail;
    planner::Inputs inputs = io::read_inputs(repository() / "tests/good/double_grooves.xml");
    std::erase_if(inputs.weldment.joints, [](const joint::Joint& one) { return one.id != "X"; });
    inputs.library.long_seams.reset();
    inputs.library.layer_stops.reset();
    joint_in(inputs, "X").first_share = 0.05;  // nothing else of side 1 comes before side 2
    for (joint::Seam& seam : joint_in(inputs, "X").seams) seam.asked.segments = 3;
    std::vector<base::Finding> findings;
    inputs = detail::in_segments(inputs, findings);
    const auto joints = detail::work_joints(inputs, findings);
    const auto seams = detail::all_seams(joints);
    const auto stages = detail::work_stages(inputs, findings);
    const auto pool = detail::find_stance_pool(inputs, stages.front(), seams, findings);
    const auto placements = detail::choose_placements(inputs, seams, pool);
    const auto job = detail::make_order_job(inputs, stages.front(), seams, pool, placements, true);
    const auto layers = detail::layers_of(seams, job);
    REQUIRE(seams.size() == 6);  // a/1 b/1 a/2 b/2 a/3 b/3
    for (std::size_t b = 1; b < 6; b += 2) {
      for (std::size_t a = 0; a < 6; a += 2) {
        if (a + 3 < b || a > b + 1) continue;  // not beside it
        const auto linked =
            detail::against_link(job.job, layers[a].front().last, layers[b].front().first);
        CAPTURE(a);
        CAPTURE(b);
        CHECK(linked.has_value());
      }
    }
  }

  TEST_CASE("tacks keep clear of where segments meet, and a stated number is that of the seam") {
    planner::Inputs inputs = part_of({"J3"});
    inputs.library.long_seams.reset();
    inputs.library.layer_stops.reset();
    ask(inputs, "J3", 2, 10.0);  // marks at 180 mm: 160 to 200 mm is shared
    joint_in(inputs, "J3").tacks = 2;
    const Plan plan = quick_plan(inputs);
    std::size_t count = 0;
    for (const plan::PlannedTacks& tacks : plan.tacks) {
      CHECK(tacks.refused == "");
      count += tacks.plan.tacks.size();
      for (const tack::Tack& tack : tacks.plan.tacks) {
        INFO(tacks.seam, " ", tack.centre.x());
        const double half_mm = (tack.to_mm - tack.from_mm) / 2.0;
        CHECK(std::abs(tack.centre.x() - 180.0) >= 20.0 + half_mm - 1e-9);
        const joint::Joint& joint = plan.weldment.joints.front();
        for (const joint::Seam& seam : joint.seams) {
          if (seam.id != tacks.seam) continue;
          const double middle_mm = (tack.from_mm + tack.to_mm) / 2.0;
          const geom::Vec3 there = geom::path_station(*seam.path, middle_mm).point;
          CHECK((there - tack.centre).norm() < 1e-9);  // stations are those of the seam's path
        }
      }
    }
    CHECK(count == 4);  // of both sides
  }

  TEST_CASE("a segment that no stance holds for its travel is laid the other way, and told") {
    // A fillet in PA whose travel stands 3.5 deg off a headstock's axis lies 2.5 deg off level (the
    // closed form of planner/lengths): uphill that is permitted, 3 deg, downhill not, 2 deg.
    planner::Inputs inputs = io::read_inputs(repository() / "tests/good/tee_headstock.xml");
    std::erase_if(inputs.library.tolerances, [](const position::WorkingTolerance& row) {
      return row.position != process::WeldPosition::pa;
    });
    geom::Mat3& R_DJ = inputs.weldment.setups.front().X_DJ.rotation;
    R_DJ = geom::rotation_about(geom::Vec3::UnitZ(), base::Angle::deg(3.5)) * R_DJ;
    ask(inputs, "J1", 2, 10.0);
    ask(inputs, "J2", 2, 10.0);
    const Plan plan = quick_plan(inputs);
    CHECK(texts_of(plan, "plan.segments.travel").size() == 2);  // one of each joint's two
    const auto told = texts_of(plan, "plan.segments");
    REQUIRE(told.size() == 1);
    CHECK(std::string(told.front()).find("begins or ends on a start or a crater, grind") !=
          std::string::npos);
    for (const char* id : {"J1/1", "J1/2", "J2/1", "J2/2"}) {
      const plan::PlannedSeam& segment = seam_of(plan, id);
      for (const plan::PlannedPass& pass : segment.passes) {
        const joint::LayerStops& stops = segment.starts.at(std::size_t(pass.pass.layer) - 1);
        CHECK(stops.reversed == pass.reversed);
        CHECK((stops.start_mm > stops.stop_mm) == pass.reversed);
      }
    }
  }

  TEST_CASE("law: the rules of a weld's size see the seam as drawn") {
    planner::Inputs inputs = part_of({"J1"});
    const Plan whole = quick_plan(inputs);
    ask(inputs, "J1", 3, 6.0);
    inputs.weldment.joints.front().seams.front().asked.stop_stagger_mm = 20.0;
    const Plan split = quick_plan(inputs);
    REQUIRE(segments_of(split, "J1").size() == 3);
    REQUIRE(whole.joints.front().size.has_value());
    const auto texts = [](const Plan& plan) {
      std::vector<std::string> all;
      for (const joint::SizeCheck& check : plan.joints.front().size->checks) {
        all.push_back(joint::check_text(check));
      }
      return all;
    };
    CHECK(texts(split) == texts(whole));
  }

  TEST_CASE("law: both sides of a groove warm each other, segment by segment") {
    planner::Inputs inputs = io::read_inputs(repository() / "tests/good/double_grooves.xml");
    std::erase_if(inputs.weldment.joints, [](const joint::Joint& one) { return one.id != "X"; });
    inputs.library.long_seams.reset();
    inputs.library.layer_stops.reset();
    for (joint::Seam& seam : joint_in(inputs, "X").seams) seam.asked.segments = 2;
    const Plan plan = quick_plan(inputs);
    const double cold_c = plan.joints.front().heat.preheat_c;
    for (const char* segment : {"/1", "/2"}) {
      const plan::PlannedSeam& a = seam_of(plan, std::string("X.a") + segment);
      const plan::PlannedSeam& b = seam_of(plan, std::string("X.b") + segment);
      // Its side 1 lies there already, and only that may have warmed it.
      REQUIRE(*a.passes.front().start_s < *b.passes.front().start_s);
      CHECK(*b.passes.front().start_high_c > cold_c + 1.0);
      CHECK(*a.passes.front().start_high_c == doctest::Approx(cold_c));
    }
  }

  TEST_CASE("law: a face bows and a bore closes alike whether its ring is split or not") {
    const Planned& planned = hub();
    planner::Inputs inputs = planned.inputs;
    inputs.library.long_seams.reset();
    inputs.library.layer_stops.reset();
    for (const char* id : {"R1", "R2", "C1"}) {
      joint::WeldLength& asked = joint_in(inputs, id).seams.front().asked;
      asked.segments = 4;
      asked.overlap_mm = asked.stop_stagger_mm = 0.0;
    }
    INFO(errors_of(inputs));
    const Plan split = quick_plan(inputs);
    for (joint::Joint& joint : inputs.weldment.joints) {
      for (joint::Seam& seam : joint.seams) seam.asked.segments = 1;
    }
    const Plan whole = quick_plan(inputs);
    REQUIRE(split.datums.size() == whole.datums.size());
    REQUIRE(told(split, "as the file says") == 1);
    for (std::size_t i = 0; i < split.datums.size(); ++i) {
      const plan::PlannedDatum& one = split.datums[i];
      const plan::PlannedDatum& other = whole.datums[i];
      CAPTURE(one.id);
      REQUIRE(one.closing_mm.has_value() == other.closing_mm.has_value());
      // other passes when held still than when rolled: near, not alike
      if (one.closing_mm) {
        CHECK(one.closing_mm->high == doctest::Approx(other.closing_mm->high).epsilon(0.2));
      }
      if (one.face) {
        CHECK(one.face->u.bow_mm.high == doctest::Approx(other.face->u.bow_mm.high).epsilon(0.2));
      }
    }
  }
}

}  // namespace seamturn::tests

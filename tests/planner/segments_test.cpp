// SPDX-License-Identifier: MIT
// Long seams and rings in segments, from the file to the clock. Laws: split or not, the same metal
// is laid and the same face bows; orders are read off the clock.
#include "planner/detail_segments.hpp"

#include <numbers>
#include <set>

#include "ordered_part.hpp"

namespace seamturn::tests {

namespace {

/// tests/good/ordered.xml with some joints only, and what a file says of segments.
planner::Inputs part_of(const std::vector<std::string>& joints) {
  planner::Inputs inputs = ordered_part();
  std::erase_if(inputs.weldment.joints, [&](const joint::Joint& joint) {
    return std::find(joints.begin(), joints.end(), joint.id) == joints.end();
  });
  return inputs;
}

void ask(planner::Inputs& inputs, const std::string& id, int segments, double overlap_mm = 0.0) {
  for (joint::Seam& seam : joint_in(inputs, id).seams) {
    seam.asked.segments = segments;
    seam.asked.stop_stagger_mm = 30.0;
    seam.asked.overlap_mm = overlap_mm;
  }
}

std::vector<const plan::PlannedSeam*> segments_of(const Plan& plan, const std::string& joint) {
  std::vector<const plan::PlannedSeam*> seams;
  for (const plan::PlannedJoint& planned : plan.joints) {
    if (planned.id != joint) continue;
    for (const plan::PlannedSeam& seam : planned.seams) seams.push_back(&seam);
  }
  return seams;
}

/// First start and last end of a layer.
Span layer_span(const plan::PlannedSeam& seam, int layer) {
  Span span{1e12, -1.0};
  for (const plan::PlannedPass& pass : seam.passes) {
    if (pass.pass.layer != layer) continue;
    span.from_s = std::min(span.from_s, *pass.start_s);
    span.to_s = std::max(span.to_s, *pass.end_s);
  }
  return span;
}

/// Ids in the order in which a layer is laid.
std::string order_of_layer(const Plan& plan, const std::string& joint, int layer) {
  std::vector<const plan::PlannedSeam*> seams = segments_of(plan, joint);
  std::sort(seams.begin(), seams.end(), [&](const auto* a, const auto* b) {
    return layer_span(*a, layer).from_s < layer_span(*b, layer).from_s;
  });
  std::string order;
  for (const plan::PlannedSeam* seam : seams) order += seam->id + ' ';
  return order;
}

double sum_of(const Plan& plan, const std::string& joint, double plan::PlannedSeam::*value) {
  double sum = 0.0;
  for (const plan::PlannedSeam* seam : segments_of(plan, joint)) sum += seam->*value;
  return sum;
}

std::size_t told(const Plan& plan, const std::string& words) {
  const std::vector<std::string> texts = texts_of(plan, "plan.segments");
  return static_cast<std::size_t>(std::count_if(texts.begin(), texts.end(), [&](const auto& text) {
    return text.find(words) != std::string::npos;
  }));
}

}  // namespace

TEST_SUITE("planner/segments") {
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
    CHECK(told(plan, "R1 (4): the file says so") == 1);
  }

  TEST_CASE("law: a ring split in four is the ring drawn in four arcs") {
    // R1 and A1 to A4 are drawn alike, on two tubes
    planner::Inputs inputs = part_of({"R1", "A1", "A2", "A3", "A4"});
    inputs.library.long_seams.reset();  // its overlap would count
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
        if (segment.passes[k].reversed != drawn.passes[k].reversed) continue;
        const geom::Vec3& one = segment.passes[k].points.front().point;
        CHECK((one + off - drawn.passes[k].points.front().point).norm() < 1e-6);
      }
    }
  }

  TEST_CASE("given a line in segments, it is welded from the middle outward, layer by layer") {
    planner::Inputs inputs = part_of({"J1"});
    inputs.library.long_seams.reset();
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

  TEST_CASE("by rule long lines are split, short ones and those the file holds whole are not") {
    const auto count_of = [](const planner::Inputs& inputs) {
      std::vector<base::Finding> findings;
      planner::Inputs split = planner::detail::in_segments(inputs, findings);
      return joint_in(split, "J1").seams.size();
    };
    planner::Inputs inputs = part_of({"J1"});
    CHECK(count_of(inputs) == 1);  // 280 mm
    inputs.library.long_seams->over_mm = 279.0;
    CHECK(count_of(inputs) == 2);
    inputs.library.long_seams->over_mm = 280.0;
    CHECK(count_of(inputs) == 1);
    inputs.library.long_seams->over_mm = 200.0;
    planner::Inputs whole = inputs;
    joint_in(whole, "J1").seams.front().asked.segments = 1;
    CHECK(count_of(whole) == 1);
    planner::Inputs off = inputs;
    joint_in(off, "J1").balance_off = "a trial";
    CHECK(count_of(off) == 1);
    planner::Inputs all_off = inputs;
    all_off.weldment.balance_off = "a trial";
    CHECK(count_of(all_off) == 1);
    planner::Inputs bent = inputs;
    joint_in(bent, "J1").seams.front().path = geom::PolylinePath{
        {geom::Vec3(40, 120, 30), geom::Vec3(320, 120, 30), geom::Vec3(320, 120, 130)}, false};
    CHECK(count_of(bent) == 1);  // only a file splits what has corners
    joint_in(bent, "J1").seams.front().asked.segments = 2;
    CHECK(count_of(bent) == 2);
  }

  TEST_CASE("by rule a long ring is split where the positioner cannot roll it, or a datum asks") {
    const auto count_of = [](const planner::Inputs& inputs) {
      std::vector<base::Finding> findings;
      planner::Inputs split = planner::detail::in_segments(inputs, findings);
      return joint_in(split, "R1").seams.size();
    };
    planner::Inputs inputs = part_of({"R1"});
    inputs.library.long_seams->over_mm = 700.0;  // the ring is 754 mm round
    CHECK(count_of(inputs) == 1);                // about the faceplate's axis: it rolls
    planner::Inputs tipped = inputs;
    tipped.weldment.setups.front().X_DJ.rotation =
        geom::rotation_about(geom::Vec3::UnitX(), base::Angle::deg(90.0));
    CHECK(count_of(tipped) == 4);
    tipped.library.long_seams->over_mm = 800.0;
    CHECK(count_of(tipped) == 1);
    joint::Datum datum;
    datum.id = "D";
    datum.member = "base";
    datum.arcs = 6;
    inputs.weldment.datums.push_back(datum);
    CHECK(count_of(inputs) == 6);
    inputs.weldment.datums.front().member = "web_1";  // not one of its members
    CHECK(count_of(inputs) == 1);
  }

  TEST_CASE("segments too short, or meeting at a corner, are told") {
    planner::Inputs inputs = part_of({"J1"});
    ask(inputs, "J1", 5, 10.0);  // 56 mm each, 80 mm asked for
    CHECK(errors_of(inputs).find("plan.segments.short: joint J1: in 5 segments of 56 mm") !=
          std::string::npos);
    joint::Seam& seam = joint_in(inputs, "J1").seams.front();
    seam.path = geom::PolylinePath{
        {geom::Vec3(40, 120, 30), geom::Vec3(180, 120, 30), geom::Vec3(320, 120.5, 30)}, false};
    seam.length_mm = geom::path_length_mm(*seam.path);
    seam.asked.corner_clear_mm = 20.0;
    ask(inputs, "J1", 2);
    std::vector<base::Finding> findings;
    (void)planner::detail::in_segments(inputs, findings);
    REQUIRE(findings.size() == 2);
    CHECK(findings.front().code == "plan.segments.corner");
    ask(inputs, "J1", 3);
    findings.clear();
    (void)planner::detail::in_segments(inputs, findings);
    CHECK(findings.size() == 1);
  }

  TEST_CASE("law: a face bows and a bore closes alike whether its ring is split or not") {
    const Planned& planned = hub();
    planner::Inputs inputs = planned.inputs;
    inputs.library.long_seams.reset();
    for (joint::Joint& joint : inputs.weldment.joints) {
      for (joint::Seam& seam : joint.seams) {
        const bool ring = seam.path && std::holds_alternative<geom::CirclePath>(*seam.path);
        if (ring && seam.length_mm > 800.0) seam.asked.segments = 4, seam.asked.overlap_mm = 0.0;
        if (ring && seam.length_mm > 800.0) seam.asked.stop_stagger_mm = 0.0;
      }
    }
    INFO(errors_of(inputs));
    const Plan split = quick_plan(inputs);
    for (joint::Joint& joint : inputs.weldment.joints) {
      for (joint::Seam& seam : joint.seams) seam.asked.segments = 1;
    }
    const Plan whole = quick_plan(inputs);
    REQUIRE(split.datums.size() == whole.datums.size());
    REQUIRE(told(split, "the file says so") == 1);
    for (std::size_t i = 0; i < split.datums.size(); ++i) {
      const plan::PlannedDatum& one = split.datums[i];
      const plan::PlannedDatum& other = whole.datums[i];
      CAPTURE(one.id);
      REQUIRE(one.closing_mm.has_value() == other.closing_mm.has_value());
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

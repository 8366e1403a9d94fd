// SPDX-License-Identifier: MIT
// Bands of the demo hub's bearing face and centring bore.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "planned_demos.hpp"

namespace seamturn::tests {

namespace {

constexpr double pi = std::numbers::pi;

const plan::PlannedDatum& datum_of(const Plan& plan, const std::string& id) {
  for (const plan::PlannedDatum& datum : plan.datums) {
    if (datum.id == id) return datum;
  }
  FAIL("no datum ", id);
  return plan.datums.front();
}

double heat_j_mm(const plan::PlannedSeam& seam) {
  double sum = 0.0;
  for (const plan::PlannedPass& pass : seam.passes) sum += 1000.0 * pass.pass.heat_input_kj_mm;
  return sum;
}

bool tells(const Plan& plan, const std::string& code) {
  return std::any_of(plan.findings.begin(), plan.findings.end(), [&](const auto& finding) {
    return finding.code == code;
  });
}

}  // namespace

TEST_SUITE("planner/datums") {
  TEST_CASE(
      "given the ring weld on the bearing face, closed-form: what it bends while only two rings "
      "are there") {
    const Plan& plan = hub().plan;
    const plan::PlannedSeam& c1 = seam_of(plan, "C1");
    // Cut through the axis: flange 2 x (240 x 60) from 0 to -60, centring 2 x (25 x 25) from 0 to
    // 25, heights along the face's normal. By hand.
    const double area = 2 * 240.0 * 60.0 + 2 * 25.0 * 25.0;
    const double centroid = (2 * 240.0 * 60.0 * -30.0 + 2 * 25.0 * 25.0 * 12.5) / area;
    const double second =
        2 * (240.0 * 60.0 * 60.0 * 60.0 / 12.0 + 240.0 * 60.0 * std::pow(-30.0 - centroid, 2)) +
        2 * (25.0 * std::pow(25.0, 3) / 12.0 + 25.0 * 25.0 * std::pow(12.5 - centroid, 2));
    const double length = 1040.0;
    const auto bow = [&](double force_n) {
      const double mean_n = force_n * pi * 310.0 / length;
      return mean_n * -centroid * length * length / (8.0 * 206000.0 * second);
    };
    const double by_heat = bow(200.0 * heat_j_mm(c1));
    const double by_area = bow(0.04 * 206000.0 * c1.section.area_mm2);
    const plan::PlannedDatum& face = datum_of(plan, "bearing_face");
    REQUIRE(face.face);
    const auto& share = face.face->u.shares.front();
    CHECK(share.seam_id == "C1");
    check_expected("least",
                   share.bow_mm.low,
                   {std::min(by_heat, by_area),
                    0.02 * by_heat,
                    Origin::closed_form,
                    "two rings cut through the axis, by hand; the cut's own accuracy"});
    check_expected("most",
                   share.bow_mm.high,
                   {4.0 / pi * std::max(by_heat, by_area),
                    0.03 * by_heat,
                    Origin::closed_form,
                    "the whole ring's turn"});
    CHECK(share.bow_mm.low > 0.0);  // weld above the middle: hollow
  }

  TEST_CASE("for a part that is alike in both directions, law: so are its bands") {
    const plan::PlannedDatum& face = datum_of(hub().plan, "bearing_face");
    CHECK(face.face->u.bow_mm.high == doctest::Approx(face.face->v.bow_mm.high).epsilon(0.01));
    CHECK(face.face->u.along_mm.high == doctest::Approx(face.face->v.along_mm.high).epsilon(0.01));
    CHECK(face.face->u.worst_on_the_way_mm.high >= std::abs(face.face->u.bow_mm.high) - 1e-12);
  }

  TEST_CASE("for the face, law: bands only, the sum of the shares is the final bow") {
    const auto& u = datum_of(hub().plan, "bearing_face").face->u;
    double low = 0.0;
    double high = 0.0;
    for (const shrinkage::SeamShare& share : u.shares) {
      low += share.bow_mm.low;
      high += share.bow_mm.high;
    }
    CHECK(low <= u.bow_mm.low + 1e-9);
    CHECK(high >= u.bow_mm.high - 1e-9);
    CHECK(u.bow_mm.low < u.bow_mm.high);
  }

  TEST_CASE("given the centring bore, closed-form: hoop strain of its ring times its diameter") {
    const Plan& plan = hub().plan;
    const plan::PlannedDatum& bore = datum_of(plan, "centring_bore");
    REQUIRE(bore.closing_mm);
    const plan::PlannedSeam& c1 = seam_of(plan, "C1");
    const double by_force = 200.0 * heat_j_mm(c1) * 570.0 / (206000.0 * 25.0 * 25.0);
    check_expected("most",
                   bore.closing_mm->high,
                   {by_force, 0.02 * by_force, Origin::closed_form, "F D over E A, ring 25 x 25"});
    CHECK(bore.closing_mm->low >= 0.0);
  }

  TEST_CASE("given limits, what the band's high end exceeds is told, just inside not") {
    planner::Inputs inputs = hub().inputs;
    const double worst_mm = datum_of(hub().plan, "bearing_face").worst_mm;
    CHECK_FALSE(tells(hub().plan, "plan.datum.allowance"));
    CHECK_FALSE(tells(hub().plan, "plan.datum.flatness"));
    CHECK_FALSE(tells(hub().plan, "plan.datum.hot"));
    joint::Datum& face = inputs.weldment.datums.front();
    face.allowance_mm = worst_mm + 0.01;
    face.temperature_max_c = 250.0;  // the interpass maximum of its joints
    const Plan inside = quick_plan(inputs);
    CHECK_FALSE(tells(inside, "plan.datum.allowance"));
    CHECK_FALSE(tells(inside, "plan.datum.hot"));
    face.allowance_mm = worst_mm - 0.01;
    face.temperature_max_c = 249.0;
    const Plan outside = quick_plan(inputs);
    CHECK(tells(outside, "plan.datum.allowance"));
    CHECK(tells(outside, "plan.datum.hot"));
    CHECK(datum_of(outside, "bearing_face").worst_mm == doctest::Approx(worst_mm));
  }

  TEST_CASE("given no cell, the welds count in the order of the file and bend it as much") {
    planner::Inputs inputs = hub().inputs;
    inputs.cell.reset();
    const Plan plan = quick_plan(inputs);
    const auto& drawn = datum_of(plan, "bearing_face").face->u;
    CHECK(drawn.shares.front().seam_id == "C1");
    CHECK(drawn.shares.size() == datum_of(hub().plan, "bearing_face").face->u.shares.size());
    CHECK(drawn.bow_mm.low > 0.0);
  }

  TEST_CASE(
      "given a small face, only what lies over it counts, and welds elsewhere do not bend it") {
    planner::Inputs inputs = hub().inputs;
    joint::Datum& face = inputs.weldment.datums.front();
    face.length_mm = face.width_mm = 600.0;  // C1 runs at 310: outside
    const Plan plan = quick_plan(inputs);
    const auto& u = datum_of(plan, "bearing_face").face->u;
    CHECK(u.bow_mm.high == 0.0);
    CHECK(u.across_mm.high == 0.0);
    for (const shrinkage::SeamShare& share : datum_of(hub().plan, "bearing_face").face->u.shares) {
      CHECK(share.seam_id != "R3");  // on the tube, far above
      CHECK(share.seam_id != "R4");
    }
  }

  TEST_CASE("given a butt beside a face, law: which member is named first changes nothing") {
    planner::Inputs inputs = planned_demo("bracket.xml").inputs;
    joint::Datum foot;
    foot.id = "foot";
    foot.member = "base_right";
    foot.at = geom::Vec3(353.0, 150.0, 0.0);
    foot.axis = -geom::Vec3::UnitZ();
    foot.length_mm = 220.0;
    foot.width_mm = 300.0;
    foot.flatness = "F";
    inputs.weldment.datums = {foot};
    const Plan one = quick_plan(inputs);
    joint::Joint& butt = inputs.weldment.joints.front();
    REQUIRE(butt.type == joint::JointType::butt);
    std::swap(butt.member_1, butt.member_2);
    const Plan other = quick_plan(inputs);
    const auto& a = datum_of(one, "foot").face->u.across_mm;
    const auto& b = datum_of(other, "foot").face->u.across_mm;
    CHECK(a.high > 0.0);
    CHECK(a.high == doctest::Approx(b.high));
  }

  TEST_CASE("given a face too small for the table of flatness, that is told") {
    planner::Inputs inputs = hub().inputs;
    joint::Datum& face = inputs.weldment.datums.front();
    face.length_mm = face.width_mm = 30.0;
    CHECK(tells(quick_plan(inputs), "shrinkage.tolerance.size"));
  }

  TEST_CASE("given a face whose plane cuts nothing, it is told and no band is made") {
    planner::Inputs inputs = hub().inputs;
    inputs.weldment.datums.front().at = geom::Vec3(5000.0, 5000.0, 0.0);
    const Plan plan = quick_plan(inputs);
    CHECK(tells(plan, "plan.datum.no_section"));
    CHECK_FALSE(datum_of(plan, "bearing_face").face.has_value());
  }
}

}  // namespace seamturn::tests

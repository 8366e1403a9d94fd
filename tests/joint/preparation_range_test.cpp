// SPDX-License-Identifier: MIT
#include "seamturn/joint/preparation_range.hpp"

#include <cmath>

#include "oracle.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/random.hpp"

namespace seamturn::tests {

using base::Angle;
using base::Status;
using joint::check_against_range;
using joint::check_against_ranges;
using joint::PreparationRange;
using joint::PreparationSizes;
using joint::RangeLimit;
using joint::RangeSides;

namespace {

RangeLimit limit(double least, double largest, Status status = Status::verified) {
  RangeLimit made;
  made.least = least;
  made.largest = largest;
  made.status = status;
  return made;
}

RangeLimit above(double least, Status status = Status::verified) {
  RangeLimit made;
  made.least = least;
  made.above_least = true;
  made.status = status;
  return made;
}

/// published: GB 985-88, Y groove: t 3 to 26, 40 to 60 deg, gap 0 to 3, root face 1 to 4.
PreparationRange gb_y() {
  PreparationRange row;
  row.id = "gb985-y";
  row.preparation = "single-v";
  row.thickness = limit(3.0, 26.0);
  row.angle = limit(40.0, 60.0);
  row.gap = limit(0.0, 3.0);
  row.root_face = limit(1.0, 4.0);
  row.source = "GB 985-88, Y groove";
  return row;
}

/// published: GB 985-88, single U: t 20 to 60, face 1 to 8 deg, gap 0 to 3, root face 1 to 3, R 6
/// to 8.
PreparationRange gb_u() {
  PreparationRange row;
  row.id = "gb985-u";
  row.preparation = "single-u";
  row.thickness = limit(20.0, 60.0);
  row.angle = limit(1.0, 8.0);
  row.gap = limit(0.0, 3.0);
  row.root_face = limit(1.0, 3.0);
  row.radius = limit(6.0, 8.0);
  row.source = "GB 985-88, single U";
  return row;
}

/// published, second-hand: ISO 9692-1:2013 2.1, square from both sides: t to 8, gap to t/2.
PreparationRange iso_square() {
  PreparationRange row;
  row.id = "iso9692-square-two";
  row.preparation = "square";
  row.sides = RangeSides::two;
  row.thickness.largest = 8.0;
  row.thickness.status = Status::verified;
  row.gap.thickness_ratio = 0.5;
  row.gap.status = Status::verified;
  row.source = "SEAM-DATA, ISO 9692-1:2013 2.1";
  return row;
}

/// remembered: ISO 9692-1, V from one side, 3 to 10 mm; the thickness was seen second-hand.
PreparationRange iso_v() {
  PreparationRange row;
  row.id = "iso9692-v";
  row.preparation = "single-v";
  row.thickness = limit(3.0, 10.0);
  row.angle = limit(40.0, 60.0, Status::from_memory);
  row.gap.largest = 4.0;
  row.root_face.largest = 2.0;
  row.source = "ISO 9692-1:2013 1.3";
  return row;
}

PreparationSizes sizes(double thickness_mm, double gap_mm, double root_face_mm, double deg) {
  return {thickness_mm, gap_mm, root_face_mm, Angle::deg(deg), std::nullopt};
}

using Codes = std::vector<std::string>;

Codes codes(const std::vector<base::Finding>& findings) {
  Codes out;
  for (const base::Finding& finding : findings) out.push_back(finding.code);
  return out;
}

}  // namespace

TEST_SUITE("joint/preparation_range") {
  TEST_CASE("given GB 985 Y groove, its limits are inside and a tenth beyond each is outside") {
    const PreparationRange row = gb_y();
    CHECK(check_against_range(sizes(3.0, 0.0, 1.0, 40.0), row).empty());
    CHECK(check_against_range(sizes(26.0, 3.0, 4.0, 60.0), row).empty());
    CHECK(codes(check_against_range(sizes(26.1, 3.0, 4.0, 60.0), row)) ==
          Codes{"joint.range.thickness"});
    CHECK(codes(check_against_range(sizes(2.9, 3.0, 1.0, 60.0), row)) ==
          Codes{"joint.range.thickness"});
    CHECK(codes(check_against_range(sizes(20.0, 3.1, 4.0, 60.0), row)) == Codes{"joint.range.gap"});
    CHECK(codes(check_against_range(sizes(20.0, 3.0, 4.1, 60.0), row)) ==
          Codes{"joint.range.root_face"});
    CHECK(codes(check_against_range(sizes(20.0, 3.0, 0.9, 60.0), row)) ==
          Codes{"joint.range.root_face"});
    CHECK(codes(check_against_range(sizes(20.0, 3.0, 4.0, 60.1), row)) ==
          Codes{"joint.range.angle"});
    CHECK(codes(check_against_range(sizes(20.0, 3.0, 4.0, 39.9), row)) ==
          Codes{"joint.range.angle"});
    CHECK(codes(check_against_range(sizes(30.0, 5.0, 0.0, 70.0), row)) ==
          Codes{"joint.range.thickness",
                "joint.range.angle",
                "joint.range.gap",
                "joint.range.root_face"});
  }

  TEST_CASE("given GB 985 single U, the radius counts where the joint has one") {
    const PreparationRange row = gb_u();
    PreparationSizes u = sizes(30.0, 2.0, 3.0, 8.0);
    CHECK(check_against_range(u, row).empty());
    u.radius_mm = 6.0;
    CHECK(check_against_range(u, row).empty());
    u.radius_mm = 5.9;
    CHECK(codes(check_against_range(u, row)) == Codes{"joint.range.radius"});
    u.radius_mm = 8.1;
    CHECK(codes(check_against_range(u, row)) == Codes{"joint.range.radius"});
  }

  TEST_CASE("given a limit that is above 16 mm, 16 mm itself is outside") {
    PreparationRange row;
    row.id = "steep";
    row.preparation = "single-v";
    row.thickness = above(16.0);
    CHECK(codes(check_against_range({16.0, {}, {}, {}, {}}, row)) ==
          Codes{"joint.range.thickness"});
    CHECK(check_against_range({16.1, {}, {}, {}, {}}, row).empty());
    CHECK(check_against_range({500.0, {}, {}, {}, {}}, row).empty());
  }

  TEST_CASE("given ISO 9692-1 square from both sides, the gap may be half the thickness") {
    const PreparationRange row = iso_square();
    CHECK(check_against_range({6.0, 3.0, {}, {}, {}}, row).empty());
    CHECK(codes(check_against_range({6.0, 3.1, {}, {}, {}}, row)) == Codes{"joint.range.gap"});
    CHECK(check_against_range({8.0, 4.0, {}, {}, {}}, row).empty());
    CHECK(codes(check_against_range({8.1, 4.0, {}, {}, {}}, row)) ==
          Codes{"joint.range.thickness"});
  }

  TEST_CASE("given a size outside, the warning names value, limit, row, source and status") {
    const auto findings = check_against_range(sizes(8.0, 2.0, 1.0, 70.0), iso_v());
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].severity == base::Severity::warning);
    CHECK(findings[0].text.find("angle 70 deg lies outside row iso9692-v: 40 deg to 60 deg "
                                "[ISO 9692-1:2013 1.3, from memory]") != std::string::npos);
  }

  TEST_CASE("given several rows, one that holds all is enough, else the nearest speaks") {
    const PreparationRange rows[] = {iso_v(), gb_y(), gb_u()};
    const RangeSides one = RangeSides::one;
    CHECK(check_against_ranges("single-v", one, sizes(20.0, 2.0, 2.0, 60.0), rows).empty());
    CHECK(check_against_ranges("single-v", one, sizes(5.0, 4.0, 0.0, 50.0), rows).empty());
    // 20 mm without root face: each row has one size outside; the one for 20 mm says more.
    CHECK(codes(check_against_ranges("single-v", one, sizes(20.0, 2.0, 0.0, 60.0), rows)) ==
          Codes{"joint.range.root_face"});
    CHECK(codes(check_against_ranges("single-v", one, sizes(20.0, 3.5, 3.0, 60.0), rows)) ==
          Codes{"joint.range.gap"});
    CHECK(codes(check_against_ranges("single-v", RangeSides::two, sizes(8, 2, 1, 60), rows)) ==
          Codes{"joint.range.unknown"});
    CHECK(check_against_ranges("double-j", one, sizes(8, 2, 1, 60), rows).front().severity ==
          base::Severity::note);
  }

  TEST_CASE("given rows for one joint type, a tee is not judged by the corner's") {
    // published, second-hand: ISO 9692-1:2013 4.1.1 (tee, 70 to 100 deg) and 4.1.2 (corner, 60 to
    // 120).
    PreparationRange tee;
    tee.id = "tee";
    tee.preparation = "fillet";
    tee.sides = RangeSides::two;
    tee.joint = "tee";
    tee.angle = limit(70.0, 100.0);
    PreparationRange corner = tee;
    corner.id = "corner";
    corner.joint = "corner";
    corner.angle = limit(60.0, 120.0);
    const PreparationRange rows[] = {tee, corner};
    const PreparationSizes wide = {10.0, {}, {}, Angle::deg(110.0), {}};
    const RangeSides two = RangeSides::two;
    CHECK(check_against_ranges("fillet", two, wide, rows).empty());
    CHECK(check_against_ranges("fillet", two, wide, rows, "corner").empty());
    CHECK(codes(check_against_ranges("fillet", two, wide, rows, "tee")) ==
          Codes{"joint.range.angle"});
    CHECK(codes(check_against_ranges("fillet", two, wide, rows, "lap")) ==
          Codes{"joint.range.unknown"});
  }

  TEST_CASE("for any sizes, law: a row that is widened never warns of more") {
    base::Random random(base::named_seed(20261125, "preparation_range/wider"));
    for (int i = 0; i < 300; ++i) {
      const PreparationSizes joint = sizes(random.between(1.0, 40.0),
                                           random.between(0.0, 6.0),
                                           random.between(0.0, 6.0),
                                           random.between(20.0, 80.0));
      PreparationRange wider = gb_y();
      wider.thickness.largest = *wider.thickness.largest + random.between(0.0, 10.0);
      wider.gap.largest = *wider.gap.largest + random.between(0.0, 3.0);
      wider.angle.least = *wider.angle.least - random.between(0.0, 20.0);
      wider.root_face.least.reset();
      INFO("case ", i, " t ", joint.thickness_mm);
      CHECK(check_against_range(joint, wider).size() <= check_against_range(joint, gb_y()).size());
    }
  }

  TEST_CASE("refuses rows that cannot be because they would warn of everything or nothing") {
    CHECK(joint::wrong_with_range(gb_y()).empty());
    CHECK(joint::wrong_with_range(iso_square()).empty());
    CHECK(joint::wrong_with_range(PreparationRange{}) == "the row limits nothing");
    PreparationRange row = gb_y();
    row.gap = limit(3.0, 2.0);
    CHECK(joint::wrong_with_range(row) == "gap has its least above its largest");
    row = gb_y();
    row.angle.least = -1.0;
    CHECK(joint::wrong_with_range(row).find("angle has a limit below 0") == 0);
    row = gb_y();
    row.thickness.least.reset();
    row.thickness.above_least = true;
    CHECK(joint::wrong_with_range(row).find("thickness is said") == 0);
    CHECK_THROWS_AS((void)check_against_range(sizes(0.0, 1, 1, 60), gb_y()),
                    base::ContractViolation);
    CHECK_THROWS_AS((void)check_against_range(sizes(8.0, std::nan(""), 1, 60), gb_y()),
                    base::ContractViolation);
  }

  TEST_CASE("given the words for sides, each reads back") {
    for (const RangeSides sides : {RangeSides::one, RangeSides::two, RangeSides::backing}) {
      CHECK(joint::find_sides(joint::sides_name(sides)) == sides);
    }
    CHECK_FALSE(joint::find_sides("three").has_value());
  }
}

}  // namespace seamturn::tests

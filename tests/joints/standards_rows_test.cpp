// SPDX-License-Identifier: MIT
// The installed standards library against what was read in the documents.
#include <algorithm>
#include <cmath>

#include "joints/demo_files.hpp"
#include "oracle.hpp"
#include "oracles/pass_limits.hpp"
#include "seamturn/io/read.hpp"
#include "seamturn/joint/preparation_range.hpp"
#include "seamturn/planner/inputs.hpp"

namespace seamturn::tests {

namespace {

planner::Library standards() {
  return io::read_inputs(source_dir / "joints" / "bracket.xml").library;
}

/// The tightest verified limit of the code that matches; rows from practice do not count here.
template <class Member>
double code_limit(const planner::Library& library,
                  process::WeldFamily family,
                  process::PassRole role,
                  process::WeldPosition position,
                  Member member) {
  double least = 1e9;
  for (const process::BeadLimit& row : library.bead_limits) {
    const bool here =
        row.positions.empty() ||
        std::find(row.positions.begin(), row.positions.end(), position) != row.positions.end();
    const bool now = std::find(row.roles.begin(), row.roles.end(), role) != row.roles.end();
    const bool code = row.source.rfind("AWS D1.1:2020 table 5.1", 0) == 0;
    if (row.family == family && here && now && code && row.*member) {
      least = std::min(least, *(row.*member));
    }
  }
  return least;
}

}  // namespace

TEST_SUITE("joints/standards_rows") {
  TEST_CASE(
      "given AWS D1.1 2020 table 5.1, the library holds leg, root and fill of each position") {
    const planner::Library library = standards();
    using process::PassRole;
    using process::WeldFamily;
    for (const PassLimitRow& row : pass_limit_rows) {
      const std::string item(process::position_name(row.position));
      check_expected(item + " leg",
                     code_limit(library,
                                WeldFamily::fillet,
                                PassRole::single,
                                row.position,
                                &process::BeadLimit::leg_max_mm),
                     {row.single_leg_mm, 1e-12, Origin::published, row.source});
      check_expected(item + " root",
                     code_limit(library,
                                WeldFamily::groove,
                                PassRole::root,
                                row.position,
                                &process::BeadLimit::thickness_max_mm),
                     {row.root_thickness_mm, 1e-12, Origin::published, row.source});
      check_expected(item + " fill",
                     code_limit(library,
                                WeldFamily::groove,
                                PassRole::fill,
                                row.position,
                                &process::BeadLimit::thickness_max_mm),
                     {fill_thickness_mm, 1e-12, Origin::published, row.source});
    }
  }

  TEST_CASE("given a steel institute's 8 mm for one horizontal pass, the library holds it too") {
    const planner::Library library = standards();
    double leg_mm = 0.0;
    for (const process::BeadLimit& row : library.bead_limits) {
      if (row.source.rfind("STEEL-INT", 0) == 0) leg_mm = row.leg_max_mm.value_or(0.0);
    }
    check_expected("PB, practice", leg_mm, {8.0, 1e-12, Origin::published, "STEEL-INT"});
  }

  TEST_CASE("given a row whose sizes come from two places, each says how sure it is") {
    for (const joint::PreparationRange& row : standards().preparation_ranges) {
      if (row.id != "iso9692-v") continue;
      CHECK(row.thickness.status == base::Status::verified);
      CHECK(row.gap.status == base::Status::verified);
      CHECK(row.angle.status == base::Status::from_memory);  // the row's own
      CHECK(row.root_face.status == base::Status::from_memory);
      CHECK(row.thickness.largest == 10.0);
      return;
    }
    FAIL("the row is gone");
  }

  // Row 4.1.3 of ISO 9692-1 (2 to 4 mm, from both sides) was read without the joint it is drawn
  // for.
  TEST_CASE("given a lap of 12 mm welded from both sides, no row of the library bars it") {
    const std::vector<joint::PreparationRange> rows = standards().preparation_ranges;
    const auto told = [&](double thickness_mm, const char* type) {
      std::string codes;
      for (const base::Finding& finding :
           joint::check_against_ranges("fillet",
                                       joint::RangeSides::two,
                                       {thickness_mm, 0.0, {}, base::Angle::deg(90.0), {}},
                                       rows,
                                       type)) {
        codes += finding.code + " ";
      }
      return codes;
    };
    CHECK(told(12.0, "lap") == "joint.range.unknown ");
    CHECK(told(3.0, "tee").empty());
    CHECK(told(12.0, "tee").empty());
  }
}

}  // namespace seamturn::tests

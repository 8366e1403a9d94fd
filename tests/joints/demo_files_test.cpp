// SPDX-License-Identifier: MIT
// Every weldment in joints/ reads without a finding, and holds what its README says.
#include <algorithm>
#include <string>
#include <vector>

#include "joints/demo_files.hpp"
#include "oracle.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/process/deposit.hpp"

namespace seamturn::tests {

namespace {

std::vector<fs::path> demo_weldments() {
  std::vector<fs::path> files;
  for (const fs::path& file : demo_files()) {
    if (kind_of(io::read_bytes(file)) == "weldment") files.push_back(file);
  }
  return files;
}

/// Reads a weldment; every finding of error severity fails the test with its own words.
planner::Inputs read_demo(const fs::path& file) {
  try {
    return io::read_inputs(file);
  } catch (const base::InputError& error) {
    for (const base::Finding& finding : error.findings()) FAIL_CHECK(base::finding_text(finding));
    throw;
  }
}

std::size_t seam_count(const joint::Weldment& weldment) {
  std::size_t count = 0;
  for (const joint::Joint& joint : weldment.joints) count += joint.seams.size();
  return count;
}

std::size_t ring_seam_count(const joint::Weldment& weldment) {
  std::size_t count = 0;
  for (const joint::Joint& joint : weldment.joints) {
    for (const joint::Seam& seam : joint.seams) {
      if (seam.path && geom::is_closed(*seam.path)) ++count;
    }
  }
  return count;
}

}  // namespace

TEST_SUITE("joints/demo_files") {
  TEST_CASE("for any weldment in joints, law: it reads without a finding and says it is invented") {
    const auto files = demo_weldments();
    REQUIRE(files.size() >= 2);
    for (const fs::path& file : files) {
      INFO(file.string());
      const planner::Inputs inputs = read_demo(file);
      for (const base::Finding& finding : inputs.findings) {
        FAIL_CHECK(base::finding_text(finding));
      }
      CHECK(inputs.weldment.invented);
      REQUIRE(inputs.cell.has_value());
      CHECK(inputs.cell->invented);
    }
  }

  TEST_CASE("for any steel of standards.xml, law: its bands carry a source and rise") {
    const planner::Inputs inputs = read_demo(source_dir / "joints" / "bracket.xml");
    for (const material::Steel& steel : inputs.library.steels) {
      double below_mm = 0.0;
      for (const material::SteelBand& band : steel.bands) {
        INFO(steel.designation << " up to " << band.up_to_mm);
        CHECK_FALSE(band.source.empty());
        CHECK(band.status != base::Status::proposed);
        CHECK(band.up_to_mm > below_mm);
        below_mm = band.up_to_mm;
      }
    }
  }

  TEST_CASE("for the hub, law: 40 seams or more, two rings or more, plates from 12 to 60 mm") {
    const planner::Inputs inputs = read_demo(source_dir / "joints" / "grab_hub.xml");
    CHECK(seam_count(inputs.weldment) >= 40);
    CHECK(ring_seam_count(inputs.weldment) >= 2);
    double least_mm = 1e9;
    double most_mm = 0.0;
    for (const joint::Member& member : inputs.weldment.members) {
      least_mm = std::min(least_mm, joint::wall_thickness_mm(member.shape));
      most_mm = std::max(most_mm, joint::wall_thickness_mm(member.shape));
    }
    CHECK(least_mm == doctest::Approx(12.0));
    CHECK(most_mm == doctest::Approx(60.0));
  }

  TEST_CASE("given the hub drawn in joints README, its mass is 673 kg") {
    const planner::Inputs inputs = read_demo(source_dir / "joints" / "grab_hub.xml");
    const joint::Weight weight = joint::total_weight(inputs.weldment.members);
    // computed: sum of pi/4 (D2 - d2) h and a b t over the 25 members, 7850 kg/m3.
    check_expected("grab_hub",
                   weight.mass_kg,
                   {673.3, 0.05, Origin::computed, "joints/README.md, separate sum of volumes"});
    check_expected("grab_hub x", weight.centre.x(), {0.0, 1e-6, Origin::law, "four-fold symmetry"});
    check_expected("grab_hub y", weight.centre.y(), {0.0, 1e-6, Origin::law, "four-fold symmetry"});
    check_expected("grab_hub z",
                   weight.centre.z(),
                   {153.2, 0.05, Origin::computed, "joints/README.md, separate sum of moments"});
  }

  TEST_CASE("for any settings row of the shop, law: its bead lies between 9 and 55 mm2") {
    const planner::Inputs inputs = read_demo(source_dir / "joints" / "bracket.xml");
    REQUIRE_FALSE(inputs.library.settings.empty());
    for (const process::LinkedSettings& row : inputs.library.settings) {
      INFO(row.id);
      const auto wire =
          std::find_if(inputs.library.wires.begin(),
                       inputs.library.wires.end(),
                       [&row](const process::Wire& one) { return one.id == row.wire; });
      REQUIRE(wire != inputs.library.wires.end());
      CHECK(process::bead_area_mm2(*wire, row.feed_mm_s, row.travel_max_mm_s) >= 9.0);
      CHECK(process::bead_area_mm2(*wire, row.feed_mm_s, row.travel_min_mm_s) <= 55.0);
      CHECK(row.travel_min_mm_s < row.travel_preferred_mm_s);
      CHECK(row.travel_preferred_mm_s < row.travel_max_mm_s);
    }
  }

  TEST_CASE("for any role and position the shop welds in, law: a 20 mm2 bead can be laid") {
    const planner::Inputs inputs = read_demo(source_dir / "joints" / "bracket.xml");
    for (const auto position : {process::WeldPosition::pa,
                                process::WeldPosition::pb,
                                process::WeldPosition::pc,
                                process::WeldPosition::pf}) {
      for (const auto role : {process::PassRole::tack,
                              process::PassRole::root,
                              process::PassRole::fill,
                              process::PassRole::cap,
                              process::PassRole::single}) {
        INFO(process::position_name(position) << ' ' << process::role_name(role));
        const bool can = std::any_of(
            inputs.library.settings.begin(),
            inputs.library.settings.end(),
            [&](const process::LinkedSettings& row) {
              if (row.role != role || row.wire != "G3Si1-1.2") return false;
              if (std::find(row.positions.begin(), row.positions.end(), position) ==
                  row.positions.end()) {
                return false;
              }
              // closed form: pi/4 1.2^2 x feed x 0.95 / 20 mm2.
              const double travel_mm_s = 0.0537212 * row.feed_mm_s;
              return row.travel_min_mm_s <= travel_mm_s && travel_mm_s <= row.travel_max_mm_s;
            });
        CHECK(can);
      }
    }
  }
}

}  // namespace seamturn::tests

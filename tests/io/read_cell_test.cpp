// SPDX-License-Identifier: MIT
// Positioners of every kind from a cell file, and what is refused about them.
#include <doctest/doctest.h>

#include <cstdlib>
#include <string>

#include "io/temporary_folder.hpp"
#include "repository.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/io/read.hpp"

namespace seamturn::tests {

using base::Angle;
using geom::Vec3;

namespace {

const char* const plate = " speed=\"12 deg/s\" acceleration=\"10 deg/s2\" torque-max=\"9 kN m\"";

/// Attributes of the positioner, and its children.
struct Written {
  std::string kind;
  std::string attributes;
  std::string children;
};

std::string axis(const std::string& name, const std::string& more = "") {
  return "<axis name=\"" + name + "\" min=\"-190 deg\" max=\"190 deg\"" + plate + more + "/>";
}

std::string cell_of(const Written& written) {
  std::string text = got(repository() / "tests/good/cells/table.xml");
  const std::size_t from = text.find("<positioner"), to = text.find("<robot");
  return text.substr(0, from) + "<positioner id=\"P1\" kind=\"" + written.kind + "\" " +
         written.attributes +
         " overhang=\"100 mm\" load-max=\"2 t\" load-centre=\"300 mm\" "
         "rolling-speed-max=\"10 deg/s\">" +
         written.children + "</positioner>" + text.substr(to);
}

/// "" or the codes told.
std::string codes_of(const Written& written, planner::Inputs* read = nullptr) {
  const TemporaryFolder folder;
  for (const char* file : {"tee.xml", "library/standards.xml"}) {
    put(folder.path() / file, got(repository() / "tests/good" / file));
  }
  put(folder.path() / "cells/table.xml", cell_of(written));
  std::string codes;
  try {
    planner::Inputs inputs = io::read_inputs(folder.path() / "tee.xml");
    if (read != nullptr) *read = std::move(inputs);
  } catch (const base::InputError& error) {
    for (const base::Finding& finding : error.findings()) {
      codes += (codes.empty() ? "" : " ") + finding.code;
    }
  }
  return codes;
}

cell::Positioner read(const Written& written) {
  planner::Inputs inputs;
  REQUIRE(codes_of(written, &inputs) == "");
  return inputs.cell->positioner;
}

const std::string centre = "tilt-centre=\"0 0 900 mm\"";
const std::string lined = " along=\"0 3 4\" at=\"1 2 3 m\"";

}  // namespace

TEST_SUITE("io/read_cell") {
  TEST_CASE("given every kind of positioner, its axes and numbers are read") {
    const auto headstock = read({"headstock",
                                 centre + " mass-uncertainty=\"5 %\" rim-speed-max=\"0.5 m/s\"",
                                 axis("turn", " jerk=\"40 deg/s3\" stop=\"60 deg/s2\"") +
                                     "<tailstock span=\"3 m\" load-max=\"1500 kg\"/>"});
    CHECK(headstock.kind == cell::PositionerKind::headstock);
    REQUIRE(headstock.tailstock.has_value());
    CHECK(headstock.tailstock->span_mm == 3000.0);
    CHECK(headstock.tailstock->load_max_kg == 1500.0);
    REQUIRE(headstock.margin.has_value());
    CHECK(headstock.margin->mass_ratio == doctest::Approx(0.05));
    CHECK(headstock.margin->centre_mm == 0.0);
    CHECK(headstock.rim_speed_max_mm_s.value_or(0.0) == doctest::Approx(500.0));
    CHECK_FALSE(headstock.floor_clearance_mm.has_value());
    CHECK(headstock.axes[0].jerk_rad_s3.value_or(0.0) == doctest::Approx(Angle::deg(40.0).rad()));
    CHECK(headstock.axes[0].stop_rad_s2.value_or(0.0) == doctest::Approx(Angle::deg(60.0).rad()));
    CHECK_FALSE(headstock.axes[0].torque_peak_nm.has_value());

    const auto inclined = read({"inclined",
                                centre + " between=\"45 deg\" floor-clearance=\"50 mm\"",
                                axis("tilt") + axis("rotate", " torque-peak=\"9 kN m\"")});
    CHECK(inclined.between.deg() == doctest::Approx(45.0));
    CHECK(inclined.floor_clearance_mm.value_or(0.0) == 50.0);
    CHECK(inclined.axes[1].torque_peak_nm.value_or(0.0) == 9000.0);
    CHECK_FALSE(inclined.margin.has_value());

    const auto arm = read({"roll-arm", centre, axis("rotate") + axis("roll")});
    REQUIRE(arm.axes.size() == 2);
    CHECK(arm.axes[0].name == "roll");  // in the order of the chain, not of the file

    const auto changer = read({"station-changer",
                               centre + " exchange-centre=\"-2 0 0 m\"",
                               axis("exchange") + axis("turn")});
    CHECK(changer.exchange_centre == Vec3(-2000.0, 0.0, 0.0));
    CHECK(cell::is_exchange(changer, 0));

    const auto stated =
        read({"tilt-rotate",
              "",
              axis("tilt", " along=\"1 0 0\" at=\"0 0 1 m\"") + axis("rotate", lined)});
    CHECK((cell::axis_line(stated, 1).along - Vec3(0.0, 0.6, 0.8)).norm() < 1e-12);
    CHECK(stated.tilt_centre == Vec3(1000.0, 2000.0, 3000.0));
  }

  TEST_CASE("given a mistake about a kind, one finding says so") {
    struct Row {
      Written written;
      const char* codes;
    };
    const std::string both = axis("exchange") + axis("turn");
    const Row rows[] = {
        {{"headstock", centre, axis("tilt")}, "read.positioner.axes read.word.unknown"},
        {{"roll-arm", centre, axis("roll")}, "read.positioner.axes"},
        {{"roll-arm", centre, axis("roll") + axis("rotate") + axis("roll")},
         "read.positioner.axes"},
        {{"headstock", "", axis("turn")}, "read.attribute.missing"},
        {{"headstock", centre, axis("turn", lined)}, "read.axis.line"},
        {{"headstock", centre + " between=\"45 deg\"", axis("turn")}, "read.attribute.unknown"},
        {{"inclined", centre + " between=\"180 deg\"", axis("tilt") + axis("rotate")},
         "read.value.out_of_range"},
        {{"tilt-rotate", "", axis("tilt", lined) + axis("rotate", lined)}, "read.axis.parallel"},
        {{"tilt-rotate",
          "",
          axis("tilt", lined) + axis("rotate", " along=\"0 -3 -4\" at=\"0 0 0 m\"")},
         "read.axis.parallel"},
        {{"station-changer", centre, both}, "read.attribute.missing"},
        {{"station-changer",
          centre + " exchange-centre=\"-2 0 0 m\"",
          axis("exchange", lined) + axis("turn")},
         "read.axis.line"},
        {{"station-changer",
          centre + " exchange-centre=\"-2 0 0 m\"",
          std::string("<axis name=\"exchange\" min=\"0 deg\" max=\"170 deg\"") + plate + "/>" +
              axis("turn")},
         "read.axis.exchange"},
        {{"station-changer",
          centre + " exchange-centre=\"-2 0 0 m\"",
          std::string("<axis name=\"exchange\" min=\"10 deg\" max=\"200 deg\"") + plate + "/>" +
              axis("turn")},
         "read.axis.exchange"},
        {{"headstock", centre, axis("turn") + "<tailstock span=\"0 m\" load-max=\"1 t\"/>"},
         "read.value.out_of_range"},
        {{"headstock", centre, axis("turn") + "<tailstock load-max=\"1 t\"/>"},
         "read.attribute.missing"},
        {{"roll-arm",
          centre,
          axis("roll") + axis("rotate") + "<tailstock span=\"1 m\" load-max=\"1 t\"/>"},
         "read.positioner.tailstock"},
    };
    for (const Row& row : rows) {
      INFO(row.written.kind << ' ' << row.written.attributes << ' ' << row.written.children);
      CHECK(codes_of(row.written) == row.codes);
    }
  }

  TEST_CASE("given those files, xmllint finds them valid by cell.xsd, and a false kind not") {
    const auto valid = [](const Written& written) {
      const TemporaryFolder folder;
      put(folder.path() / "cell.xml", cell_of(written));
      const std::string command = "xmllint --noout --nonet --schema '" +
                                  (repository() / "docs/schemas/cell.xsd").string() + "' '" +
                                  (folder.path() / "cell.xml").string() + "' >/dev/null 2>&1";
      return std::system(command.c_str()) == 0;
    };
    CHECK(valid({"headstock",
                 centre + " mass-uncertainty=\"5 %\" centre-uncertainty=\"20 mm\"",
                 axis("turn", " jerk=\"40 deg/s3\" stop=\"60 deg/s2\" torque-peak=\"9 kN m\"") +
                     "<tailstock span=\"3 m\" load-max=\"1500 kg\"/>"}));
    CHECK(valid({"station-changer",
                 centre + " exchange-centre=\"-2 0 0 m\" rim-speed-max=\"1 m/s\"",
                 axis("exchange") + axis("turn")}));
    CHECK(valid({"inclined",
                 "floor-clearance=\"50 mm\"",
                 axis("tilt", " along=\"1 0 0\" at=\"0 0 1 m\"") + axis("rotate", lined)}));
    CHECK(valid({"roll-arm", centre, axis("roll") + axis("rotate")}));
    CHECK_FALSE(valid({"ferris", centre, axis("roll") + axis("rotate")}));
    CHECK_FALSE(valid({"headstock", centre + " mass-uncertainty=\"5 kg\"", axis("turn")}));
  }

  TEST_CASE("given the body of a torch, it is read whole, and half of one is refused") {
    const auto read_with = [](const std::string& torch, planner::Inputs* inputs) {
      const TemporaryFolder folder;
      for (const char* file : {"tee.xml", "library/standards.xml"}) {
        put(folder.path() / file, got(repository() / "tests/good" / file));
      }
      std::string cell = got(repository() / "tests/good/cells/table.xml");
      const std::size_t end = cell.find("/>", cell.find("<torch"));
      put(folder.path() / "cells/table.xml", cell.insert(end, torch));
      try {
        planner::Inputs read = io::read_inputs(folder.path() / "tee.xml");
        if (inputs != nullptr) *inputs = std::move(read);
      } catch (const base::InputError& error) {
        return error.findings().front().code;
      }
      return std::string();
    };
    planner::Inputs inputs;
    CHECK(read_with("", &inputs) == "");
    CHECK(!inputs.cell->torch.body);
    const std::string whole =
        " tip-to-bend=\"10 cm\" bend=\"35 deg\" body-length=\"250 mm\" body-diameter=\"2 in\"";
    REQUIRE(read_with(whole, &inputs) == "");
    REQUIRE(inputs.cell->torch.body.has_value());
    // closed-form: as written; an inch is 25.4 mm (NIST SP 811 B.8).
    CHECK(inputs.cell->torch.body->tip_to_bend_mm == doctest::Approx(100.0));
    CHECK(inputs.cell->torch.body->bend.deg() == doctest::Approx(35.0));
    CHECK(inputs.cell->torch.body->length_mm == doctest::Approx(250.0));
    CHECK(inputs.cell->torch.body->diameter_mm == doctest::Approx(50.8));
    CHECK(read_with(" bend=\"35 deg\"", nullptr) == "read.torch.body");
    CHECK(read_with(" tip-to-bend=\"10 cm\" bend=\"35 deg\" body-length=\"250 mm\"", nullptr) ==
          "read.torch.body");
    CHECK(read_with(" bend=\"95 deg\" tip-to-bend=\"10 cm\" body-length=\"1 mm\" "
                    "body-diameter=\"2 in\"",
                    nullptr) == "read.value.out_of_range");
  }
}

}  // namespace seamturn::tests

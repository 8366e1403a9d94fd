// SPDX-License-Identifier: MIT
// Positioners, stances and turns in plan.xml. Expected values: law, what the plan holds.
#include "planner/planned_demos.hpp"
#include "sample_plan.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/io/plan_xml.hpp"
#include "xml_check.hpp"

namespace seamturn::tests {

using base::Angle;
using cell::PositionerKind;
using geom::Vec3;

namespace {

/// From the tag that begins so to the end of its element.
std::string element(const std::string& xml, const std::string& begins, const std::string& ends) {
  const std::size_t from = xml.find(begins);
  REQUIRE(from != std::string::npos);
  return xml.substr(from, xml.find(ends, from) - from);
}

void holds(const std::string& text, const std::vector<std::string>& pieces) {
  for (const std::string& piece : pieces) {
    INFO(piece, " in ", text);
    CHECK(text.find(piece) != std::string::npos);
  }
}

/// Every value of an attribute, in order.
std::vector<std::string> values_of(const std::string& xml, const std::string& name) {
  std::vector<std::string> values;
  const std::string before = " " + name + "=\"";
  for (std::size_t at = xml.find(before); at != std::string::npos; at = xml.find(before, at + 1)) {
    const std::size_t from = at + before.size();
    values.push_back(xml.substr(from, xml.find('"', from) - from));
  }
  return values;
}

std::vector<double> numbers_of(const std::string& xml, const std::string& name) {
  std::vector<double> numbers;
  for (const std::string& value : values_of(xml, name)) numbers.push_back(std::stod(value));
  return numbers;
}

/// The sample on another positioner, every number of it stated.
plan::Plan sample_on(PositionerKind kind) {
  plan::Plan plan = sample_plan();
  cell::Positioner& positioner = plan.cell->positioner;
  positioner.kind = kind;
  positioner.tilt_centre = Vec3(10.0, 20.0, 900.0);
  positioner.exchange_centre = Vec3(-2000.0, 0.0, 7.0);
  positioner.between = Angle::deg(37.0);
  positioner.overhang_mm = 150.0;
  positioner.tailstock = cell::Tailstock{3000.0, 1500.0};
  positioner.margin = cell::LoadMargin{0.0625, 12.5};
  positioner.rim_speed_max_mm_s = 512.0;
  positioner.floor_clearance_mm = 111.0;
  cell::Axis& last = positioner.axes.back();
  last.jerk_rad_s3 = Angle::deg(40.0).rad();
  last.stop_rad_s2 = Angle::deg(60.0).rad();
  last.torque_peak_nm = 7777.0;
  plan.cell->torch.nozzle_recess_mm = 3.5;
  plan.cell->torch.body = cell::TorchBody{101.0, Angle::deg(36.0), 251.0, 51.0};
  plan.cell->return_path = cell::ReturnPath{true, 630.0};
  return plan;
}

}  // namespace

TEST_SUITE("io/plan_xml_turns") {
  TEST_CASE("given every kind of positioner, all the cell states of it stands in the plan") {
    for (const PositionerKind kind : {PositionerKind::tilt_rotate,
                                      PositionerKind::headstock,
                                      PositionerKind::inclined,
                                      PositionerKind::roll_arm,
                                      PositionerKind::station_changer}) {
      const std::string xml = io::plan_xml(sample_on(kind));
      CAPTURE(std::string(cell::positioner_kind_name(kind)));
      CHECK(schema_verdict("plan.xsd", xml, "plan_xml_turns") == "");
      const std::string cell = element(xml, "<cell ", "</cell>");
      holds(cell,
            {"kind=\"" + std::string(cell::positioner_kind_name(kind)) + "\"",
             "<tailstock span_mm=\"3000\" load_max_kg=\"1500\"",
             "<load-margin mass_ratio=\"0.0625\" centre_mm=\"12.5\"",
             "rim_speed_max_mm_s=\"512\"",
             "floor_clearance_mm=\"111\"",
             "torque_peak_nm=\"7777\"",
             "nozzle_recess_mm=\"3.5\" tip_to_bend_mm=\"101\"",
             "body_length_mm=\"251\" body_diameter_mm=\"51\"",
             "<return-path on_rotating_side=\"true\" current_max_a=\"630\""});
      CHECK(numbers_of(cell, "jerk_deg_s3").at(0) == doctest::Approx(40.0));
      CHECK(numbers_of(cell, "stop_deg_s2").at(0) == doctest::Approx(60.0));
      CHECK(numbers_of(cell, "bend_deg").at(0) == doctest::Approx(36.0));
      CHECK(count_of(cell, "between_deg=") == (kind == PositionerKind::inclined ? 1 : 0));
      CHECK(count_of(cell, "<exchange-centre x_mm=\"-2000\"") ==
            (kind == PositionerKind::station_changer ? 1 : 0));
    }
  }

  TEST_CASE("given a cell that leaves numbers out, the plan says nothing of them") {
    const std::string cell = element(io::plan_xml(sample_plan()), "<cell ", "</cell>");
    for (const char* silent : {"jerk_",
                               "stop_deg",
                               "peak",
                               "tailstock",
                               "margin",
                               "rim_",
                               "clearance",
                               "between",
                               "exchange",
                               "recess",
                               "return-path"}) {
      INFO(silent);
      CHECK(count_of(cell, silent) == 0);
    }
  }

  TEST_CASE("given a chain, the line of every axis and the faceplate stand in it, closed-form") {
    plan::Plan plan = sample_on(PositionerKind::inclined);
    std::string cell = element(io::plan_xml(plan), "<cell ", "</cell>");
    CHECK(count_of(cell, "<line stated=\"false\"") == 2);
    // +Y, and the second at 37 degrees to it towards +Z; 150 mm along it from the centre.
    const double c = std::cos(Angle::deg(37.0).rad()), s = std::sin(Angle::deg(37.0).rad());
    const std::string faceplate = element(cell, "<faceplate", "</faceplate>");
    CHECK(numbers_of(faceplate, "y_mm").at(0) == doctest::Approx(20.0 + 150.0 * c));
    CHECK(numbers_of(faceplate, "z_mm").at(0) == doctest::Approx(900.0 + 150.0 * s));
    const std::string along = cell.substr(cell.rfind("<along"));
    CHECK(numbers_of(along, "y").at(0) == doctest::Approx(c));
    CHECK(numbers_of(along, "z").at(0) == doctest::Approx(s));
    plan.cell->positioner.axes[0].line = cell::AxisLine{Vec3(0.0, 0.6, 0.8), Vec3(1.0, 2.0, 3.0)};
    cell = element(io::plan_xml(plan), "<cell ", "</cell>");
    CHECK(count_of(cell, "<line stated=\"true\"") == 1);
    CHECK(cell.find("<along x=\"0\" y=\"0.6\" z=\"0.8\"") != std::string::npos);
  }

  TEST_CASE("given turns of the sample, each says its kind, ends and what the axes hold") {
    const std::string xml = io::plan_xml(sample_plan());
    const std::string turns = element(xml, "<turns>", "</turns>");
    holds(turns,
          {"<turn kind=\"turn\" to=\"S01\" lowest_mm=\"600.75\" lowest_of=\"tube\"",
           "<axis name=\"tilt\" torque_nm=\"11.1\" moving_nm=\"12.3\"",
           "<turn kind=\"turn\" from=\"S01\" to=\"S02\"",
           "<halt>",
           "<axis name=\"rotate\" angle_deg=\"-30.5\"",
           "<axis name=\"rotate\" torque_nm=\"0\" moving_nm=\"4\" stop_nm=\"5\"",
           "<turn kind=\"rolling\" from=\"S02\" to=\"S02\""});
    CHECK(count_of(turns, "stop_nm") == 4);
    CHECK(count_of(turns, "<halt>") == 2);
    CHECK(count_of(turns, "stage=") == 0);
  }

  TEST_CASE(
      "refuses in the schema a turn to a stance the plan has not, because no way leads there") {
    std::string xml = io::plan_xml(sample_plan());
    const std::string good = "from=\"S01\" to=\"S02\"";
    xml.replace(xml.find(good), good.size(), "from=\"S01\" to=\"S09\"");
    CHECK(schema_verdict("plan.xsd", xml, "plan_xml_turns") != "");
  }

  TEST_CASE(
      "for every demo, law: each turn's numbers are read back exactly as the plan holds them") {
    for (const Planned& planned : plans()) {
      CAPTURE(planned.file);
      const std::string xml = io::plan_xml(planned.plan);
      CHECK(schema_verdict("plan.xsd", xml, "plan_xml_turns") == "");
      const std::string turns = element(xml, "<turns>", "</turns>");
      std::vector<double> torque_nm, moving_nm, stop_nm, lowest_mm;
      std::vector<std::string> stages, from, to;
      for (const plan::PlannedTurn& turn : planned.plan.turns) {
        torque_nm.insert(torque_nm.end(), turn.torque_nm.begin(), turn.torque_nm.end());
        moving_nm.insert(moving_nm.end(), turn.moving_nm.begin(), turn.moving_nm.end());
        stop_nm.insert(stop_nm.end(), turn.stop_nm.begin(), turn.stop_nm.end());
        lowest_mm.push_back(turn.lowest_mm);
        const std::string& stage = planned.plan.stages[turn.stage].id;
        if (!stage.empty()) stages.push_back(stage);
        if (!turn.from.empty()) from.push_back(turn.from);
        if (!turn.to.empty()) to.push_back(turn.to);
      }
      REQUIRE(torque_nm.size() >= 3);
      CHECK(numbers_of(turns, "torque_nm") == torque_nm);
      CHECK(numbers_of(turns, "moving_nm") == moving_nm);
      CHECK(numbers_of(turns, "stop_nm") == stop_nm);
      CHECK(numbers_of(turns, "lowest_mm") == lowest_mm);
      CHECK(values_of(turns, "stage") == stages);
      CHECK(values_of(turns, "from") == from);
      CHECK(values_of(turns, "to") == to);
    }
  }

  TEST_CASE("for a build in stages, law: every event of the clock names its stage") {
    const std::string xml = io::plan_xml(hub().plan);
    const std::string clock = element(xml, "<timeline ", "</timeline>");
    std::vector<std::string> stages;
    for (const plan::PlannedEvent& event : hub().plan.timeline) {
      stages.push_back(hub().plan.stages[event.stage].id);
    }
    REQUIRE(stages.size() > 100);
    CHECK(values_of(clock, "stage") == stages);
  }
}

}  // namespace seamturn::tests

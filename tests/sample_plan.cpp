// SPDX-License-Identifier: MIT
#include "sample_plan.hpp"

namespace seamturn::tests {

namespace {

using base::Angle;
using geom::Vec3;

joint::Weldment sample_weldment() {
  joint::Weldment weldment;
  weldment.title = sample_title;
  weldment.revision = "A";
  weldment.date = "2026-11-02";
  weldment.author = "demo";
  weldment.wire = "W1";
  weldment.libraries = {"library/a.xml"};
  weldment.cell = "cells/b.xml";
  weldment.batch.parts = 3;
  weldment.invented = true;
  joint::Member plate;
  plate.id = "base";
  plate.shape = joint::Plate{400.0, 300.0, 25.0};
  plate.steel = "X111";
  plate.analysis = material::Composition{};
  plate.analysis->c = 0.111;
  joint::Member tube = plate;
  tube.id = "tube";
  tube.shape = joint::Tube{120.0, 10.0, 80.0};
  tube.X_JM.translation = Vec3(200.0, 150.0, 25.0);
  tube.analysis.reset();
  joint::Member ring = tube;
  ring.id = "ring";
  ring.shape = joint::Ring{200.0, 121.0, 12.0};
  weldment.members = {plate, tube, ring};
  joint::Setup setup;
  setup.id = "table";
  setup.solids.push_back({"fixture", 11.0, Vec3::Zero(), std::nullopt});
  weldment.setups = {setup};
  return weldment;
}

joint::Seam line_seam(const std::string& id, double y_mm) {
  joint::Seam seam;
  seam.id = id;
  seam.joint = "J1";
  seam.path = geom::LinePath{Vec3(10.0, y_mm, 25.0), Vec3(390.0, y_mm, 25.0)};
  seam.length_mm = 380.0;
  seam.between_walls = Angle::deg(90.0);
  return seam;
}

std::vector<joint::Joint> sample_joints() {
  joint::Joint tee;
  tee.id = "J1";
  tee.member_1 = "base";
  tee.member_2 = "tube";
  tee.preparation = joint::Fillet{7.5, 7.5};
  tee.thickness_mm = 10.0;
  tee.purpose = "holds & <carries>";
  tee.seams = {line_seam("J1.a", 157.5), line_seam("J1.b", 142.5)};
  joint::Joint ring = tee;
  ring.id = "J2";
  ring.after = {"J1"};
  ring.preparation = joint::single_bevel({2.0, 1.0}, Angle::deg(50.0));
  ring.root = joint::RootDecision::steel_backing;
  joint::Seam circle = line_seam("J2", 0.0);
  circle.joint = "J2";
  circle.path = geom::CirclePath{Vec3(200.0, 150.0, 25.0), Vec3::UnitZ(), Vec3::UnitX(), 60.0};
  ring.seams = {circle};
  joint::Joint butt = tee;
  butt.id = "J3";
  butt.type = joint::JointType::butt;
  butt.preparation = joint::single_v({3.0, 2.0}, Angle::deg(60.0));
  joint::Seam run = line_seam("J3", 0.0);
  run.joint = "J3";
  run.path.reset();
  butt.seams = {run};
  return {tee, ring, butt};
}

plan::PlannedPass sample_pass(int number, const std::string& settings) {
  plan::PlannedPass planned;
  planned.pass.number = number;
  planned.pass.role = number == 1 ? process::PassRole::root : process::PassRole::cap;
  planned.pass.layer = number;
  planned.pass.bead = 1;
  planned.pass.area_mm2 = 11.1 * number;
  planned.pass.centre = {0.5, 2.5};
  planned.pass.aim = {0.0, 1.5};
  planned.pass.work_angle = Angle::deg(-7.0);
  planned.pass.settings = settings;
  planned.pass.feed_mm_s = 111.0;
  planned.pass.voltage_v = 22.2;
  planned.pass.current_a = 222.0;
  planned.pass.travel_mm_s = 7.7;
  planned.pass.weave_width_mm = number == 2 ? 3.3 : 0.0;
  planned.pass.gas_flow_l_min = 15.5;
  planned.pass.tip_distance_mm = 16.5;
  planned.pass.push = Angle::deg(11.0);
  planned.pass.arc_time_s = 50.0;
  planned.pass.arc_energy_kj_mm = 0.711;
  planned.pass.heat_input_kj_mm = 0.611;
  planned.pass.limited_by = number == 2 ? "limit-7" : "";
  planned.t85_s = 5.5 * number;
  planned.t85_long_s = 8.8 * number;
  return planned;
}

void place(plan::PlannedPass& pass, int stance, double start_s, int points) {
  pass.stance = stance;
  pass.start_s = start_s;
  pass.end_s = start_s + 50.0;
  for (int i = 0; i < points; ++i) {
    const reach::Arc arc = i == 0            ? reach::Arc::on
                           : i == points - 1 ? reach::Arc::off
                                             : reach::Arc::burning;
    pass.points.push_back(
        {Vec3(10.0 + 20.0 * i, 157.5, 25.0), Vec3(0.0, -0.6, -0.8), Vec3(1.0, 0.0, 0.0), arc});
  }
}

plan::PlannedSeam sample_seam(const std::string& id,
                              const std::string& joint,
                              const std::string& procedure) {
  plan::PlannedSeam seam;
  seam.id = id;
  seam.joint = joint;
  seam.drawn = id;
  seam.procedure = procedure;
  seam.length_mm = 380.0;
  seam.welded_mm = 380.0;
  seam.metal_kg = 0.123;
  seam.stack.layers = 2;
  seam.stack.arc_time_s = 100.0;
  seam.stack.heat_input_min_kj_mm = 0.5;
  seam.stack.heat_input_max_kj_mm = 0.611;
  seam.section.area_mm2 = 33.3;
  seam.section.throat_mm = 5.3;
  seam.section.outline = {{0.0, 0.0}, {5.0, 5.0}, {-5.0, 5.0}};
  seam.passes = {sample_pass(1, "row-1"), sample_pass(2, "row-2")};
  return seam;
}

plan::PlannedJoint sample_planned_joint(const std::string& id) {
  plan::PlannedJoint planned;
  planned.id = id;
  planned.steel_1 = "X111";
  planned.steel_2 = "X111";
  planned.heat.cet_plate = 0.321;
  planned.heat.preheat_c = 77.0;
  planned.heat.needs_heating = true;
  planned.heat.preheat_basis = "stated in the test";
  planned.heat.interpass_max_c = 222.0;
  planned.heat.interpass_basis = "stated in the test too";
  planned.heat.hydrogen_ml_100g = 5.0;
  planned.heat.paths = {{"base", 25.0}, {"base", 25.0}, {"web", 12.5}};
  planned.heat.combined_thickness_mm = 62.5;
  planned.heat.combined_text = "25 + 25 + 12.5 = 62.5 mm";
  planned.heat.answers = {{"cet", 71.5, "72 degC", base::Status::from_memory, true},
                          {"table-c1", {}, "no preheat", base::Status::verified, false}};
  planned.heat.own_preheat_c = 71.5;
  planned.heat.neighbour = "J9";
  planned.heat.measure_distance_mm = 50.0;
  planned.heat.where_to_measure = "measure 50 mm away";
  planned.heat.zone_width_mm = 75.0;
  planned.heat.soak_s = 120.0;
  planned.heat.window = procedure::HeatWindow{
      6.0, 24.0, "the maker", base::Status::proposed, true, true, 0.75, 2.25, {}};
  planned.aftercare.hold = {16.0, false, "size > 12 mm", "S235 to S420", {}};
  planned.aftercare.hold_size_mm = 12.5;
  planned.aftercare.soak = heat::hydrogen_soak(25.0);
  planned.aftercare.keep = cooling::Keep{300.0, 1500.0};
  planned.aftercare.hardness =
      plan::HardnessEstimate{"web", 5.5, {331.0, 345.0, 352.0, 331.0, 352.0, {}}};
  planned.aftercare.tearing =
      plan::TearingCheck{"base",
                         "penetration",
                         {6.0, 5.0, 6.0, 3.0, 0.0, 20.0, heat::ZClass::z15, {}},
                         heat::ZClass::z25,
                         heat::TearingVerdict::met};
  planned.aftercare.later =
      plan::LaterHeating{"S355J2", {575.0, "practice", base::Status::from_memory}};
  return planned;
}

void put_joints(plan::Plan& plan) {
  plan::PlannedJoint tee = sample_planned_joint("J1");
  tee.seams = {sample_seam("J1.a", "J1", "P01"), sample_seam("J1.b", "J1", "P01")};
  plan::PlannedJoint ring = sample_planned_joint("J2");
  ring.seams = {sample_seam("J2", "J2", "P02")};
  plan::PlannedJoint butt = sample_planned_joint("J3");
  butt.seams = {sample_seam("J3", "J3", "P03")};
  butt.seams[0].passes.pop_back();
  butt.heat.cev_plate = 0.5;
  place(tee.seams[0].passes[0], 0, 10.0, 2);
  place(tee.seams[0].passes[1], 0, 130.0, 2);
  place(tee.seams[1].passes[0], 0, 70.0, 2);
  place(tee.seams[1].passes[1], 0, 330.0, 2);
  place(ring.seams[0].passes[0], 1, 200.0, 13);
  place(ring.seams[0].passes[1], 1, 260.0, 13);
  ring.seams[0].passes[0].roll = Angle::deg(-360.0);
  for (plan::PlannedSeam* seam : {&tee.seams[0], &tee.seams[1], &ring.seams[0]}) {
    seam->turned = true;
  }
  ring.seams[0].rolling = true;
  plan.joints = {tee, ring, butt};
  plan.not_turned = {"J3"};
}

void put_procedures(plan::Plan& plan) {
  for (const char* number : {"1", "2", "3"}) {
    procedure::Procedure procedure;
    procedure.id = std::string("P0") + number;
    procedure.joints = {std::string("J") + number};
    procedure.seams = procedure.joints;
    procedure.wire = "W1";
    procedure.gas = "G1";
    procedure.steel_1 = procedure.steel_2 = "X111";
    procedure.group_1 = "1.2";
    procedure.thickness_1_mm = 25.0;
    procedure.thickness_2_mm = 10.0;
    procedure.inspection = {"look at it", "100 % <VT> & \"MT\""};
    procedure.cautions = {{"caution.one", "hot & bright", "the people on site"}};
    procedure.qualification = "preliminary: no record covers it";
    plan.procedures.push_back(procedure);
  }
  plan.procedures[0].seams = {"J1.a", "J1.b"};
  plan.procedures[1].closed = true;
  plan.procedures[1].diameter_mm = 120.0;
  plan.procedures[2].gas.clear();
}

void put_cell(plan::Plan& plan) {
  cell::Cell cell;
  cell.title = "demo";
  cell.invented = true;
  cell.positioner.id = "T1";
  cell::Axis tilt;
  tilt.name = "tilt";
  tilt.min = Angle::deg(-15.0);
  tilt.max = Angle::deg(135.0);
  cell::Axis rotate;
  rotate.name = "rotate";
  rotate.endless = true;
  cell.positioner.axes = {tilt, rotate};
  cell.robot.id = "R1";
  cell.robot.retract_mm = 80.0;
  cell.torch = {"B1", 16.0, std::nullopt, cell::TorchBody{95.0, Angle::deg(22.0), 240.0, 44.0}};
  plan.cell = cell;
  for (const char* id : {"S01", "S02"}) {
    plan::PlannedStance stance;
    stance.id = id;
    stance.setup = "table";
    stance.axis_names = {"tilt", "rotate"};
    stance.stance.axes = {Angle::deg(45.0), Angle::deg(-90.0)};
    stance.torque_nm = {123.0, -4.5};
    stance.visits = 1;
    plan.stances.push_back(stance);
  }
  plan.stances[0].seams = {"J1.a", "J1.b"};
  plan.stances[0].visits = 2;
  plan.stances[1].seams = {"J2"};
  plan.stances[1].stance.rolling = true;
}

void put_clock(plan::Plan& plan) {
  using Kind = timeline::SecondKind;
  plan.timeline = {{Kind::turn, 0.0, 5.0, "S01", "", "", 0},
                   {Kind::touch, 5.0, 8.0, "S01", "J1.a", "", 0},
                   {Kind::air, 8.0, 10.0, "S01", "J1.a", "", 0},
                   {Kind::arc, 10.0, 60.0, "S01", "J1.a", "", 1},
                   {Kind::arc, 70.0, 120.0, "S01", "J1.b", "", 1},
                   {Kind::clean, 120.0, 126.0, "S01", "", "", 0},
                   {Kind::wait, 126.0, 130.0, "S01", "J1.a", "", 0},
                   {Kind::arc, 130.0, 180.0, "S01", "J1.a", "", 2},
                   {Kind::turn, 180.0, 200.0, "S02", "", "", 0},
                   {Kind::arc, 200.0, 250.0, "S02", "J2", "", 1},
                   {Kind::turn, 250.0, 260.0, "S02", "J2", "", 0},
                   {Kind::arc, 260.0, 310.0, "S02", "J2", "", 2},
                   {Kind::turn, 310.0, 330.0, "S01", "", "", 0},
                   {Kind::arc, 330.0, 380.0, "S01", "J1.b", "", 2}};
  plan.turns = {{0, "", "S01", {11.1, -2.2}, {12.3, -3.4}, {}, 600.75, "tube", {}},
                {0,
                 "S01",
                 "S02",
                 {13.13, 0.0},
                 {14.14, 4.0},
                 {15.15, 5.0},
                 500.25,
                 "fixture",
                 {{Angle::deg(15.0), Angle::deg(-30.5)}, {Angle::deg(15.0), Angle()}}},
                {0, "S02", "S02", {1.0, 2.0}, {1.5, 2.5}, {1.75, 2.75}, 500.5, "fixture", {}}};
  plan.cycle_s = 380.0;
  plan.lower_bound_s = 370.0;
  plan.totals = {1520.0, 0.5, 7, 350.0};
  plan.estimate.currency = "EUR";
  plan.estimate.items = {{"wire", 1.1, 1.0, 1.2}, {"cell & <labour>", 2.2, 2.0, 2.4}};
  plan.rates.source = "test";
}

}  // namespace

plan::Plan sample_plan() {
  plan::Plan plan;
  plan.weldment = sample_weldment();
  plan.weldment.joints = sample_joints();
  process::Wire wire;
  wire.id = "W1";
  wire.designation = "G 00 X";
  wire.process = "135";
  wire.diameter_mm = 1.2;
  wire.source = "test";
  plan.wires = {wire};
  plan.gases = {{"G1", "X-00", 1.0, base::Status::proposed, "test"}};
  process::LinkedSettings row;
  row.id = "row-1";
  row.process = "135";
  row.wire = "W1";
  row.gas = "G1";
  row.positions = {process::WeldPosition::pa, process::WeldPosition::pb};
  row.travel_min_mm_s = 5.0;
  row.travel_max_mm_s = 10.0;
  row.transfer = "spray";
  row.source = "test";
  plan.settings = {row};
  material::Steel steel;
  steel.designation = "X111";
  steel.standard = "ZZ 1";
  steel.interpass_max_c = 222.0;
  steel.t85 = material::CoolingWindow{11.0, 22.0, "test", base::Status::proposed};
  steel.later_heating_max = material::StatedTemperature{555.0, "test", base::Status::proposed};
  steel.aws_category = material::AwsCategory{"A/B", "test", base::Status::from_memory};
  steel.bands = {
      {16.0, 300.0, {.c = 0.2}, false, true, 0.45, base::Status::proposed, "test"},
      {40.0, std::nullopt, {.mn = 1.6}, true, false, std::nullopt, base::Status::proposed, "test"}};
  plan.steels = {steel};
  put_joints(plan);
  plan.joints[0].seams[0].passes[0].headings = reach::Headings{Angle::deg(15.0), Angle::deg(-30.5)};
  plan.joints[0].seams[1].passes[0].torch_meets = "rib & \"bar\"";
  put_procedures(plan);
  put_cell(plan);
  put_clock(plan);
  plan.cautions = {{"caution.one", "hot & bright", "the people on site"}};
  plan.findings = {{base::Severity::warning, "x.y", "a < b & \"c\"", {"f.xml", 3, 4}, "  <a b>"}};
  return plan;
}

}  // namespace seamturn::tests

// SPDX-License-Identifier: MIT
// Stances that serve several seams, beads off nominal, leads of rolled rings.
#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "planned_demos.hpp"
#include "planner/detail_joints.hpp"
#include "planner/detail_stages.hpp"
#include "planner/detail_stances.hpp"
#include "seamturn/pass/caps.hpp"
#include "seamturn/turn/stance.hpp"

namespace seamturn::tests {

namespace {

using geom::Angle;
using geom::Vec3;
using planner::detail::Placement;

/// Joints and stances of a file's last stage in the cell, kept together: they point at one another.
struct PoolOf {
  planner::Inputs inputs;
  std::vector<base::Finding> findings;
  std::vector<planner::detail::JointWork> joints;
  std::vector<planner::detail::StageWork> stages;
  std::vector<planner::detail::SeamRef> seams;
  std::vector<planner::detail::StancePool> pools;  ///< per stage; empty where it is away

  explicit PoolOf(planner::Inputs read) : inputs(std::move(read)) {
    joints = planner::detail::work_joints(inputs, findings);
    stages = planner::detail::work_stages(inputs, findings);
    seams = planner::detail::all_seams(joints);
    for (const auto& stage : stages) {
      pools.emplace_back();
      if (stage.setup != nullptr) {
        pools.back() = planner::detail::find_stance_pool(inputs, stage, seams, findings);
      }
    }
  }
  PoolOf(const PoolOf&) = delete;
  PoolOf& operator=(const PoolOf&) = delete;
};

planner::Inputs read_demo(const char* file) {
  return io::read_inputs(repository() / "joints" / file);
}

/// Per stance the seams it serves, each with its least stack time.
using Serving = std::vector<std::map<std::size_t, double>>;
Serving serving(const PoolOf& made, std::size_t stage) {
  const auto& pool = made.pools[stage];
  Serving out(pool.stances.size());
  for (std::size_t i = 0; i < pool.placements.size(); ++i) {
    for (const Placement& placement : pool.placements[i]) {
      const double time_s = planner::detail::stack_time_s(
          made.inputs, *made.seams[i].work, static_cast<std::size_t>(placement.stack));
      const auto at = out[static_cast<std::size_t>(placement.stance)].emplace(i, time_s).first;
      at->second = std::min(at->second, time_s);
    }
  }
  return out;
}

bool serves_as_well(const std::map<std::size_t, double>& other,
                    const std::map<std::size_t, double>& own) {
  return std::all_of(own.begin(), own.end(), [&](const auto& one) {
    const auto found = other.find(one.first);
    return found != other.end() && found->second <= one.second;
  });
}

/// How a line lies in a stance.
position::Classified lie_of(const PoolOf& made,
                            std::size_t stage,
                            std::size_t seam,
                            const Placement& placement) {
  const auto& stance = made.pools[stage].stances[static_cast<std::size_t>(placement.stance)];
  const geom::Mat3 R_WJ = turn::rotation_WD(made.inputs.cell->positioner, stance.axes) *
                          made.stages[stage].setup->X_DJ.rotation;
  const joint::Seam& described = *made.seams[seam].work->seam;
  const Vec3 along = geom::path_station(*described.path, 0.0).tangent;
  const auto found = position::classify(joint::position_family(*made.seams[seam].joint->joint),
                                        R_WJ * (placement.reversed ? Vec3(-along) : along),
                                        R_WJ * described.face,
                                        Vec3::UnitZ());
  REQUIRE(found.has_value());
  return *found;
}

/// The same with other beads at the edge of the tolerance.
planner::Inputs with_bead_at_edge(planner::Inputs inputs, double ratio) {
  for (position::WorkingTolerance& row : inputs.library.tolerances) row.bead_at_edge_ratio = ratio;
  return inputs;
}

constexpr const char* files[] = {"grab_hub.xml", "boom_foot.xml", "bracket.xml"};

}  // namespace

TEST_SUITE("planner/shared_stances") {
  TEST_CASE("for every demo, law: no stance kept has another that serves all its seams as well") {
    for (const char* file : files) {
      const PoolOf made(read_demo(file));
      for (std::size_t stage = 0; stage < made.stages.size(); ++stage) {
        const auto& pool = made.pools[stage];
        const std::set<int> of_operations(pool.of_operations.begin(), pool.of_operations.end());
        const Serving serves = serving(made, stage);
        for (std::size_t a = 0; a < serves.size(); ++a) {
          if (of_operations.count(static_cast<int>(a)) > 0) continue;
          INFO(file, " stage ", stage, " stance ", a);
          CHECK_FALSE(serves[a].empty());
          for (std::size_t b = 0; b < serves.size(); ++b) {
            CHECK((a == b || !serves_as_well(serves[b], serves[a])));
          }
        }
      }
    }
  }

  TEST_CASE("for every demo, law: every line is held as its tolerance, role and bead allow") {
    std::size_t off_nominal = 0;
    for (const char* file : files) {
      const PoolOf made(read_demo(file));
      for (std::size_t stage = 0; stage < made.stages.size(); ++stage) {
        for (std::size_t i = 0; i < made.seams.size(); ++i) {
          const auto& ref = made.seams[i];
          if (!std::holds_alternative<geom::LinePath>(*ref.work->seam->path)) continue;
          const Angle pb_bank = geom::angle_between(ref.work->seam->face, ref.work->seam->wall_1);
          if (made.pools[stage].placements.empty()) continue;
          for (const Placement& placement : made.pools[stage].placements[i]) {
            const auto& choice = ref.work->stacks[static_cast<std::size_t>(placement.stack)];
            const auto lie = lie_of(made, stage, i, placement);
            INFO(file, " ", ref.work->seam->id);
            CHECK(lie.iso == choice.position);
            if (placement.strain_ratio > 0.01) ++off_nominal;
            for (const pass::Pass& pass : choice.stack.passes) {
              const double cap_mm2 =
                  pass::find_caps(
                      made.inputs.library.bead_limits,
                      {planner::detail::bead_family(*ref.joint->joint), choice.position, pass.role})
                      .area_mm2.value;
              // The demo rows hold for every role: 2 down, 3 up, 8 of bank, 0.9 at the edge.
              const double nominal_deg =
                  choice.position == process::WeldPosition::pb ? pb_bank.deg() : 0.0;
              const double slope_deg = lie.attitude.slope.deg();
              const double bank_off_deg = std::abs(std::abs(lie.attitude.bank.deg()) - nominal_deg);
              CHECK(slope_deg <= 3.0 + 1e-5);
              CHECK(slope_deg >= -2.0 - 1e-5);
              CHECK(bank_off_deg <= 8.0 + 1e-5);
              const double used =
                  std::abs(slope_deg) / (slope_deg < 0.0 ? 2.0 : 3.0) + bank_off_deg / 8.0;
              CHECK(pass.area_mm2 <= cap_mm2 * (1.0 - 0.1 * used) * (1.0 + 2e-6));
            }
          }
        }
      }
    }
    CHECK(off_nominal > 0);
  }

  TEST_CASE("for the hub, law: beads that may be less off nominal never make more stances fit") {
    const auto placed = [](double ratio) {
      const PoolOf made(with_bead_at_edge(read_demo("grab_hub.xml"), ratio));
      std::size_t full = 0;
      for (const auto& pool : made.pools) {
        for (const auto& placements : pool.placements) full += placements.size();
      }
      CHECK(full > 0);
      return full;
    };
    // Without light stacks (share 0 or less at the corner) only full ones near nominal are left.
    CHECK(placed(0.45) <= placed(1.0));
  }

  TEST_CASE("for light stacks, law: beads keep the corner's share and no pass is colder") {
    const PoolOf made(read_demo("grab_hub.xml"));
    std::size_t light = 0;
    for (const auto& ref : made.seams) {
      std::set<process::WeldPosition> full;
      for (const auto& choice : ref.work->stacks) {
        if (full.insert(choice.position).second) continue;
        ++light;
        INFO(ref.work->seam->id);
        CHECK(choice.stack.heat_input_min_kj_mm >= ref.joint->heat.lowest_heat_input_kj_mm - 1e-9);
        double area_mm2 = 0.0;
        for (const pass::Pass& pass : choice.stack.passes) {
          area_mm2 += pass.area_mm2;
          CHECK(pass.area_mm2 <=
                (0.8 + 1e-6) * planner::detail::largest_bead_mm2(
                                   made.inputs, *ref.joint, *ref.work, choice.position, pass.role));
        }
        CHECK(area_mm2 == doctest::Approx(ref.work->section.area_mm2).epsilon(1e-9));
      }
    }
    CHECK(light > 0);
  }

  TEST_CASE("given the shop's rows, PC and PF are not worked in until a row gives leave") {
    const auto positions = [](planner::Inputs inputs) {
      std::set<process::WeldPosition> seen;
      const PoolOf made(std::move(inputs));
      for (const auto& ref : made.seams) {
        for (const auto& choice : ref.work->stacks) seen.insert(choice.position);
      }
      return seen;
    };
    using P = process::WeldPosition;
    planner::Inputs inputs = read_demo("grab_hub.xml");
    CHECK(positions(inputs) == std::set<P>{P::pa, P::pb});
    position::WorkingTolerance leave = inputs.library.tolerances.front();
    leave.position = P::pf;
    inputs.library.tolerances.push_back(leave);
    CHECK(positions(inputs) == std::set<P>{P::pa, P::pb, P::pf});
  }

  TEST_CASE("given leave for PF alone, lines of the bracket are held upright, travel up") {
    planner::Inputs inputs = read_demo("bracket.xml");
    for (position::WorkingTolerance& row : inputs.library.tolerances) {
      row.position = process::WeldPosition::pf;
    }
    const PoolOf made(std::move(inputs));
    std::size_t seen = 0;
    for (std::size_t i = 0; i < made.seams.size(); ++i) {
      if (!std::holds_alternative<geom::LinePath>(*made.seams[i].work->seam->path)) continue;
      for (const Placement& placement : made.pools[0].placements[i]) {
        ++seen;
        CHECK(lie_of(made, 0, i, placement).attitude.slope.deg() >= 88.0 - 1e-5);
      }
    }
    CHECK(seen > 0);
  }

  TEST_CASE("given a role with a row of its own, a stance must suit every role of the stack") {
    planner::Inputs inputs = read_demo("boom_foot.xml");
    const auto placed = [](planner::Inputs of) {
      const PoolOf made(std::move(of));
      std::size_t count = 0;
      double most = 0.0;
      for (const auto& placements : made.pools[0].placements) {
        count += placements.size();
        for (const Placement& one : placements) most = std::max(most, one.strain_ratio);
      }
      return std::pair{count, most};
    };
    const auto before = placed(inputs);
    CHECK(before.first > 0);
    // No row left for roots: nothing of several passes can be laid.
    for (position::WorkingTolerance& row : inputs.library.tolerances) {
      row.roles = {process::PassRole::fill, process::PassRole::cap};
    }
    const auto after = placed(inputs);
    CHECK(after.first < before.first);
  }

  TEST_CASE("for every rolled pass of the hub, law: the arc stands its lead ahead of the top") {
    planner::Inputs inputs = read_demo("grab_hub.xml");
    for (position::RollingLead& row : inputs.library.rolling_leads) {
      if (row.process == "135") row.roles = {process::PassRole::root, process::PassRole::single};
    }
    position::RollingLead later;
    later.process = "135";
    later.lead = Angle::deg(9.0);
    inputs.library.rolling_leads.push_back(later);
    const Plan plan = quick_plan(inputs);
    std::map<double, int> seen;
    for (const Arc& arc : arcs_of(plan)) {
      if (!arc.pass->roll_from) continue;
      const plan::PlannedStance& stance =
          plan.stances.at(static_cast<std::size_t>(arc.pass->stance));
      std::vector<Angle> axes = stance.stance.axes;
      axes.back() = *arc.pass->roll_from;
      const geom::Mat3 R_WJ = turn::rotation_WD(plan.cell->positioner, axes) *
                              plan::setup_of(plan, stance).X_DJ.rotation;
      const joint::Seam& seam = described_seam(plan, arc.seam->id);
      const auto& circle = std::get<geom::CirclePath>(*seam.path);
      const double wanted_deg =
          position::rolling_lead(inputs.library.rolling_leads,
                                 {"135", arc.pass->pass.role, 2.0 * circle.radius_mm})
              .deg();
      const Vec3 axis_W = R_WJ * circle.axis;
      const Vec3 top_W = Vec3::UnitZ() - axis_W.z() * axis_W;
      const Vec3 travel_W = R_WJ * arc.pass->points.front().travel;
      const Vec3 out_W = travel_W.cross(axis_W);
      const double from_top_deg = geom::signed_angle(axis_W, top_W, out_W).deg();
      const bool at_top = std::abs(from_top_deg) < 90.0;
      INFO(seam.id, " pass ", arc.pass->pass.number);
      CHECK((at_top ? from_top_deg : std::remainder(from_top_deg - 180.0, 360.0)) ==
            doctest::Approx(wanted_deg).epsilon(1e-9));
      const double slope_deg = Angle::rad(std::asin(travel_W.z())).deg();
      CHECK((at_top ? slope_deg <= 1e-9 : slope_deg >= -1e-9));
      CHECK(std::abs(slope_deg) <= wanted_deg + 1e-9);
      // law: on a level axis the slope is the lead.
      if (std::abs(axis_W.z()) < 1e-9) {
        CHECK(std::abs(slope_deg) == doctest::Approx(wanted_deg).epsilon(1e-9));
      }
      // All passes of a layer start at one place of the part, where the plan says.
      const Vec3 station = arc.pass->points.front().point - circle.centre;
      const auto layer = static_cast<std::size_t>(arc.pass->pass.layer) - 1;
      const Vec3 start =
          arc.seam->starts.empty()
              ? arc.seam->passes.front().points.front().point
              : geom::path_station(*seam.path, arc.seam->starts.at(layer).start_mm).point;
      const Angle off = geom::signed_angle(circle.axis, start - circle.centre, station);
      CHECK(std::abs(off.deg()) < 1e-6);
      ++seen[wanted_deg];
    }
    CHECK(seen.size() >= 2);
  }

  TEST_CASE("for every pass of a ring, law: its time is its own way round over its tip's speed") {
    std::size_t seen = 0;
    for (const Arc& arc : arcs_of(hub().plan)) {
      const joint::Seam& seam = described_seam(hub().plan, arc.seam->id);
      const auto* circle = std::get_if<geom::CirclePath>(&*seam.path);
      if (circle == nullptr || !arc.pass->roll) continue;
      const Vec3 off = arc.pass->points.front().point - circle->centre;
      const double radius_mm = (off - off.dot(circle->axis) * circle->axis).norm();
      const double time_s = position::rolling_time_s(
          *arc.pass->tip_mm_s, radius_mm, Angle::rad(std::abs(arc.pass->roll->rad())));
      INFO(seam.id, " pass ", arc.pass->pass.number, " at ", radius_mm, " mm");
      CHECK(arc.pass->pass.arc_time_s == doctest::Approx(time_s).epsilon(1e-9));
      CHECK(*arc.pass->end_s - *arc.pass->start_s == doctest::Approx(time_s).epsilon(1e-6));
      if (std::abs(radius_mm - circle->radius_mm) > 0.5) ++seen;
    }
    CHECK(seen > 0);
  }
}

}  // namespace seamturn::tests

// SPDX-License-Identifier: MIT
#include "detail_torch_room.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <map>

#include "detail_obstacles.hpp"
#include "seamturn/base/listed.hpp"
#include "seamturn/plan/lie.hpp"
#include "seamturn/reach/torch_body.hpp"

namespace seamturn::planner::detail {

namespace {

using reach::TorchPose;

constexpr int headings = 24;  // 15 degrees apart
constexpr double apart_deg = 360.0 / headings;

/// 0, +15, -15, +30 ...: from straight behind the travel outwards.
Angle heading_of(int index) {
  const int signed_index = index <= headings / 2 ? index : index - headings;
  return Angle::deg(apart_deg * signed_index);
}

/// How many steps two headings are apart, the short way.
int steps_between(int a, int b) {
  const int apart = std::abs(a - b);
  return std::min(apart, headings - apart);
}

/// A pass where it welds, the torch looked at closely enough.
struct Course {
  std::vector<TorchPose> poses;
  std::vector<int> may_turn;  ///< steps of heading from the pose before; of the first: 0
};

/// Poses of a pass no farther than 40 mm of straight run apart.
Course course_of(const std::vector<TorchPose>& key_poses, bool rolls) {
  constexpr double apart_mm = 40.0;
  Course course;
  for (const TorchPose& pose : key_poses) {
    if (course.poses.empty()) {
      course.poses.push_back(pose);
      course.may_turn.push_back(0);
      continue;
    }
    const TorchPose before = course.poses.back();
    const double turned_deg = geom::angle_between(before.travel, pose.travel).deg();
    const bool is_straight = turned_deg < 0.01;
    const double run_mm = (pose.point - before.point).norm();
    const int legs = is_straight ? std::max(1, static_cast<int>(std::ceil(run_mm / apart_mm))) : 1;
    for (int leg = 1; leg <= legs; ++leg) {
      TorchPose between = pose;
      between.point = before.point + (pose.point - before.point) * leg / legs;
      course.poses.push_back(between);
      // A step beyond the turn of the travel, so that the body may hold its place in the part.
      const bool may_turn = !rolls && !is_straight;
      course.may_turn.push_back(may_turn ? static_cast<int>(turned_deg / apart_deg) + 1 : 0);
    }
  }
  return course;
}

/// The room about one seam for one torch.
class Room {
 public:
  Room(const Obstacles& obstacles, const cell::Torch& torch, double free_mm)
      : obstacles_(obstacles), torch_(torch), free_mm_(free_mm) {}

  /// What the torch meets at a heading; empty: nothing.
  [[nodiscard]] std::string_view met(const TorchPose& pose, int heading) const {
    for (const reach::TorchBall& ball :
         reach::torch_balls(pose, torch_, *torch_.body, heading_of(heading), free_mm_)) {
      const std::string_view met = obstacles_.met_at(ball.centre, ball.radius_mm);
      if (!met.empty()) return met;
    }
    return {};
  }

 private:
  const Obstacles& obstacles_;
  const cell::Torch& torch_;
  double free_mm_;  ///< behind the wire tip: the room of the nozzle in the joint is asked elsewhere
};

struct Found {
  std::optional<reach::Headings> headings;
  std::string meets;  ///< where no heading is left: what most of them meet
};

constexpr double unreached = std::numeric_limits<double>::infinity();
using Costs = std::array<double, headings>;
using CameFrom = std::array<int, headings>;

/// What it costs to have a heading at a pose, by the costs at the pose before: a step of turning
/// counts as two off straight behind. Sets where it came from.
double cost_to(const Costs& before, int may_turn, int to, int& came_from) {
  constexpr double of_turning = 2.0;
  double best = unreached;
  for (int from = 0; from < headings; ++from) {
    const int turned = steps_between(from, to);
    const double here = before[static_cast<std::size_t>(from)] + of_turning * turned;
    if (turned > may_turn || here >= best) continue;
    best = here;
    came_from = from;
  }
  return best + steps_between(to, 0);
}

/// Pre: some heading was met with something.
std::string met_most(const std::map<std::string_view, int>& met) {
  const auto most = std::max_element(
      met.begin(), met.end(), [](const auto& a, const auto& b) { return a.second < b.second; });
  return std::string(most->first);
}

/// The cheapest way through the headings that are free at every pose: near to straight behind the
/// travel, and with little turning. Cost: poses times headings squared, times balls for those
/// asked.
Found find_headings(const Room& room, const Course& course) {
  Costs costs{};
  std::vector<CameFrom> ways;
  for (std::size_t i = 0; i < course.poses.size(); ++i) {
    Costs next;
    next.fill(unreached);
    CameFrom way{};
    std::map<std::string_view, int> met;
    for (int to = 0; to < headings; ++to) {
      const auto index = static_cast<std::size_t>(to);
      const double cost =
          i == 0 ? steps_between(to, 0) : cost_to(costs, course.may_turn[i], to, way[index]);
      if (cost == unreached) continue;
      const std::string_view name = room.met(course.poses[i], to);
      if (name.empty()) {
        next[index] = cost;
      } else {
        ++met[name];
      }
    }
    costs = next;
    ways.push_back(way);
    if (*std::min_element(costs.begin(), costs.end()) == unreached) return {{}, met_most(met)};
  }
  const auto end = static_cast<int>(std::min_element(costs.begin(), costs.end()) - costs.begin());
  int start = end;
  for (std::size_t i = ways.size() - 1; i > 0; --i)
    start = ways[i][static_cast<std::size_t>(start)];
  return {reach::Headings{heading_of(start), heading_of(end)}, {}};
}

/// Poses of a pass as planned, or with other angles of the torch; arcs looked at every 15 degrees.
Course planned_course(const joint::Joint& joint,
                      const joint::Seam& described,
                      const plan::PlannedSeam& seam,
                      const plan::PlannedPass& planned,
                      const pass::Pass& pass) {
  reach::Course course;
  course.reversed = planned.reversed;
  if (geom::is_closed(*described.path)) {
    course.start_mm = plan::start_station_mm(described, planned);
  }
  const auto poses =
      reach::key_poses(joint, described, seam.section, pass, course, Angle::deg(apart_deg));
  return course_of(poses, seam.rolling);
}

/// Behind the wire tip, out of the joint: what is nearer is the nozzle's room between the walls.
double out_of_joint_mm(const plan::PlannedSeam& seam,
                       const pass::Pass& pass,
                       const cell::Torch& torch) {
  constexpr double least_mm = 30.0;
  constexpr double beyond_mm = 10.0;
  return std::max(least_mm, seam.section.height_mm - pass.aim.y_mm + beyond_mm) +
         0.5 * torch.nozzle_diameter_mm;
}

/// Change of the torch's angles that makes room.
struct Lean {
  double work_deg = 0.0;
  double push_deg = 0.0;
};

/// The smallest first; a lean in push counts as one in work.
std::vector<Lean> leans() {
  std::vector<Lean> all;
  for (const double work : {0.0, 5.0, -5.0, 10.0, -10.0, 15.0, -15.0, 20.0, -20.0}) {
    for (const double push : {0.0, 5.0, -5.0, 10.0, -10.0}) all.push_back({work, push});
  }
  std::stable_sort(all.begin(), all.end(), [](const Lean& a, const Lean& b) {
    return std::abs(a.work_deg) + std::abs(a.push_deg) <
           std::abs(b.work_deg) + std::abs(b.push_deg);
  });
  all.erase(all.begin());  // as planned
  return all;
}

/// Passes told together: same seam, same lean.
struct Blocked {
  std::string seam;
  std::string meets;
  std::vector<int> passes;
  std::optional<Lean> lean;
};

std::string signed_text(double deg) {
  return (deg < 0.0 ? "-" : "+") + std::to_string(static_cast<int>(std::abs(deg)));
}

std::string lean_text(const Lean& lean) {
  std::string text;
  if (lean.work_deg != 0.0) text += "work angle " + signed_text(lean.work_deg) + " deg";
  if (lean.push_deg == 0.0) return text;
  return text + (text.empty() ? "" : " and ") + "push " + signed_text(lean.push_deg) + " deg";
}

/// "J1.a passes 1-3, 5 (lug_left)".
std::string passes_text(const Blocked& blocked) {
  return blocked.seam + (blocked.passes.size() == 1 ? " pass " : " passes ") +
         base::listed_runs(blocked.passes) + " (" + blocked.meets + ")";
}

void tell(const Inputs& inputs, const std::vector<Blocked>& blocked, plan::Plan& plan) {
  std::map<std::string, std::vector<std::string>> by_lean;  // "" : no lean helps
  for (const Blocked& one : blocked) {
    by_lean[one.lean ? lean_text(*one.lean) : ""].push_back(passes_text(one));
  }
  for (const auto& [lean, passes] : by_lean) {
    plan.findings.push_back(base::Finding{
        base::Severity::warning,
        "plan.torch.no_room",
        "whichever way its body points, torch " + inputs.cell->torch.id + " meets metal in " +
            base::listed(passes) +
            (lean.empty() ? "; up to 20 deg more or less of work angle and 10 deg of push make no "
                            "room: weld them in an earlier stage, or with another torch"
                          : "; there is room with " + lean + ": try it, and qualify it so"),
        place_of(inputs.weldment, "weldment"),
        {}});
  }
}

/// The seams of one stage.
class StageRoom {
 public:
  StageRoom(const Inputs& inputs, const StageWork& stage)
      : torch_(inputs.cell->torch), obstacles_(stage, inputs.cell) {}

  void check(const joint::Joint& joint, const joint::Seam& described, plan::PlannedSeam& seam) {
    for (plan::PlannedPass& planned : seam.passes) {
      if (planned.stance < 0) continue;
      const Found found = find(joint, described, seam, planned, planned.pass);
      planned.headings = found.headings;
      planned.torch_meets = found.meets;
      if (!found.meets.empty()) note(joint, described, seam, planned);
    }
  }
  [[nodiscard]] const std::vector<Blocked>& blocked() const { return blocked_; }

 private:
  [[nodiscard]] Found find(const joint::Joint& joint,
                           const joint::Seam& described,
                           const plan::PlannedSeam& seam,
                           const plan::PlannedPass& planned,
                           const pass::Pass& pass) const {
    const Room room(obstacles_, torch_, out_of_joint_mm(seam, pass, torch_));
    return find_headings(room, planned_course(joint, described, seam, planned, pass));
  }

  void note(const joint::Joint& joint,
            const joint::Seam& described,
            const plan::PlannedSeam& seam,
            const plan::PlannedPass& planned) {
    std::optional<Lean> freeing;
    for (const Lean& lean : leans()) {
      pass::Pass leant = planned.pass;
      leant.work_angle = leant.work_angle + Angle::deg(lean.work_deg);
      leant.push = leant.push + Angle::deg(lean.push_deg);
      if (!find(joint, described, seam, planned, leant).headings) continue;
      freeing = lean;
      break;
    }
    const auto same = std::find_if(blocked_.begin(), blocked_.end(), [&](const Blocked& one) {
      const bool same_lean = one.lean.has_value() == freeing.has_value() &&
                             (!freeing || lean_text(*one.lean) == lean_text(*freeing));
      return one.seam == seam.id && one.meets == planned.torch_meets && same_lean;
    });
    if (same != blocked_.end()) {
      same->passes.push_back(planned.pass.number);
    } else {
      blocked_.push_back({seam.id, planned.torch_meets, {planned.pass.number}, freeing});
    }
  }

  const cell::Torch& torch_;
  Obstacles obstacles_;
  std::vector<Blocked> blocked_;
};

}  // namespace

void check_torch_room(const Inputs& inputs,
                      const std::vector<StageWork>& stages,
                      plan::Plan& plan) {
  if (!inputs.cell || !inputs.cell->torch.body) return;
  std::vector<Blocked> blocked;
  for (std::size_t k = 0; k < stages.size(); ++k) {
    StageRoom room(inputs, stages[k]);
    for (plan::PlannedJoint& planned : plan.joints) {
      const joint::Joint& joint = *joint::find_joint(inputs.weldment, planned.id);
      if (joint.reach_proved || stage_index(stages, joint) != k) continue;
      for (plan::PlannedSeam& seam : planned.seams) {
        const auto described =
            std::find_if(joint.seams.begin(), joint.seams.end(), [&](const joint::Seam& one) {
              return one.id == seam.id;
            });
        if (described != joint.seams.end() && described->path) room.check(joint, *described, seam);
      }
    }
    blocked.insert(blocked.end(), room.blocked().begin(), room.blocked().end());
  }
  tell(inputs, blocked, plan);
}

}  // namespace seamturn::planner::detail

// SPDX-License-Identifier: MIT
// Every turn of the loaded positioner, judged where it is worst on its way.
#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <set>
#include <utility>

#include "detail_turns.hpp"
#include "seamturn/base/listed.hpp"
#include "seamturn/base/number_text.hpp"

namespace seamturn::planner::detail {

namespace {

using base::Finding;
using base::Severity;
using Axes = std::vector<Angle>;

/// One stage's turns.
class StageTurns {
 public:
  StageTurns(const StageWork& stage, std::size_t index, plan::Plan& plan)
      : stage_(stage),
        index_(index),
        plan_(plan),
        positioner_(slowed(plan.cell->positioner, stage)),
        body_(turning_body(stage)),
        swing_(swing_body(stage)),
        ways_(clear_ways(positioner_, stage)),
        rest_(rest_axes(positioner_)) {}

  void run(bool comes, bool goes) {
    if (comes) exchange();
    std::string at;
    for (const plan::PlannedEvent& event : plan_.timeline) {
      if (event.stage != index_ || event.kind == timeline::SecondKind::hang) continue;
      if (event.stance == at) continue;
      turn(at, event.stance);
      at = event.stance;
    }
    for (const plan::PlannedJoint& joint : plan_.joints) {
      for (const plan::PlannedSeam& seam : joint.seams) roll(seam);
    }
    if (goes) exchange();
    tell_all();
  }

 private:
  [[nodiscard]] Axes axes_of(const std::string& stance) const {
    for (const plan::PlannedStance& planned : plan_.stances) {
      if (planned.id == stance) return planned.stance.axes;
    }
    return rest_;
  }

  static std::string name_of(const std::string& stance) { return stance.empty() ? "rest" : stance; }

  void turn(const std::string& from, const std::string& to) {
    if (!seen_.emplace(from, to).second) return;
    const End end{to, axes_of(to)};
    judge(positioner_,
          {from, axes_of(from)},
          ways_.find(axes_of(from), end.axes).halts,
          end,
          "turn from " + name_of(from) + " to " + name_of(to));
  }

  /// From where the first of a seam's rolled passes starts to where the last ends, or the other
  /// way: all it passes through.
  void roll(const plan::PlannedSeam& seam) {
    if (seam.stage != plan_.stages[index_].id) return;
    bool rolls = false;
    Angle low, high;
    double fastest_rad_s = 0.0;
    int stance = -1;
    for (const plan::PlannedPass& pass : seam.passes) {
      if (!pass.roll || !pass.roll_from || pass.stance < 0) continue;
      const Angle start = *pass.roll_from;
      const Angle end = start + *pass.roll;
      low = std::min(rolls ? std::min(low, start) : start, end);
      high = std::max(rolls ? std::max(high, start) : start, end);
      fastest_rad_s = std::max(fastest_rad_s, std::abs(pass.roll->rad()) / pass.pass.arc_time_s);
      stance = pass.stance;
      rolls = true;
    }
    if (!rolls) return;
    const plan::PlannedStance& held = plan_.stances[static_cast<std::size_t>(stance)];
    cell::Positioner rolling = positioner_;
    rolling.axes.back().endless = false;  // a whole turn is no way of nothing
    Axes from = held.stance.axes, to = held.stance.axes;
    from.back() = low;
    to.back() = high;
    judge(
        rolling, {held.id, from}, {}, {held.id, to}, "rolling seam " + seam.id + " in " + held.id);
    check_rim(seam.id, fastest_rad_s);
  }

  void check_rim(const std::string& seam, double speed_rad_s) {
    if (!positioner_.rim_speed_max_mm_s || stage_.present.empty()) return;
    const double rim_mm = turn::rim_radii_mm(positioner_, swing_).back();
    const double cap_mm_s = *positioner_.rim_speed_max_mm_s;
    if (speed_rad_s * rim_mm <= cap_mm_s * (1.0 + 1e-9)) return;
    keep({Severity::warning,
          "turn.swing.rim_speed",
          stage_.name() + ", rolling seam " + seam + ": the rim, " + base::fixed_text(rim_mm, 0) +
              " mm from axis " + positioner_.axes.back().name + ", goes " +
              base::fixed_text(speed_rad_s * rim_mm, 0) + " mm/s, the cell allows " +
              base::fixed_text(cap_mm_s, 0) +
              " mm/s; hold the part still and let the robot go round, or weld it slower",
          {},
          {}});
  }

  /// The other side comes in: this one goes round with what hangs on it, at rest.
  void exchange() {
    if (!cell::is_exchange(positioner_, 0)) return;
    if (!seen_.emplace("exchange", "").second) return;
    Axes to = rest_;
    const cell::Axis& axis = positioner_.axes.front();
    const bool up = axis.endless || axis.max.deg() >= 180.0 - 1e-6;
    to.front() = Angle::deg(up ? 180.0 : -180.0);
    cell::Positioner turning = positioner_;
    turning.axes.front().endless = false;
    judge(turning, {"", rest_}, {}, {"", to}, "exchange of the stations");
  }

  struct End {
    std::string stance;
    Axes axes;
  };

  /// Leg by leg; of every value the largest counts.
  void judge(const cell::Positioner& positioner,
             const End& from,
             const std::vector<Axes>& halts,
             const End& to,
             const std::string& name) {
    plan::PlannedTurn planned;
    planned.stage = index_;
    planned.from = from.stance;
    planned.to = to.stance;
    planned.halts = halts;
    planned.lowest_mm = std::numeric_limits<double>::infinity();
    const Axes* at = &from.axes;
    for (std::size_t leg = 0; leg <= halts.size(); ++leg) {
      const Axes& next = leg < halts.size() ? halts[leg] : to.axes;
      const std::string number = halts.empty() ? "" : ", leg " + std::to_string(leg + 1);
      judge_leg(positioner, *at, next, stage_.name() + ", " + name + number, planned);
      at = &next;
    }
    if (stage_.present.empty()) planned.lowest_mm = 0.0;
    plan_.turns.push_back(std::move(planned));
  }

  void judge_leg(const cell::Positioner& positioner,
                 const Axes& from,
                 const Axes& to,
                 const std::string& name,
                 plan::PlannedTurn& planned) {
    const turn::TurnPeaks peaks = turn::turn_peaks(positioner, body_, from, to);
    for (std::size_t i = 0; i < peaks.still.size(); ++i) {
      keep_largest(planned.torque_nm, i, peaks.still[i].torque_nm);
      keep_largest(planned.moving_nm, i, peaks.speeding[i].torque_nm);
    }
    const bool stops_known = std::all_of(peaks.stopping.begin(),
                                         peaks.stopping.end(),
                                         [](const auto& stop) { return stop.has_value(); });
    for (std::size_t i = 0; stops_known && i < peaks.stopping.size(); ++i) {
      keep_largest(planned.stop_nm, i, peaks.stopping[i]->torque_nm);
    }
    for (Finding& finding : turn::check_turn_load(positioner, body_, from, to, peaks, name)) {
      keep(std::move(finding));
    }
    if (stage_.present.empty()) return;
    const turn::Lowest lowest = turn::lowest_on_way(positioner, swing_, from, to);
    for (Finding& finding : turn::check_swing(positioner, lowest, name)) keep(std::move(finding));
    if (lowest.height_mm >= planned.lowest_mm) return;
    planned.lowest_mm = lowest.height_mm;
    planned.lowest_of = lowest.of;
  }

  static void keep_largest(std::vector<double>& values, std::size_t index, double value) {
    if (index == values.size()) values.push_back(value);
    if (std::abs(value) > std::abs(values[index])) values[index] = value;
  }

  /// Each code once a stage: the first, and how many more.
  void keep(Finding finding) {
    const auto known = std::find_if(kept_.begin(), kept_.end(), [&](const auto& one) {
      return one.first.code == finding.code;
    });
    if (known == kept_.end()) {
      kept_.push_back({std::move(finding), 0});
    } else {
      ++known->second;
    }
  }

  void tell_all() {
    for (auto& [finding, more] : kept_) {
      if (more > 0) {
        finding.text += "; " + std::to_string(more) + " more of this kind in this stage";
      }
      finding.place = place_of(plan_.weldment, "setup/" + stage_.setup->id);
      plan_.findings.push_back(std::move(finding));
    }
  }

  const StageWork& stage_;
  std::size_t index_;
  plan::Plan& plan_;
  cell::Positioner positioner_;
  joint::Body body_;
  turn::SwingBody swing_;
  turn::ClearWays ways_;
  Axes rest_;
  std::set<std::pair<std::string, std::string>> seen_;
  std::vector<std::pair<Finding, int>> kept_;
};

void note_stops(const Inputs& inputs, plan::Plan& plan) {
  std::vector<std::string> silent;
  for (const cell::Axis& axis : plan.cell->positioner.axes) {
    if (!axis.stop_rad_s2) silent.push_back(axis.name);
  }
  if (silent.empty() || plan.turns.empty()) return;
  plan.findings.push_back({Severity::note,
                           "turn.load.stop_not_judged",
                           "the cell does not say how hard an emergency stop slows axis " +
                               base::listed(silent) +
                               " down: the torque it then has to hold was not judged; add stop= "
                               "from the positioner's papers",
                           place_of(inputs.weldment, "weldment"),
                           {}});
}

}  // namespace

void check_turns(const Inputs& inputs, const std::vector<StageWork>& stages, plan::Plan& plan) {
  std::vector<std::size_t> hung;
  for (std::size_t k = 0; k < stages.size() && k < plan.stages.size(); ++k) {
    const bool something = !stages[k].present.empty();
    if (stages[k].setup != nullptr && plan.stages[k].start_s && something) hung.push_back(k);
  }
  for (const std::size_t k : hung) {
    StageTurns(stages[k], k, plan).run(k == hung.front(), k == hung.back());
  }
  note_stops(inputs, plan);
}

}  // namespace seamturn::planner::detail

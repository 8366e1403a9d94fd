// SPDX-License-Identifier: MIT
// Which way gravity pulls while a stage stands and turns.
#include <algorithm>

#include "detail_tacking.hpp"
#include "detail_turns.hpp"
#include "seamturn/turn/way.hpp"

namespace seamturn::planner::detail {

namespace {

constexpr double step_deg = 10.0;

class Walk {
 public:
  Walk(const plan::Plan& plan, std::size_t stage) : plan_(plan), stage_(stage) {
    setup_ = joint::find_setup(plan.weldment, plan.stages[stage].setup);
    rest_ = at_ = rest_axes(plan.cell->positioner);
    stand("rest");
  }

  void go_to(const std::string& id) {
    if (id == at_id_) return;
    const plan::PlannedStance* stance = find(id);
    const std::string name = "turn to " + (stance == nullptr ? std::string("rest") : id);
    for (const std::vector<Angle>& halt : halts_to(id)) {
      turn_to(halt, name);
      stand(name);
    }
    turn_to(stance == nullptr ? rest_ : stance->stance.axes, name);
    at_id_ = id;
    stand(stance == nullptr ? "rest" : id);
    if (stance != nullptr && stance->stance.rolling) roll(id);
  }

  void add(Attitude attitude) { found_.push_back(std::move(attitude)); }

  [[nodiscard]] std::vector<Attitude> take() { return std::move(found_); }

 private:
  [[nodiscard]] const plan::PlannedStance* find(const std::string& id) const {
    for (const plan::PlannedStance& stance : plan_.stances) {
      if (stance.id == id) return &stance;
    }
    return nullptr;
  }

  /// Where the turn to a stance halts on its way.
  [[nodiscard]] std::vector<std::vector<Angle>> halts_to(const std::string& id) const {
    for (const plan::PlannedTurn& turn : plan_.turns) {
      if (turn.stage == stage_ && turn.from == at_id_ && turn.to == id) return turn.halts;
    }
    return {};
  }

  void stand(const std::string& name) {
    const geom::Mat3 R_WJ = turn::rotation_WD(plan_.cell->positioner, at_) * setup_->X_DJ.rotation;
    found_.push_back({geom::Vec3(-(R_WJ.transpose() * geom::Vec3::UnitZ())), name});
  }

  void turn_to(const std::vector<Angle>& goal, const std::string& name) {
    const turn::Way way(plan_.cell->positioner, at_, goal);
    const int steps = way.steps(Angle::deg(step_deg));
    for (int k = 1; k < steps; ++k) {
      at_ = way.at(static_cast<double>(k) / steps);
      stand(name);
    }
    at_ = goal;
  }

  void roll(const std::string& id) {
    const std::vector<Angle> before = at_;
    for (double deg = step_deg; deg < 360.0; deg += step_deg) {
      at_.back() = before.back() + Angle::deg(deg);
      stand("rolling in " + id);
    }
    at_ = before;
  }

  const plan::Plan& plan_;
  std::size_t stage_;
  const joint::Setup* setup_ = nullptr;
  std::vector<Angle> at_;
  std::vector<Angle> rest_;
  std::string at_id_;
  std::vector<Attitude> found_;
};

}  // namespace

std::vector<Attitude> attitudes_of(const plan::Plan& plan, std::size_t stage) {
  const plan::PlannedStage& held = plan.stages.at(stage);
  if (!plan.cell || held.setup.empty() || !held.start_s) return {};
  Walk walk(plan, stage);
  for (const plan::PlannedHang& hung : plan.hangs) {
    const bool ours = hung.stage == held.id && !hung.off && hung.hang;
    if (ours) walk.add({geom::Vec3(-hung.hang->up_as_hung), "on the hook"});
  }
  for (const plan::PlannedEvent& event : plan.timeline) {
    if (event.stage != stage) continue;
    if (event.kind != timeline::SecondKind::hang) walk.go_to(event.stance);
  }
  return walk.take();
}

}  // namespace seamturn::planner::detail

// SPDX-License-Identifier: MIT
// The part on the crane's hook: hung on the positioner, hung anew, taken off.
#include <algorithm>

#include "detail_tacking.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/joint/inside.hpp"

namespace seamturn::planner::detail {

namespace {

using base::Finding;
using base::Severity;

constexpr double lean_limit_deg = 5.0;  // common practice
constexpr double off_part_mm = 50.0;    // an eye bolt or a lug stands so far out at most

const joint::Lifting* find_lifting(const joint::Weldment& weldment, const std::string& id) {
  for (const joint::Lifting& lifting : weldment.liftings) {
    if (lifting.id == id) return &lifting;
  }
  return nullptr;
}

/// To the sky when the part sits on the positioner at rest: the normal of a table's faceplate, else
/// straight up.
geom::Vec3 up_at_rest(const Inputs& inputs, const joint::Setup& setup) {
  geom::Vec3 up_D = geom::Vec3::UnitZ();
  if (inputs.cell) {
    const geom::Vec3 normal_D = cell::faceplate_normal_D(inputs.cell->positioner.kind);
    if (normal_D.z() > 0.5) up_D = normal_D;
  }
  return setup.X_DJ.rotation.transpose() * up_D;
}

class Lifts {
 public:
  Lifts(const Inputs& inputs, const std::vector<StageWork>& stages, plan::Plan& plan)
      : inputs_(inputs), stages_(stages), plan_(plan) {}

  void run() {
    for (std::size_t k = 0; k < stages_.size(); ++k) {
      if (stages_[k].setup == nullptr) continue;
      if (stages_[k].rehangs && k > 0) hung(k);
      const bool last = k + 1 == stages_.size();
      if (last || stages_[k + 1].setup == nullptr) taken_off(k);
    }
  }

 private:
  /// The part comes as it was in the stage before.
  void hung(std::size_t k) {
    const joint::Setup& setup = *stages_[k].setup;
    plan::PlannedHang planned;
    planned.stage = plan_.stages.at(k).id;
    for (std::size_t j = k; j-- > 0;) {
      if (stages_[j].setup == nullptr) continue;
      planned.turned_over =
          geom::angle_between(up_at_rest(inputs_, *stages_[j].setup), up_at_rest(inputs_, setup));
      break;
    }
    lift(stages_[k - 1], setup, setup.lifting, std::move(planned));
  }

  void taken_off(std::size_t k) {
    const joint::Setup& setup = *stages_[k].setup;
    plan::PlannedHang planned;
    planned.stage = plan_.stages.at(k).id;
    planned.off = true;
    lift(stages_[k],
         setup,
         setup.lifting_off.empty() ? setup.lifting : setup.lifting_off,
         std::move(planned));
  }

  void lift(const StageWork& part,
            const joint::Setup& setup,
            const std::string& by,
            plan::PlannedHang planned) {
    const joint::Lifting* lifting = find_lifting(inputs_.weldment, by);
    if (lifting == nullptr || part.present.empty()) return;
    planned.lifting = lifting->id;
    planned.mass_kg = part.part_J.mass_kg;
    turn::HangParams params;
    params.mass_kg = part.part_J.mass_kg;
    params.centre_of_gravity = part.part_J.centre;
    params.hook = lifting->hook;
    params.up = up_at_rest(inputs_, setup);
    params.lean_limit = Angle::deg(lean_limit_deg);
    for (const joint::LiftPoint& point : lifting->points) {
      planned.points.push_back(point.id);
      params.lifting_points.push_back(point.at);
    }
    tell_off_part(part, *lifting, planned);
    tell_turned_over(*lifting, planned);
    const base::Outcome<turn::Hang> hang = turn::hang(params);
    if (hang) {
      planned.hang = *hang;
      for (const Finding& finding : hang->findings) {
        tell(*lifting, planned, finding.code, finding.text);
      }
    } else {
      planned.refused = hang.error().text;
      tell(*lifting, planned, hang.error().code, hang.error().text);
    }
    plan_.hangs.push_back(std::move(planned));
  }

  void tell_off_part(const StageWork& part,
                     const joint::Lifting& lifting,
                     const plan::PlannedHang& planned) {
    for (const joint::LiftPoint& point : lifting.points) {
      const bool on =
          std::any_of(part.present.begin(), part.present.end(), [&](const joint::Member* member) {
            return joint::is_inside(*member, point.at, off_part_mm);
          });
      if (on) continue;
      tell(
          lifting,
          planned,
          "turn.hang.off_part",
          "point " + point.id + " lies more than " + base::fixed_text(off_part_mm, 0) +
              " mm from every member that is there; correct at= (frame of the part), or lift it by "
              "points that are there");
    }
  }

  void tell_turned_over(const joint::Lifting& lifting, const plan::PlannedHang& planned) {
    if (planned.turned_over.deg() <= lean_limit_deg) return;
    tell(lifting,
         planned,
         "turn.hang.turned_over",
         "between the set-ups the part is turned over by " +
             base::fixed_text(planned.turned_over.deg(), 0) +
             " deg; only how it hangs at the end is looked at: plan the turning over with the "
             "person "
             "responsible for lifting");
  }

  void tell(const joint::Lifting& lifting,
            const plan::PlannedHang& planned,
            const std::string& code,
            const std::string& text) {
    const std::string when =
        planned.stage.empty()
            ? std::string(planned.off ? "taken off" : "hung")
            : (planned.off ? "taken off after stage " : "hung for stage ") + planned.stage;
    plan_.findings.push_back(Finding{Severity::warning,
                                     code,
                                     "lifting " + lifting.id + ", " + when + ": " + text,
                                     place_of(inputs_.weldment, "lifting/" + lifting.id),
                                     {}});
  }

  const Inputs& inputs_;
  const std::vector<StageWork>& stages_;
  plan::Plan& plan_;
};

}  // namespace

void assemble_hangs(const Inputs& inputs, const std::vector<StageWork>& stages, plan::Plan& plan) {
  Lifts(inputs, stages, plan).run();
}

}  // namespace seamturn::planner::detail

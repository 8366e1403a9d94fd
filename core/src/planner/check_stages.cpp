// SPDX-License-Identifier: MIT
// What a build does not allow. Every finding names members, seams, stage.
#include <algorithm>
#include <map>

#include "detail_stages.hpp"
#include "seamturn/base/listed.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/joint/inside.hpp"

namespace seamturn::planner::detail {

namespace {

using base::Finding;
using base::Severity;

class Check {
 public:
  Check(const Inputs& inputs, const std::vector<StageWork>& stages, std::vector<Finding>& findings)
      : weldment_(inputs.weldment), inputs_(inputs), stages_(stages), findings_(findings) {}

  void run() {
    members_fitted_once();
    for (std::size_t k = 0; k < stages_.size(); ++k) {
      nothing_floats(k);
      joints_of(k);
      for (const joint::Operation& operation : stages_[k].operations) {
        operation_of(k, operation);
      }
      if (stages_[k].setup != nullptr) setup_of(k);
    }
    waits();
  }

 private:
  void tell(const char* code, const std::string& key, const std::string& text) {
    findings_.push_back(Finding{Severity::error, code, text, place_of(weldment_, key), {}});
  }

  void members_fitted_once() {
    if (weldment_.stages.empty()) return;
    std::map<std::string, int> times;
    for (const joint::Stage& stage : weldment_.stages) {
      for (const std::string& member : joint::fitted_members(stage)) ++times[member];
    }
    for (const joint::Member& member : weldment_.members) {
      const int count = times[member.id];
      if (count == 1) continue;
      tell(count == 0 ? "stage.member.never" : "stage.member.twice",
           "member/" + member.id,
           "member " + member.id +
               (count == 0 ? " is fitted in no stage; expected it"
                           : " is fitted more than once; expected it once") +
               " in the <fit members=\"...\"/> of one stage");
    }
  }

  /// Members that joints connect, seen from the first one.
  void nothing_floats(std::size_t k) {
    const StageWork& stage = stages_[k];
    if (stage.stage == nullptr || stage.present.empty()) return;
    std::set<std::string_view> held = {stage.present.front()->id};
    for (bool grows = true; grows;) {
      grows = false;
      for (const joint::Joint& joint : weldment_.joints) {
        if (!stage.has(joint.member_1) || !stage.has(joint.member_2)) continue;
        const bool one = held.contains(joint.member_1);
        if (one == held.contains(joint.member_2)) continue;
        held.insert(one ? joint.member_2 : joint.member_1);
        grows = true;
      }
    }
    std::vector<std::string> loose;
    for (const joint::Member* member : stage.present) {
      const bool known = told_floating_.contains(member->id);
      if (held.contains(member->id) || known) continue;
      told_floating_.insert(member->id);
      loose.push_back(member->id);
    }
    if (loose.empty()) return;
    tell("stage.member.floating",
         "stage/" + stage.stage->id,
         stage.name() + " leaves members without any joint to the rest (seen from " +
             stage.present.front()->id + "): " + base::listed(loose) +
             "; fit what holds them in this stage or before, or fit them later");
  }

  void joints_of(std::size_t k) {
    const StageWork& stage = stages_[k];
    if (stage.stage == nullptr) return;
    for (const joint::Joint& joint : weldment_.joints) {
      if (!stage.welds(joint)) continue;
      std::string missing;
      for (const std::string& member : {joint.member_1, joint.member_2}) {
        if (!stage.has(member)) missing += (missing.empty() ? "" : " and ") + member;
      }
      if (!missing.empty() && !joint.stage.empty()) {
        tell("stage.joint.too_early",
             "joint/" + joint.id,
             "joint " + joint.id + " is welded in " + stage.name() + ", where " + missing +
                 " is not fitted yet; weld it in a later stage, or fit the member before");
      }
      if (stage.setup == nullptr) {
        tell("stage.joint.away",
             "joint/" + joint.id,
             "joint " + joint.id + " is welded in " + stage.name() +
                 ", where the part is away from the cell; weld it in a stage with a set-up");
      }
      if (stage.setup == nullptr) continue;
      const auto& hides = stage.setup->hides;
      if (std::find(hides.begin(), hides.end(), joint.id) == hides.end()) continue;
      tell("setup.hides.welded",
           "joint/" + joint.id,
           "joint " + joint.id + " is welded in " + stage.name() + ", and set-up " +
               stage.setup->id +
               " hides it as stated; weld it in another stage, or hang the part another way");
    }
  }

  [[nodiscard]] std::size_t stage_of(const std::string& id) const {
    const joint::Joint* joint = joint::find_joint(weldment_, id);
    return joint == nullptr ? 0 : stage_index(stages_, *joint);
  }

  void waits() {
    for (const joint::Joint& joint : weldment_.joints) {
      const std::size_t own = stage_of(joint.id);
      for (const std::string& before : joint.after) {
        if (stage_of(before) <= own) continue;
        tell("stage.joint.after_later",
             "joint/" + joint.id,
             "joint " + joint.id + " of " + stages_[own].name() + " waits for joint " + before +
                 ", which is welded only in " + stages_[stage_of(before)].name() +
                 "; change the stage of one of them, or take the wait away");
      }
    }
  }

  void operation_of(std::size_t k, const joint::Operation& operation) {
    const std::string key = "operation/" + operation.id;
    const auto elsewhere = [&](const std::string& joint, const char* word, const char* when) {
      tell("stage.operation.elsewhere",
           key,
           "operation " + operation.id + " of " + stages_[k].name() + " stands " + word +
               " joint " + joint + ", which is welded in " + when + " stage (" +
               stages_[stage_of(joint)].name() + "); move the operation there");
    };
    for (const std::string& joint : operation.after) {
      if (stage_of(joint) > k) elsewhere(joint, "after", "a later");
    }
    for (const std::string& joint : operation.before) {
      if (stage_of(joint) < k) elsewhere(joint, "before", "an earlier");
    }
    for (const std::string& member : operation.members) {
      if (stages_[k].has(member)) continue;
      tell("stage.operation.member",
           key,
           "operation " + operation.id + " of " + stages_[k].name() + " is about member " + member +
               ", which is not fitted yet; move it to a later stage");
    }
    axes_of(operation, key);
  }

  void axes_of(const joint::Operation& operation, const std::string& key) {
    if (!inputs_.cell || operation.axes.empty()) return;
    const auto& axes = inputs_.cell->positioner.axes;
    for (const joint::AxisValue& wanted : operation.axes) {
      const auto found = std::find_if(axes.begin(), axes.end(), [&](const cell::Axis& axis) {
        return axis.name == wanted.axis;
      });
      const bool has = found != axes.end();
      if (has && (found->endless || (wanted.value >= found->min && wanted.value <= found->max))) {
        continue;
      }
      tell("stage.operation.axis",
           key,
           "operation " + operation.id + " asks for " + wanted.axis + ' ' +
               base::fixed_text(wanted.value.deg(), 1) + " deg; positioner " +
               inputs_.cell->positioner.id +
               (has ? " turns that axis from " + base::fixed_text(found->min.deg(), 1) + " to " +
                          base::fixed_text(found->max.deg(), 1) + " deg"
                    : " has no axis of that name"));
    }
  }

  void setup_of(std::size_t k) {
    const StageWork& stage = stages_[k];
    if (stage.present.empty()) {
      tell("stage.member.none",
           "stage/" + stage.stage->id,
           stage.name() +
               " hangs a part that has no members yet; fit something in it or before, "
               "or delete the stage");
      return;
    }
    if (stage.rehangs && !stage.setup->hang_s) {
      tell("stage.setup.no_hang",
           "setup/" + stage.setup->id,
           stage.name() + " hangs the part anew in set-up " + stage.setup->id +
               ", which does not say how long that takes; add hang=\"25 min\", the crane's time");
    }
    for (const joint::Clamp& clamp : stage.setup->clamps) {
      const auto& present = stage.present;
      const bool on_part = std::any_of(present.begin(), present.end(), [&](const auto* member) {
        return joint::is_inside(*member, clamp.at, clamp.radius_mm);
      });
      if (!on_part) {
        tell("setup.clamp.off_part",
             "clamp/" + stage.setup->id + "/" + clamp.id,
             "clamp " + clamp.id + " of set-up " + stage.setup->id +
                 " touches no member that is "
                 "there in " +
                 stage.name() + "; correct at= (frame of the part) or radius=");
      }
      std::vector<std::string> under;
      for (const joint::Joint& joint : weldment_.joints) {
        if (!stage.welds(joint)) continue;
        for (const joint::Seam& seam : joint.seams) {
          if (is_under(clamp, seam)) under.push_back(seam.id);
        }
      }
      if (under.empty()) continue;
      tell("setup.clamp.on_seam",
           "clamp/" + stage.setup->id + "/" + clamp.id,
           "clamp " + clamp.id + " of set-up " + stage.setup->id + " sits on seams welded in " +
               stage.name() + ": " + base::listed(under) +
               "; move the clamp, or weld them in another set-up");
    }
  }

  static bool is_under(const joint::Clamp& clamp, const joint::Seam& seam) {
    if (!seam.path) return false;
    constexpr double step_mm = 10.0;
    const double length_mm = geom::path_length_mm(*seam.path);
    const int steps = std::max(1, static_cast<int>(length_mm / step_mm));
    for (int i = 0; i <= steps; ++i) {
      const double at_mm = length_mm * i / steps;
      const geom::Vec3 point = geom::path_station(*seam.path, at_mm).point;
      if ((point - clamp.at).norm() < clamp.radius_mm) return true;
    }
    return false;
  }

  const joint::Weldment& weldment_;
  const Inputs& inputs_;
  const std::vector<StageWork>& stages_;
  std::vector<Finding>& findings_;
  std::set<std::string_view> told_floating_;
};

}  // namespace

void check_stages(const Inputs& inputs,
                  const std::vector<StageWork>& stages,
                  std::vector<Finding>& findings) {
  Check(inputs, stages, findings).run();
}

}  // namespace seamturn::planner::detail

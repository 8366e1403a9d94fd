// SPDX-License-Identifier: MIT
#include "seamturn/plan/order_to_edit.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <utility>

#include "seamturn/base/error.hpp"

namespace seamturn::plan {

namespace {

/// Layers, or passes, of one seam in a row.
struct Run {
  const PlannedSeam* seam = nullptr;
  int from = 0;
  int to = 0;
};

/// A pass with its layer.
struct Laid {
  const PlannedSeam* seam = nullptr;
  int layer = 0;
  int pass = 0;
};

int layer_of(const PlannedSeam& seam, int pass) {
  const auto found = std::find_if(seam.passes.begin(), seam.passes.end(), [&](const auto& one) {
    return one.pass.number == pass;
  });
  SEAMTURN_REQUIRE(found != seam.passes.end(), seam.id, pass);
  return found->pass.layer;
}

/// Seams with passes of another seam between those of one layer.
std::set<const PlannedSeam*> torn_seams(const std::vector<Laid>& laid) {
  std::set<const PlannedSeam*> torn;
  std::set<std::pair<const PlannedSeam*, int>> begun;
  for (std::size_t i = 0; i < laid.size(); ++i) {
    const bool goes_on =
        i > 0 && laid[i - 1].seam == laid[i].seam && laid[i - 1].layer == laid[i].layer;
    const bool is_new = begun.insert({laid[i].seam, laid[i].layer}).second;
    if (!goes_on && !is_new) torn.insert(laid[i].seam);
  }
  return torn;
}

class Lister {
 public:
  explicit Lister(std::vector<Laid> laid) : laid_(std::move(laid)), torn_(torn_seams(laid_)) {}

  std::vector<joint::HandEntry> entries() {
    for (const Laid& one : laid_) {
      add(*one.seam, torn_.count(one.seam) > 0 ? one.pass : one.layer);
    }
    std::vector<joint::HandEntry> entries;
    for (const Run& run : runs_) {
      std::optional<joint::HandEntry> entry = joint::read_hand_entry(text_of(run));
      SEAMTURN_REQUIRE(entry.has_value(), text_of(run));
      entries.push_back(*std::move(entry));
    }
    return entries;
  }

 private:
  void add(const PlannedSeam& seam, int number) {
    const bool same_seam = !runs_.empty() && runs_.back().seam == &seam;
    if (same_seam && runs_.back().to == number) return;  // one more pass of the layer
    if (same_seam && runs_.back().to + 1 == number) {
      runs_.back().to = number;
    } else {
      runs_.push_back({&seam, number, number});
    }
  }

  [[nodiscard]] std::string text_of(const Run& run) const {
    const bool by_passes = torn_.count(run.seam) > 0;
    if (!by_passes && run.from == 1 && run.to == run.seam->stack.layers) return run.seam->id;
    const std::string first = run.seam->id + (by_passes ? ":" : ".") + std::to_string(run.from);
    return run.to == run.from ? first : first + "-" + std::to_string(run.to);
  }

  std::vector<Laid> laid_;
  std::set<const PlannedSeam*> torn_;
  std::vector<Run> runs_;
};

}  // namespace

std::vector<joint::HandOrder> order_to_edit(const Plan& plan) {
  std::map<std::string, const PlannedSeam*> seams;
  for (const PlannedJoint& joint : plan.joints) {
    for (const PlannedSeam& seam : joint.seams) seams.emplace(seam.id, &seam);
  }
  std::map<std::size_t, std::vector<Laid>> laid;  // by stage
  for (const PlannedEvent& event : plan.timeline) {
    if (event.kind != timeline::SecondKind::arc) continue;
    const PlannedSeam* const seam = seams.at(event.seam);
    laid[event.stage].push_back({seam, layer_of(*seam, event.pass), event.pass});
  }
  std::vector<joint::HandOrder> orders;
  for (auto& [stage, passes] : laid) {
    orders.push_back({plan.stages.at(stage).id, Lister(std::move(passes)).entries()});
  }
  return orders;
}

}  // namespace seamturn::plan

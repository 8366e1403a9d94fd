// SPDX-License-Identifier: MIT
// Grooves: a root sized by its settings, then layers cut from the real profile. Among all layer
// counts and root sizes within the limits the best by the aim is laid; what cannot become better
// than the best so far is not counted out.
#include <algorithm>

#include "pass/detail_groove_search.hpp"

namespace seamturn::pass {
namespace {

using process::PassRole;

constexpr int most_groove_layers = 200;
// Root sizes tried, as shares of the size at the preferred travel. Never taken from the limits:
// so a wider limit can only add choices.
constexpr double root_shares[] = {
    1.0, 0.95, 0.9, 0.85, 0.8, 0.75, 0.7, 0.65, 0.6, 0.55, 0.5, 0.45, 0.4, 1.1, 1.2, 1.35, 1.5};

}  // namespace

GrooveSearch::GrooveSearch(const Profile& profile, const Rules& rules, Misses* misses)
    : profile_(profile),
      rules_(rules),
      rows_(rules.rows),
      misses_(misses),
      cap_mean_mm_(profile.cap().mean_height_mm()),
      all_mm2_(profile.area_mm2() + profile.cap().area_mm2),
      opening_mm_(profile.level_at(profile.top_mm()).width_mm),
      face_width_mm_(std::max(opening_mm_, profile.cap().width_mm)),
      least_cap_beads_(split_beads(face_width_mm_, caps(PassRole::cap).split_mm)),
      beads_per_mm2_(
          1.0 /
          std::max(std::min(caps(PassRole::cap).area_mm2.value, rows_.most_mm2(PassRole::cap)),
                   std::min(caps(PassRole::fill).area_mm2.value, rows_.most_mm2(PassRole::fill)))) {
  find_split_heights();
}

std::optional<std::vector<GrooveLayer>> GrooveSearch::run() {
  try_single();
  if (!best_ || rules_.by_time()) {
    try_roots();
  }
  if (!best_) {
    return std::nullopt;
  }
  return write_out(*best_);
}

void GrooveSearch::try_single() {
  if (!rows_.has_own_single()) {
    return;
  }
  Excess excess;
  for (const PassRole role : {PassRole::single, PassRole::root}) {
    excess.compare(all_mm2_, caps(role).area_mm2);
    excess.compare(profile_.height_mm() + cap_mean_mm_, caps(role).thickness_mm);
    excess.compare(face_width_mm_, caps(role).split_mm);
  }
  if (excess.any()) {
    return;
  }
  const RowRange* row = rows_.pick(PassRole::single, all_mm2_);
  if (row == nullptr) {
    miss({PassRole::single, all_mm2_, 1, {}});
    return;
  }
  GroovePlan plan;
  plan.single = true;
  plan.root.top_mm = profile_.top_mm();
  plan.score.add(*row, all_mm2_, 1);
  best_ = plan;
}

Excess GrooveSearch::root_excess(double bead_mm2, int beads) const {
  const Caps& bound = caps(PassRole::root);
  const double top_mm = profile_.top_of_area_mm(bead_mm2 * beads);
  const double width_mm = profile_.level_at(top_mm).width_mm;
  Excess excess;
  excess.compare(bead_mm2, bound.area_mm2);
  excess.compare(top_mm - profile_.bottom_mm(), bound.thickness_mm);
  if (beads < split_beads(width_mm, bound.split_mm)) {
    excess.compare((beads == 1 ? 1.0 : 1.5) * width_mm / beads, bound.split_mm);
  }
  return excess;
}

void GrooveSearch::try_roots() {
  for (const PassRole role : {PassRole::root, PassRole::cap}) {
    if (rows_.rows(role).empty()) {
      if (misses_ != nullptr) misses_->add_missing_role(role);
      return;
    }
  }
  const int beads =
      split_beads(profile_.level_at(profile_.bottom_mm()).width_mm, caps(PassRole::root).split_mm);
  for (const RowRange& range : rows_.rows(PassRole::root)) {
    if (range.least_mm2 > range.most_mm2) {
      miss({PassRole::root, range.preferred_mm2, beads, {}});
      continue;
    }
    for (const double share : root_shares) {
      const double area_mm2 = share * range.preferred_mm2;
      if (area_mm2 > range.least_mm2 && area_mm2 < range.most_mm2) {
        try_root(area_mm2, beads);
      }
    }
    try_root(range.least_mm2, beads);
    try_root(range.most_mm2, beads);
  }
}

void GrooveSearch::try_root(double bead_mm2, int beads) {
  const Excess excess = root_excess(bead_mm2, beads);
  if (excess.any()) {
    const Caps& bound = caps(PassRole::root);
    const double top_mm = profile_.bottom_mm() + bound.thickness_mm.value;
    const double most_mm2 =
        std::min(bound.area_mm2.value, profile_.level_at(top_mm).below_mm2 / beads);
    if (most_mm2 < bead_mm2) {
      miss({PassRole::root, most_mm2, beads, excess.id()});
    }
    return;
  }
  RootChoice root;
  root.beads = beads;
  root.top_mm = profile_.top_of_area_mm(bead_mm2 * beads);
  root.bead_mm2 = std::min(bead_mm2, profile_.area_mm2() / beads);
  const RowRange* row = rows_.pick(PassRole::root, root.bead_mm2);
  if (row == nullptr) {
    miss({PassRole::root, root.bead_mm2, beads, {}});
    return;
  }
  if (root.top_mm >= profile_.top_mm() && profile_.cap().area_mm2 <= 0.0) {
    return;  // nothing would be left for the cap
  }
  root.score.add(*row, root.bead_mm2, beads);
  try_layers(root);
}

Cuts GrooveSearch::cut(double rest_mm, int layers) const {
  if (layers == 1) {
    return {rest_mm, rest_mm};
  }
  // The last layer carries the cap, so it takes less of the groove; at least a third of a layer,
  // for the weld is filled to just below the edge before it is capped.
  const double layer_mm = (rest_mm + cap_mean_mm_) / layers;
  if (layer_mm - cap_mean_mm_ >= layer_mm / 3.0) {
    return {layer_mm, layer_mm - cap_mean_mm_};
  }
  const double shared_mm = rest_mm / (layers - 1 + 1.0 / 3.0);
  return {shared_mm, shared_mm / 3.0};
}

Excess GrooveSearch::layers_excess(const Cuts& cuts, int layers) const {
  Excess excess;
  if (layers > 1) {
    excess.compare(cuts.layer_mm, caps(PassRole::fill).thickness_mm);
  }
  excess.compare(cuts.last_mm + cap_mean_mm_, caps(PassRole::cap).thickness_mm);
  return excess;
}

void GrooveSearch::try_layers(const RootChoice& root) {
  const double rest_mm = profile_.top_mm() - root.top_mm;
  const double rest_mm2 = all_mm2_ - root.beads * root.bead_mm2;
  const int last_count = rest_mm > 0.0 ? most_groove_layers : 1;
  std::string_view limited_by;
  for (int layers = 1; layers <= last_count; ++layers) {
    if (cannot_win(root.score, layers - 1 + least_cap_beads_, rest_mm2)) {
      return;
    }
    const Cuts cuts = cut(rest_mm, layers);
    const Excess excess = layers_excess(cuts, layers);
    if (excess.any()) {
      limited_by = excess.id();
      continue;
    }
    const int fill_passes = least_fill_passes(root.top_mm, cuts, layers);
    if (cannot_win(root.score, fill_passes + least_cap_beads_, rest_mm2)) {
      continue;
    }
    if (layers > 1 && rows_.rows(PassRole::fill).empty()) {
      if (misses_ != nullptr) misses_->add_missing_role(PassRole::fill);
      return;
    }
    GroovePlan plan;
    plan.root = root;
    plan.score = root.score;
    plan.layers = layers;
    limited_by = {};
    const bool closes = count_beads(plan, cuts);
    if (closes && (!best_ || is_better(plan.score, best_->score, rules_.by_time()))) {
      best_ = plan;
    }
    if (!closes && is_too_thin(cuts, layers)) {
      return;  // thinner layers need still faster travel
    }
  }
  if (!limited_by.empty() && misses_ != nullptr) {
    const Cuts thinnest = cut(rest_mm, last_count);
    misses_->add_barred({PassRole::cap,
                         thinnest.last_mm + cap_mean_mm_,
                         caps(PassRole::cap).thickness_mm.value,
                         limited_by});
  }
}

base::Outcome<std::vector<GrooveLayer>> find_groove_layers(const Profile& profile,
                                                           const Rules& rules) {
  if (auto layers = GrooveSearch(profile, rules, nullptr).run()) {
    return *std::move(layers);
  }
  if (profile.area_mm2() <= 0.0) {
    return base::Refusal{"pass.groove.closed",
                         "the edges touch from the root to the surface, so there is no room for a "
                         "root or a fill, and no single pass lays the cap alone; open the gap, "
                         "bevel the edges, or gouge so deep that a bevel is left"};
  }
  // Only a section that nothing closes pays for the reasons.
  Misses misses(rules.rows);
  static_cast<void>(GrooveSearch(profile, rules, &misses).run());
  return misses.refusal(rules.request);
}

}  // namespace seamturn::pass

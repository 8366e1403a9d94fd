// SPDX-License-Identifier: MIT
// Grooves: a root sized by its settings, then layers cut from the real profile. Among all layer
// counts and root sizes within the limits the best by the aim is laid; what cannot become better
// than the best so far is not counted out.
#include <algorithm>
#include <cmath>

#include "pass/detail_groove.hpp"

namespace seamturn::pass {
namespace {

using process::PassRole;

constexpr int most_layers = 200;
constexpr int most_beads_abreast = 200;
// Root sizes tried, as shares of the size at the preferred travel. Never taken from the limits:
// so a wider limit can only add choices.
constexpr double root_shares[] = {
    1.0, 0.95, 0.9, 0.85, 0.8, 0.75, 0.7, 0.65, 0.6, 0.55, 0.5, 0.45, 0.4, 1.1, 1.2, 1.35, 1.5};
// Sizes that differ by rounding only are one size.
constexpr double rounding_ratio = 1e-9;

struct RootChoice {
  double bead_mm2 = 0.0;
  int beads = 1;
  double top_mm = 0.0;
  Score score;
};

struct GroovePlan {
  RootChoice root;
  int layers = 0;  ///< above the root
  Score score;
  std::string_view layers_limited_by;  ///< limit that bars one layer fewer
  bool single = false;
};

/// Thickness of the layers above the root.
struct Cuts {
  double layer_mm = 0.0;
  double last_mm = 0.0;
};

/// Beads side by side in one layer; no row: the settings lay none.
struct Abreast {
  int count = 0;
  const RowRange* row = nullptr;
  std::string_view limited_by;
};

class GrooveSearch {
 public:
  /// misses: takes why nothing closes; null while nobody asks.
  GrooveSearch(const Profile& profile, const Rules& rules, Misses* misses);
  [[nodiscard]] std::optional<std::vector<GrooveLayer>> run();

 private:
  [[nodiscard]] const Caps& caps(PassRole role) const { return rules_.caps_of(role); }
  [[nodiscard]] Excess root_excess(double bead_mm2, int beads) const;
  [[nodiscard]] Cuts cut(double rest_mm, int layers) const;
  [[nodiscard]] Abreast beads_abreast(PassRole role, double area_mm2, double width_mm) const;
  [[nodiscard]] double face_width_mm() const {
    return std::max(profile_.width_at_mm(profile_.top_mm()), profile_.cap().width_mm);
  }
  /// Least passes of so many layers that hold an area.
  [[nodiscard]] int least_passes(int layers, double area_mm2) const;
  [[nodiscard]] bool cannot_win(const Score& score, int layers, double area_mm2) const;
  void try_single();
  void try_roots();
  void try_root(double bead_mm2, int beads);
  void try_layers(const RootChoice& root);
  [[nodiscard]] Excess layers_excess(const Cuts& cuts, int layers) const;
  [[nodiscard]] bool is_too_thin(const Cuts& cuts, int layers) const;
  /// Adds the score of the layers above the root; false: some layer does not close, or the best so
  /// far stays better.
  [[nodiscard]] bool count_beads(GroovePlan& plan, const Cuts& cuts) const;
  [[nodiscard]] std::vector<GrooveLayer> write_out(const GroovePlan& plan) const;
  void miss(const Miss& why) const {
    if (misses_ != nullptr) misses_->add(why);
  }

  const Profile& profile_;
  const Rules& rules_;
  const RowTable& rows_;
  Misses* misses_;
  double cap_mean_mm_;
  double all_mm2_;
  double face_width_mm_;
  int least_cap_beads_;
  double most_bead_mm2_;  // above the root
  std::optional<GroovePlan> best_;
};

GrooveSearch::GrooveSearch(const Profile& profile, const Rules& rules, Misses* misses)
    : profile_(profile),
      rules_(rules),
      rows_(rules.rows),
      misses_(misses),
      cap_mean_mm_(profile.cap().mean_height_mm()),
      all_mm2_(profile.area_mm2() + profile.cap().area_mm2),
      face_width_mm_(face_width_mm()),
      least_cap_beads_(split_beads(face_width_mm_, caps(PassRole::cap).split_mm)),
      most_bead_mm2_(std::max(
          std::min(caps(PassRole::cap).area_mm2.value, rows_.most_mm2(PassRole::cap)),
          std::min(caps(PassRole::fill).area_mm2.value, rows_.most_mm2(PassRole::fill)))) {}

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
  const double width_mm = profile_.width_at_mm(top_mm);
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
      split_beads(profile_.width_at_mm(profile_.bottom_mm()), caps(PassRole::root).split_mm);
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
    const double most_mm2 = std::min(bound.area_mm2.value, profile_.area_below_mm2(top_mm) / beads);
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

int GrooveSearch::least_passes(int layers, double area_mm2) const {
  const double by_area = std::ceil(area_mm2 / most_bead_mm2_ * (1.0 - 10.0 * rounding_ratio));
  const int by_layers = layers - 1 + least_cap_beads_;
  return by_area > by_layers ? static_cast<int>(std::min(by_area, 1e6)) : by_layers;
}

bool GrooveSearch::cannot_win(const Score& score, int layers, double area_mm2) const {
  if (!best_) {
    return false;
  }
  const Score& best = best_->score;
  if (rules_.by_time()) {
    return score.arc_s_mm + area_mm2 / rows_.most_mm3_s() >
           best.arc_s_mm * (1.0 + 10.0 * rounding_ratio);
  }
  const int passes = score.passes + (layers > 0 ? least_passes(layers, area_mm2) : 0);
  return passes > best.passes || (passes == best.passes && score.departure >= best.departure);
}

void GrooveSearch::try_layers(const RootChoice& root) {
  const double rest_mm = profile_.top_mm() - root.top_mm;
  const double rest_mm2 = all_mm2_ - root.beads * root.bead_mm2;
  const int last_count = rest_mm > 0.0 ? most_layers : 1;
  std::string_view limited_by;
  for (int layers = 1; layers <= last_count; ++layers) {
    if (cannot_win(root.score, layers, rest_mm2)) {
      return;
    }
    const Cuts cuts = cut(rest_mm, layers);
    const Excess excess = layers_excess(cuts, layers);
    if (excess.any()) {
      limited_by = excess.id();
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
    plan.layers_limited_by = limited_by;
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

bool GrooveSearch::is_too_thin(const Cuts& cuts, int layers) const {
  const double widest_mm2 = cuts.layer_mm * profile_.width_at_mm(profile_.top_mm());
  return layers > 1 && widest_mm2 < rows_.least_mm2(PassRole::fill);
}

bool GrooveSearch::count_beads(GroovePlan& plan, const Cuts& cuts) const {
  double low_mm = plan.root.top_mm;
  double below_mm2 = profile_.area_below_mm2(low_mm);
  for (int layer = 1; layer <= plan.layers; ++layer) {
    const bool last = layer == plan.layers;
    const double high_mm = last ? profile_.top_mm() : low_mm + cuts.layer_mm;
    const double high_mm2 = last ? all_mm2_ : profile_.area_below_mm2(high_mm);
    const double area_mm2 = high_mm2 - below_mm2;
    const Abreast abreast = beads_abreast(last ? PassRole::cap : PassRole::fill,
                                          area_mm2,
                                          last ? face_width_mm_ : profile_.width_at_mm(high_mm));
    if (abreast.row == nullptr) {
      return false;
    }
    plan.score.add(*abreast.row, area_mm2 / abreast.count, abreast.count);
    low_mm = high_mm;
    below_mm2 = high_mm2;
    if (cannot_win(plan.score, plan.layers - layer, all_mm2_ - below_mm2)) {
      return false;
    }
  }
  return true;
}

Abreast GrooveSearch::beads_abreast(PassRole role, double area_mm2, double width_mm) const {
  const Caps& bound = caps(role);
  const int by_area = area_beads(area_mm2, bound.area_mm2);
  const int by_width = split_beads(width_mm, bound.split_mm);
  const int least = std::max(by_area, by_width);
  const std::string_view barred_by = least == 1            ? std::string_view()
                                     : by_area >= by_width ? bound.area_mm2.id
                                                           : bound.split_mm.id;
  Abreast best;
  for (int count = least; count <= most_beads_abreast; ++count) {
    const double bead_mm2 = area_mm2 / count;
    const RowRange* row = rows_.pick(role, bead_mm2);
    if (row != nullptr && (best.row == nullptr || row->laid_mm3_s > best.row->laid_mm3_s)) {
      best = {count, row, count == least ? barred_by : rows_.rows(role).front().row->id};
    }
    if (row != nullptr && !rules_.by_time()) {
      break;
    }
    if (row == nullptr) {
      miss({role, bead_mm2, count, barred_by});
      if (bead_mm2 < rows_.least_mm2(role)) {
        break;
      }
    }
  }
  return best;
}

std::vector<GrooveLayer> GrooveSearch::write_out(const GroovePlan& plan) const {
  std::vector<GrooveLayer> layers;
  layers.reserve(static_cast<std::size_t>(plan.layers) + 1);
  GrooveLayer root;
  root.role = plan.single ? PassRole::single : PassRole::root;
  root.low_mm = profile_.bottom_mm();
  root.high_mm = plan.root.top_mm;
  root.beads = plan.root.beads;
  root.capped = plan.single;
  if (!plan.single) {
    const RowRange* row = rows_.pick(PassRole::root, plan.root.bead_mm2);
    if (row->preferred_mm2 > plan.root.bead_mm2) {
      root.limited_by = root_excess(row->preferred_mm2, plan.root.beads).id();
    }
  }
  layers.push_back(root);
  const Cuts cuts = cut(profile_.top_mm() - plan.root.top_mm, std::max(1, plan.layers));
  for (int i = 1; i <= plan.layers; ++i) {
    GrooveLayer layer;
    layer.capped = i == plan.layers;
    layer.role = layer.capped ? PassRole::cap : PassRole::fill;
    layer.low_mm = layers.back().high_mm;
    layer.high_mm = layer.capped ? profile_.top_mm() : layer.low_mm + cuts.layer_mm;
    const double high_mm2 = layer.capped ? all_mm2_ : profile_.area_below_mm2(layer.high_mm);
    const Abreast abreast =
        beads_abreast(layer.role,
                      high_mm2 - profile_.area_below_mm2(layer.low_mm),
                      layer.capped ? face_width_mm_ : profile_.width_at_mm(layer.high_mm));
    layer.beads = abreast.count;
    layer.limited_by = abreast.limited_by.empty() ? plan.layers_limited_by : abreast.limited_by;
    layers.push_back(layer);
  }
  return layers;
}

}  // namespace

base::Outcome<std::vector<GrooveLayer>> find_groove_layers(const Profile& profile,
                                                           const Rules& rules) {
  if (auto layers = GrooveSearch(profile, rules, nullptr).run()) {
    return *std::move(layers);
  }
  // Only a section that nothing closes pays for the reasons.
  Misses misses(rules.rows);
  static_cast<void>(GrooveSearch(profile, rules, &misses).run());
  return misses.refusal(rules.request);
}

}  // namespace seamturn::pass

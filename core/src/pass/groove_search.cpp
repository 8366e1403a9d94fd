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
constexpr double rounding_ratio = limit_rounding_ratio;

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
  bool single = false;
};

/// Thickness of the layers above the root.
struct Cuts {
  double layer_mm = 0.0;
  double last_mm = 0.0;
};

struct LayerSize {
  double area_mm2 = 0.0;  ///< with its cap
  double width_mm = 0.0;
};

/// Beads side by side in one layer; no row: the settings lay none.
struct Abreast {
  int count = 0;
  int least = 0;  ///< that the limits ask for
  const RowRange* row = nullptr;
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
  [[nodiscard]] Abreast beads_abreast(PassRole role, const LayerSize& size) const;
  /// The limit that asks for more than one bead abreast; empty: none does.
  [[nodiscard]] std::string_view abreast_limit(PassRole role, const LayerSize& size) const;
  /// Least passes that hold an area, at least one for each of so many rows of beads.
  [[nodiscard]] int least_passes(int rows, double area_mm2) const;
  /// A plan with this score so far and this much to come stays behind the best.
  [[nodiscard]] bool cannot_win(const Score& score, int rows, double area_mm2) const;
  /// Fill passes that the split width alone asks for.
  [[nodiscard]] int least_fill_passes(double root_top_mm, const Cuts& cuts, int layers) const;
  void find_split_heights();
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
  double opening_mm_;
  double face_width_mm_;  // of the last layer
  int least_cap_beads_;
  double beads_per_mm2_;                  // at least, above the root
  std::vector<double> split_heights_mm_;  // a fill layer that ends above the nth takes n + 2 beads
  std::optional<GroovePlan> best_;
};

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

void GrooveSearch::find_split_heights() {
  const Bound& split_mm = caps(PassRole::fill).split_mm;
  const int most = std::min(most_beads_abreast, split_beads(opening_mm_, split_mm));
  for (int beads = 1; beads < most; ++beads) {
    // The widest layer of so many beads.
    const double width_mm = (beads == 1 ? 1.0 : beads / 1.5) * split_mm.value;
    split_heights_mm_.push_back(
        profile_.wider_above_mm(width_mm * (1.0 + 10.0 * limit_rounding_ratio)));
  }
}

int GrooveSearch::least_fill_passes(double root_top_mm, const Cuts& cuts, int layers) const {
  int passes = layers - 1;
  for (const double height_mm : split_heights_mm_) {
    const double below = (height_mm - root_top_mm) / cuts.layer_mm + limit_rounding_ratio;
    if (below >= layers - 1) {
      break;
    }
    passes += layers - 1 - (below > 0.0 ? static_cast<int>(below) : 0);
  }
  return passes;
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

int GrooveSearch::least_passes(int rows, double area_mm2) const {
  const double by_area = area_mm2 * beads_per_mm2_ - 1e-6;
  return by_area > rows ? static_cast<int>(std::min(by_area, 1e6)) + 1 : rows;
}

bool GrooveSearch::cannot_win(const Score& score, int rows, double area_mm2) const {
  if (!best_) {
    return false;
  }
  const Score& best = best_->score;
  if (rules_.by_time()) {
    return score.arc_s_mm + area_mm2 / rows_.most_mm3_s() >
           best.arc_s_mm * (1.0 + 10.0 * rounding_ratio);
  }
  const int passes = score.passes + least_passes(rows, area_mm2);
  return passes > best.passes || (passes == best.passes && score.departure >= best.departure);
}

void GrooveSearch::try_layers(const RootChoice& root) {
  const double rest_mm = profile_.top_mm() - root.top_mm;
  const double rest_mm2 = all_mm2_ - root.beads * root.bead_mm2;
  const int last_count = rest_mm > 0.0 ? most_layers : 1;
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

bool GrooveSearch::is_too_thin(const Cuts& cuts, int layers) const {
  const double widest_mm2 = cuts.layer_mm * opening_mm_;
  return layers > 1 && widest_mm2 < rows_.least_mm2(PassRole::fill);
}

// From the widest layer down, so that a plan that loses does so early; upwards when asked why
// nothing closes, so that the miss told is the lowest of the plan.
bool GrooveSearch::count_beads(GroovePlan& plan, const Cuts& cuts) const {
  const auto face_of = [&](int layer) {
    return layer == plan.layers ? Profile::Level{face_width_mm_, all_mm2_}
                                : profile_.level_at(plan.root.top_mm + layer * cuts.layer_mm);
  };
  double rest_mm2 = all_mm2_ - plan.root.beads * plan.root.bead_mm2;
  for (int i = 1; i <= plan.layers; ++i) {
    const int layer = misses_ != nullptr ? i : plan.layers + 1 - i;
    const Profile::Level above = face_of(layer);
    const double area_mm2 = above.below_mm2 - face_of(layer - 1).below_mm2;
    const Abreast abreast = beads_abreast(layer == plan.layers ? PassRole::cap : PassRole::fill,
                                          {area_mm2, above.width_mm});
    if (abreast.row == nullptr) {
      return false;
    }
    plan.score.add(*abreast.row, area_mm2 / abreast.count, abreast.count);
    rest_mm2 -= area_mm2;
    if (cannot_win(plan.score, plan.layers - i, rest_mm2)) {
      return false;
    }
  }
  return true;
}

Abreast GrooveSearch::beads_abreast(PassRole role, const LayerSize& size) const {
  Abreast best;
  best.least = std::max(area_beads(size.area_mm2, caps(role).area_mm2),
                        split_beads(size.width_mm, caps(role).split_mm));
  for (int count = best.least; count <= most_beads_abreast; ++count) {
    const double bead_mm2 = size.area_mm2 / count;
    const RowRange* row = rows_.pick(role, bead_mm2);
    if (row != nullptr && (best.row == nullptr || row->laid_mm3_s > best.row->laid_mm3_s)) {
      best.count = count;
      best.row = row;
    }
    if (row != nullptr && !rules_.by_time()) {
      break;
    }
    if (row == nullptr) {
      miss({role, bead_mm2, count, abreast_limit(role, size)});
      if (bead_mm2 < rows_.least_mm2(role)) {
        break;
      }
    }
  }
  return best;
}

std::string_view GrooveSearch::abreast_limit(PassRole role, const LayerSize& size) const {
  const Caps& bound = caps(role);
  const int by_area = area_beads(size.area_mm2, bound.area_mm2);
  const int by_width = split_beads(size.width_mm, bound.split_mm);
  if (std::max(by_area, by_width) == 1) {
    return {};
  }
  return by_area >= by_width ? bound.area_mm2.id : bound.split_mm.id;
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
  const double rest_mm = profile_.top_mm() - plan.root.top_mm;
  const Cuts cuts = cut(rest_mm, std::max(1, plan.layers));
  std::string_view fewer_layers_barred_by;
  if (plan.layers > 1) {
    fewer_layers_barred_by = layers_excess(cut(rest_mm, plan.layers - 1), plan.layers - 1).id();
  }
  for (int i = 1; i <= plan.layers; ++i) {
    GrooveLayer layer;
    layer.capped = i == plan.layers;
    layer.role = layer.capped ? PassRole::cap : PassRole::fill;
    layer.low_mm = layers.back().high_mm;
    layer.high_mm = layer.capped ? profile_.top_mm() : plan.root.top_mm + i * cuts.layer_mm;
    const Profile::Level above =
        layer.capped ? Profile::Level{face_width_mm_, all_mm2_} : profile_.level_at(layer.high_mm);
    const LayerSize size{above.below_mm2 - profile_.level_at(layer.low_mm).below_mm2,
                         above.width_mm};
    const Abreast abreast = beads_abreast(layer.role, size);
    layer.beads = abreast.count;
    layer.limited_by = abreast.count > abreast.least ? rows_.rows(layer.role).front().row->id
                                                     : abreast_limit(layer.role, size);
    if (layer.limited_by.empty()) layer.limited_by = fewer_layers_barred_by;
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

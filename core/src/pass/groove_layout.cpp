// SPDX-License-Identifier: MIT
// Grooves: a root sized by its settings, then layers cut from the real profile. Among all layer
// counts and root sizes within the limits, the one with fewest passes is laid.
#include <algorithm>
#include <cmath>

#include "pass/detail_groove.hpp"
#include "pass/detail_layout.hpp"
#include "pass/detail_limits.hpp"
#include "pass/detail_strip.hpp"

namespace seamturn::pass {
namespace {

using process::PassRole;
using section::Slice;

constexpr int most_layers = 200;
constexpr int most_beads_abreast = 200;
// Root sizes tried, as shares of the size at the preferred travel. Never taken from the limits:
// so a wider limit can only add choices.
constexpr double root_shares[] = {
    1.0, 0.95, 0.9, 0.85, 0.8, 0.75, 0.7, 0.65, 0.6, 0.55, 0.5, 0.45, 0.4, 1.1, 1.2, 1.35, 1.5};
struct GroovePlan {
  double root_height_mm = 0.0;
  double root_bead_mm2 = 0.0;
  int root_beads = 1;
  int layers = 0;  ///< above the root
  int passes = 0;
  double departure = 0.0;              ///< largest, of a travel from its preferred
  std::string_view layers_limited_by;  ///< limit that bars one layer fewer
  bool single = false;
};

/// Profile heights of the layers above the root.
struct Cuts {
  double layer_mm = 0.0;
  double last_mm = 0.0;
};

/// Beads side by side in one layer; 0: the settings lay none.
struct Abreast {
  int count = 0;
  double departure = 0.0;
  std::string_view limited_by;
};

class GrooveSearch {
 public:
  GrooveSearch(const StackRequest& request, const RowTable& rows);
  [[nodiscard]] base::Outcome<std::vector<Bead>> run();

 private:
  [[nodiscard]] const Caps& caps(PassRole role) const {
    return caps_[static_cast<std::size_t>(role)];
  }
  [[nodiscard]] Excess root_excess(double bead_mm2, int beads) const;
  [[nodiscard]] double root_height_mm(double bead_mm2, int beads) const;
  [[nodiscard]] Cuts cut(double rest_mm, int layers) const;
  [[nodiscard]] Abreast beads_abreast(PassRole role, double area_mm2, double width_mm);
  [[nodiscard]] double layer_area_mm2(double low_mm, double high_mm, bool last) const;
  [[nodiscard]] double layer_width_mm(double high_mm, bool last) const;
  void try_single();
  void try_roots();
  void try_root(double bead_mm2, int beads);
  void try_layers(const GroovePlan& root);
  [[nodiscard]] Excess layers_excess(const Cuts& cuts, int layers) const;
  [[nodiscard]] bool is_too_thin(const Cuts& cuts, int layers) const;
  /// Adds the passes above the root and their departure; false: some layer does
  /// not close, or the best so far is better.
  [[nodiscard]] bool count_beads(GroovePlan& plan, const Cuts& cuts);
  [[nodiscard]] std::vector<Bead> lay(const GroovePlan& plan);

  const StackRequest& request_;
  const section::WeldSection& section_;
  const RowTable& rows_;
  Misses misses_;
  std::array<Caps, 5> caps_;
  double height_mm_ = 0.0;
  double profile_mm2_ = 0.0;
  double cap_mean_mm_ = 0.0;
  std::optional<GroovePlan> best_;
};

GrooveSearch::GrooveSearch(const StackRequest& request, const RowTable& rows)
    : request_(request), section_(*request.section), rows_(rows), misses_(rows) {
  for (const PassRole role : {PassRole::root, PassRole::fill, PassRole::cap, PassRole::single}) {
    caps_[static_cast<std::size_t>(role)] =
        find_caps(request.limits, {request.family, request.position, role});
  }
  height_mm_ = section_.profile.back().y_mm;
  profile_mm2_ = strip_between(section_, 0.0, height_mm_).area_mm2;
  if (section_.cap_area_mm2 > 0.0 && section_.cap_width_mm > 0.0) {
    cap_mean_mm_ = section_.cap_area_mm2 / section_.cap_width_mm;
  }
}

base::Outcome<std::vector<Bead>> GrooveSearch::run() {
  try_single();
  if (!best_) {
    try_roots();
  }
  if (best_) {
    return lay(*best_);
  }
  return misses_.refusal(request_);
}

double GrooveSearch::layer_area_mm2(double low_mm, double high_mm, bool last) const {
  return strip_between(section_, low_mm, high_mm).area_mm2 + (last ? section_.cap_area_mm2 : 0.0);
}

double GrooveSearch::layer_width_mm(double high_mm, bool last) const {
  const Slice walls = walls_at(section_, high_mm);
  const double width_mm = walls.right_mm - walls.left_mm;
  return last ? std::max(width_mm, section_.cap_width_mm) : width_mm;
}

void GrooveSearch::try_single() {
  if (!rows_.has_own_single()) {
    return;
  }
  const double area_mm2 = profile_mm2_ + section_.cap_area_mm2;
  Excess excess;
  for (const PassRole role : {PassRole::single, PassRole::root}) {
    excess.compare(area_mm2, caps(role).area_mm2);
    excess.compare(height_mm_ + cap_mean_mm_, caps(role).thickness_mm);
    excess.compare(layer_width_mm(height_mm_, true), caps(role).split_mm);
  }
  if (excess.any()) {
    return;
  }
  if (rows_.pick(PassRole::single, area_mm2) == nullptr) {
    misses_.add({PassRole::single, area_mm2, 1, {}});
    return;
  }
  GroovePlan plan;
  plan.single = true;
  plan.passes = 1;
  plan.root_height_mm = height_mm_;
  best_ = plan;
}

double GrooveSearch::root_height_mm(double bead_mm2, int beads) const {
  const double area_mm2 = bead_mm2 * beads;
  return area_mm2 >= profile_mm2_ ? height_mm_ : section::height_of_area_mm(section_, area_mm2);
}

Excess GrooveSearch::root_excess(double bead_mm2, int beads) const {
  const Caps& bound = caps(PassRole::root);
  const double top_mm = root_height_mm(bead_mm2, beads);
  const double width_mm = layer_width_mm(top_mm, false);
  Excess excess;
  excess.compare(bead_mm2, bound.area_mm2);
  excess.compare(top_mm, bound.thickness_mm);
  if (beads < split_beads(width_mm, bound.split_mm)) {
    excess.compare((beads == 1 ? 1.0 : 1.5) * width_mm / beads, bound.split_mm);
  }
  return excess;
}

void GrooveSearch::try_roots() {
  for (const PassRole role : {PassRole::root, PassRole::cap}) {
    if (rows_.rows(role).empty()) {
      misses_.add_missing_role(role);
      return;
    }
  }
  const int beads = split_beads(layer_width_mm(0.0, false), caps(PassRole::root).split_mm);
  for (const RowRange& range : rows_.rows(PassRole::root)) {
    if (range.least_mm2 > range.most_mm2) {
      misses_.add({PassRole::root, range.preferred_mm2, beads, {}});
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
    const double top_mm = std::min(height_mm_, bound.thickness_mm.value);
    const double most_mm2 =
        std::min(bound.area_mm2.value, strip_between(section_, 0.0, top_mm).area_mm2 / beads);
    if (most_mm2 < bead_mm2) {
      misses_.add({PassRole::root, most_mm2, beads, excess.id()});
    }
    return;
  }
  GroovePlan plan;
  plan.root_beads = beads;
  plan.root_height_mm = root_height_mm(bead_mm2, beads);
  plan.root_bead_mm2 = std::min(bead_mm2, profile_mm2_ / beads);
  const RowRange* row = rows_.pick(PassRole::root, plan.root_bead_mm2);
  if (row == nullptr) {
    misses_.add({PassRole::root, plan.root_bead_mm2, beads, {}});
    return;
  }
  if (plan.root_height_mm >= height_mm_ && section_.cap_area_mm2 <= 0.0) {
    return;  // nothing would be left for the cap
  }
  plan.passes = beads;
  plan.departure = row->departure(plan.root_bead_mm2);
  try_layers(plan);
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

void GrooveSearch::try_layers(const GroovePlan& root) {
  const double rest_mm = height_mm_ - root.root_height_mm;
  const int last_count = rest_mm > 0.0 ? most_layers : 1;
  std::string_view limited_by;
  for (int layers = 1; layers <= last_count; ++layers) {
    if (best_ && root.passes + layers > best_->passes) {
      return;
    }
    const Cuts cuts = cut(rest_mm, layers);
    const Excess excess = layers_excess(cuts, layers);
    if (excess.any()) {
      limited_by = excess.id();
      continue;
    }
    if (layers > 1 && rows_.rows(PassRole::fill).empty()) {
      misses_.add_missing_role(PassRole::fill);
      return;
    }
    GroovePlan plan = root;
    plan.layers = layers;
    plan.layers_limited_by = limited_by;
    limited_by = {};
    const bool closes = count_beads(plan, cuts);
    const bool better = !best_ || plan.passes < best_->passes ||
                        (plan.passes == best_->passes && plan.departure < best_->departure);
    if (closes && better) {
      best_ = plan;
    }
    if (!closes && is_too_thin(cuts, layers)) {
      return;  // thinner layers need still faster travel
    }
  }
  if (!limited_by.empty()) {
    const Cuts thinnest = cut(rest_mm, last_count);
    misses_.add_barred({PassRole::cap,
                        thinnest.last_mm + cap_mean_mm_,
                        caps(PassRole::cap).thickness_mm.value,
                        limited_by});
  }
}

bool GrooveSearch::is_too_thin(const Cuts& cuts, int layers) const {
  const double widest_mm2 = cuts.layer_mm * layer_width_mm(height_mm_, false);
  return layers > 1 && widest_mm2 < rows_.least_mm2(PassRole::fill);
}

bool GrooveSearch::count_beads(GroovePlan& plan, const Cuts& cuts) {
  double low_mm = plan.root_height_mm;
  for (int layer = 1; layer <= plan.layers; ++layer) {
    const bool last = layer == plan.layers;
    const double high_mm = last ? height_mm_ : low_mm + cuts.layer_mm;
    const Abreast abreast = beads_abreast(last ? PassRole::cap : PassRole::fill,
                                          layer_area_mm2(low_mm, high_mm, last),
                                          layer_width_mm(high_mm, last));
    if (abreast.count == 0) {
      return false;
    }
    plan.passes += abreast.count;
    plan.departure = std::max(plan.departure, abreast.departure);
    low_mm = high_mm;
    if (best_ && plan.passes + plan.layers - layer > best_->passes) {
      return false;  // each layer to come takes at least one
    }
  }
  return true;
}

Abreast GrooveSearch::beads_abreast(PassRole role, double area_mm2, double width_mm) {
  const Caps& bound = caps(role);
  const int by_area = area_beads(area_mm2, bound.area_mm2);
  const int by_width = split_beads(width_mm, bound.split_mm);
  Abreast abreast;
  abreast.count = std::max(by_area, by_width);
  if (abreast.count > 1) {
    abreast.limited_by = by_area >= by_width ? bound.area_mm2.id : bound.split_mm.id;
  }
  const std::string_view barred_by = abreast.limited_by;
  const double least_mm2 = rows_.least_mm2(role);
  for (; abreast.count <= most_beads_abreast; ++abreast.count) {
    const double bead_mm2 = area_mm2 / abreast.count;
    if (const RowRange* row = rows_.pick(role, bead_mm2)) {
      abreast.departure = row->departure(bead_mm2);
      return abreast;
    }
    misses_.add({role, bead_mm2, abreast.count, barred_by});
    if (bead_mm2 < least_mm2) {
      break;
    }
    abreast.limited_by = rows_.rows(role).front().row->id;
  }
  return {};
}

std::vector<Bead> GrooveSearch::lay(const GroovePlan& plan) {
  std::vector<Bead> beads;
  beads.reserve(static_cast<std::size_t>(plan.passes));
  Bead like;
  like.layer = 1;
  like.role = plan.single ? PassRole::single : PassRole::root;
  if (!plan.single) {
    const RowRange* row = rows_.pick(PassRole::root, plan.root_bead_mm2);
    if (row->preferred_mm2 > plan.root_bead_mm2) {
      like.limited_by = root_excess(row->preferred_mm2, plan.root_beads).id();
    }
  }
  append_layer(beads,
               section_,
               layer_shape(section_, 0.0, plan.root_height_mm, plan.single),
               like,
               plan.root_beads,
               plan.root_height_mm);
  const Cuts cuts = cut(height_mm_ - plan.root_height_mm, std::max(1, plan.layers));
  double low_mm = plan.root_height_mm;
  for (int layer = 1; layer <= plan.layers; ++layer) {
    const bool last = layer == plan.layers;
    const double high_mm = last ? height_mm_ : low_mm + cuts.layer_mm;
    like.layer = layer + 1;
    like.role = last ? PassRole::cap : PassRole::fill;
    const Abreast abreast = beads_abreast(
        like.role, layer_area_mm2(low_mm, high_mm, last), layer_width_mm(high_mm, last));
    like.limited_by = abreast.limited_by.empty() ? plan.layers_limited_by : abreast.limited_by;
    append_layer(beads,
                 section_,
                 layer_shape(section_, low_mm, high_mm, last),
                 like,
                 abreast.count,
                 high_mm - low_mm + (last ? cap_mean_mm_ : 0.0));
    low_mm = high_mm;
  }
  return beads;
}

}  // namespace

base::Outcome<std::vector<Bead>> lay_groove(const StackRequest& request, const RowTable& rows) {
  return GrooveSearch(request, rows).run();
}

}  // namespace seamturn::pass

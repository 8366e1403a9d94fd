// SPDX-License-Identifier: MIT
// The passes of one choice of root and layers, and bounds below them.
#include <algorithm>

#include "pass/detail_groove_search.hpp"

namespace seamturn::pass {

using process::PassRole;

void GrooveSearch::find_split_heights() {
  const Bound& split_mm = caps(PassRole::fill).split_mm;
  const int most = std::min(most_beads_abreast, split_beads(opening_mm_, split_mm));
  for (int beads = 1; beads < most; ++beads) {
    // The widest layer of so many beads.
    const double width_mm = (beads == 1 ? 1.0 : beads / 1.5) * split_mm.value;
    split_heights_mm_.push_back(
        profile_.wider_above_mm(width_mm * (1.0 + 10.0 * base::rounding_ratio)));
  }
}

int GrooveSearch::least_fill_passes(double root_top_mm, const Cuts& cuts, int layers) const {
  int passes = layers - 1;
  for (const double height_mm : split_heights_mm_) {
    const double below = (height_mm - root_top_mm) / cuts.layer_mm + base::rounding_ratio;
    if (below >= layers - 1) {
      break;
    }
    passes += layers - 1 - (below > 0.0 ? static_cast<int>(below) : 0);
  }
  return passes;
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
           best.arc_s_mm * (1.0 + 10.0 * base::rounding_ratio);
  }
  const int passes = score.passes + least_passes(rows, area_mm2);
  return passes > best.passes || (passes == best.passes && score.departure >= best.departure);
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

GrooveLayer GrooveSearch::root_layer(const GroovePlan& plan) const {
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
  return root;
}

std::vector<GrooveLayer> GrooveSearch::write_out(const GroovePlan& plan) const {
  std::vector<GrooveLayer> layers = {root_layer(plan)};
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

}  // namespace seamturn::pass

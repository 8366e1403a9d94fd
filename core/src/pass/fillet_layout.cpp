// SPDX-License-Identifier: MIT
// Fillets: layer k has k beads. Beads of one area put the faces of the layers at legs that grow
// with the square root of the metal laid so far.
#include <algorithm>
#include <cmath>

#include "pass/detail_layout.hpp"
#include "pass/detail_rules.hpp"

namespace seamturn::pass {
namespace {

using process::PassRole;
using section::Point;

constexpr int most_fillet_layers = 60;

// Torch off the bisector in layers of several beads, so that it looks into the corner between the
// layer below and the plate. From memory of shop practice: 55 to 60 degrees above the first plate
// for the bead beside it, 35 to 40 for the bead beside the second, where 45 is the bisector. The
// first plate lies at x > 0.
constexpr Angle lean_at_first_plate = Angle::deg(-12.0);
constexpr Angle lean_at_second_plate = Angle::deg(8.0);

[[nodiscard]] int triangular(int layers) {
  return layers * (layers + 1) / 2;
}

/// So many passes and how they share the area: the root bead and all others.
struct FilletPlan {
  int passes = 1;
  double root_mm2 = 0.0;
  double other_mm2 = 0.0;
};

[[nodiscard]] int layers_of(int passes) {
  if (passes == 2) {
    return 2;
  }
  int layers = 1;
  while (triangular(layers + 1) <= passes) {
    ++layers;
  }
  return layers;
}

/// Beads of a layer; passes beyond a triangular number widen the layers from the last one down.
[[nodiscard]] int beads_of(int passes, int layer) {
  const int layers = layers_of(passes);
  if (layer == 1 || passes == 2) {
    return 1;
  }
  const int extra = passes - triangular(layers);
  return layer + extra / (layers - 1) + (layers - layer < extra % (layers - 1) ? 1 : 0);
}

[[nodiscard]] PassRole role_of(int layer, int layers) {
  if (layers == 1) {
    return PassRole::single;
  }
  return layer == 1 ? PassRole::root : layer == layers ? PassRole::cap : PassRole::fill;
}

class FilletSearch {
 public:
  FilletSearch(const section::WeldSection& section, const Rules& rules)
      : section_(section), rules_(rules), rows_(rules.rows), misses_(rules.rows) {}

  [[nodiscard]] base::Outcome<std::vector<Bead>> run() {
    const auto plan = rules_.by_time() ? find_fastest() : find_plan();
    if (!plan) {
      return misses_.refusal(rules_.request);
    }
    find_limit(*plan);
    return lay(*plan);
  }

 private:
  [[nodiscard]] const Caps& caps(PassRole role) const { return rules_.caps_of(role); }
  [[nodiscard]] bool is_within_caps(const FilletPlan& plan);
  [[nodiscard]] bool closes(const FilletPlan& plan);
  [[nodiscard]] bool closes(const FilletPlan& plan, PassRole role, double area_mm2);
  [[nodiscard]] FilletPlan equal_beads(int passes) const;
  [[nodiscard]] std::optional<FilletPlan> adapted_root(int passes) const;
  [[nodiscard]] std::optional<FilletPlan> find_plan();
  /// For the least arc time: every count of passes.
  [[nodiscard]] std::optional<FilletPlan> find_fastest();
  /// The best among the sizes of the root at which something begins or ends.
  [[nodiscard]] std::optional<FilletPlan> best_root(int passes);
  [[nodiscard]] std::vector<double> root_sizes(int passes) const;
  [[nodiscard]] Score score_of(const FilletPlan& plan) const;
  /// Sets limited_by_ to what rules out the count of passes below the plan's.
  void find_limit(const FilletPlan& plan);
  [[nodiscard]] std::vector<Bead> lay(const FilletPlan& plan) const;

  const section::WeldSection& section_;
  const Rules& rules_;
  const RowTable& rows_;
  Misses misses_;
  std::string_view barred_by_;   // limit that a larger bead would break
  std::string_view limited_by_;  // limit or settings row that rules out fewer passes
};

/// Share of the legs at the face of a layer, from the metal laid up to it.
[[nodiscard]] double leg_share(const FilletPlan& plan, int passes_below, double area_mm2) {
  if (passes_below == 0) {
    return 0.0;
  }
  return passes_below == plan.passes
             ? 1.0
             : std::sqrt((plan.root_mm2 + (passes_below - 1) * plan.other_mm2) / area_mm2);
}

bool FilletSearch::is_within_caps(const FilletPlan& plan) {
  const int layers = layers_of(plan.passes);
  Excess excess;
  if (layers == 1) {
    excess.compare(std::max(section_.leg_1_mm, section_.leg_2_mm), caps(PassRole::single).leg_mm);
  }
  double below = 0.0;
  int laid = 0;
  for (int layer = 1; layer <= layers; ++layer) {
    const int beads = beads_of(plan.passes, layer);
    const Caps& bound = caps(role_of(layer, layers));
    laid += beads;
    const double share = leg_share(plan, laid, section_.area_mm2);
    excess.compare(layer == 1 ? plan.root_mm2 : plan.other_mm2, bound.area_mm2);
    excess.compare(section_.throat_mm * (share - below), bound.thickness_mm);
    const double width_mm = section_.opening_mm * share;
    if (beads < split_beads(width_mm, bound.split_mm)) {
      excess.compare((beads == 1 ? 1.0 : 1.5) * width_mm / beads, bound.split_mm);
    }
    below = share;
  }
  if (excess.any()) {
    barred_by_ = limited_by_ = excess.id();
  }
  return !excess.any();
}

bool FilletSearch::closes(const FilletPlan& plan, PassRole role, double area_mm2) {
  if (rows_.pick(role, area_mm2) != nullptr) {
    return true;
  }
  if (rows_.rows(role).empty()) {
    misses_.add_missing_role(role);
  } else {
    misses_.add({role, area_mm2, plan.passes, barred_by_});
    limited_by_ = rows_.rows(role).front().row->id;
  }
  return false;
}

bool FilletSearch::closes(const FilletPlan& plan) {
  const int layers = layers_of(plan.passes);
  if (layers == 1) {
    return closes(plan, PassRole::single, plan.root_mm2);
  }
  // All three are asked, so that the refusal may choose among all misses.
  const bool root = closes(plan, PassRole::root, plan.root_mm2);
  const bool fill = layers == 2 || closes(plan, PassRole::fill, plan.other_mm2);
  const bool cap = closes(plan, PassRole::cap, plan.other_mm2);
  return root && fill && cap;
}

std::optional<FilletPlan> FilletSearch::find_plan() {
  int layers = 1;
  while (layers <= most_fillet_layers && !is_within_caps(equal_beads(triangular(layers)))) {
    ++layers;
  }
  const FilletPlan triangle = equal_beads(triangular(layers));
  if (closes(triangle)) {
    return triangle;
  }
  const double least_mm2 =
      std::min(rows_.least_mm2(PassRole::root), rows_.least_mm2(PassRole::cap));
  for (int passes = std::max(2, triangular(layers - 1) + 1);
       passes <= triangular(most_fillet_layers);
       ++passes) {
    const FilletPlan equal = equal_beads(passes);
    if (2.0 * equal.other_mm2 < least_mm2) {
      break;  // more passes need still faster travel
    }
    if (is_within_caps(equal) && closes(equal)) {
      return equal;
    }
    if (const auto adapted = adapted_root(passes)) {
      if (is_within_caps(*adapted) && closes(*adapted)) {
        return adapted;
      }
    }
    if (const auto other = best_root(passes)) {
      return other;
    }
  }
  return std::nullopt;
}

// Time is linear in the root's size between the sizes at which a row of it or of the others begins
// or ends, so it is least at one of those; a limit of area ends a row's range as well.
std::vector<double> FilletSearch::root_sizes(int passes) const {
  const double all_mm2 = section_.area_mm2;
  std::vector<double> sizes = {all_mm2 / passes};
  if (passes == 1) {
    return sizes;
  }
  for (const PassRole role : {PassRole::root, PassRole::fill, PassRole::cap}) {
    const auto add = [&](double bead_mm2) {
      const double root_mm2 = role == PassRole::root ? bead_mm2 : all_mm2 - (passes - 1) * bead_mm2;
      if (root_mm2 > 0.0 && root_mm2 < all_mm2) sizes.push_back(root_mm2);
    };
    for (const RowRange& range : rows_.rows(role)) {
      add(range.least_mm2);
      add(range.most_mm2);
    }
    add(caps(role).area_mm2.value);
  }
  // The root's face grows with the square root of its metal.
  const Caps& bound = caps(PassRole::root);
  for (const double share : {bound.thickness_mm.value / section_.throat_mm,
                             bound.split_mm.value / section_.opening_mm}) {
    if (share < 1.0) sizes.push_back(share * share * all_mm2);
  }
  return sizes;
}

Score FilletSearch::score_of(const FilletPlan& plan) const {
  const int layers = layers_of(plan.passes);
  Score score;
  const auto add = [&](PassRole role, double bead_mm2, int beads) {
    if (beads > 0) score.add(*rows_.pick(role, bead_mm2), bead_mm2, beads);
  };
  add(role_of(1, layers), plan.root_mm2, 1);
  if (layers > 1) {
    const int cap = beads_of(plan.passes, layers);
    add(PassRole::fill, plan.other_mm2, plan.passes - 1 - cap);
    add(PassRole::cap, plan.other_mm2, cap);
  }
  return score;
}

std::optional<FilletPlan> FilletSearch::best_root(int passes) {
  std::optional<FilletPlan> best;
  Score best_score;
  for (const double root_mm2 : root_sizes(passes)) {
    const double others_mm2 = section_.area_mm2 - root_mm2;
    const FilletPlan plan{passes, root_mm2, passes == 1 ? root_mm2 : others_mm2 / (passes - 1)};
    if (!is_within_caps(plan) || !closes(plan)) {
      continue;
    }
    const Score score = score_of(plan);
    if (!best || is_better(score, best_score, rules_.by_time())) {
      best = plan;
      best_score = score;
    }
  }
  return best;
}

std::optional<FilletPlan> FilletSearch::find_fastest() {
  std::optional<FilletPlan> best;
  const double least_mm2 =
      std::min(rows_.least_mm2(PassRole::root), rows_.least_mm2(PassRole::cap));
  for (int passes = 1; passes <= triangular(most_fillet_layers); ++passes) {
    if (passes > 1 && 2.0 * section_.area_mm2 / passes < least_mm2) {
      break;  // more passes need still faster travel
    }
    const auto plan = best_root(passes);
    if (plan && (!best || is_better(score_of(*plan), score_of(*best), true))) {
      best = plan;
    }
  }
  return best;
}

void FilletSearch::find_limit(const FilletPlan& plan) {
  limited_by_ = {};
  if (plan.passes > 1) {
    const int layers = layers_of(plan.passes);
    const bool triangle = plan.passes == triangular(layers);
    const FilletPlan fewer = equal_beads(triangle ? triangular(layers - 1) : plan.passes - 1);
    static_cast<void>(is_within_caps(fewer) && closes(fewer));
  }
}

FilletPlan FilletSearch::equal_beads(int passes) const {
  const double area_mm2 = section_.area_mm2 / passes;
  return {passes, area_mm2, area_mm2};
}

std::optional<FilletPlan> FilletSearch::adapted_root(int passes) const {
  const auto root_mm2 = rows_.nearest_mm2(
      PassRole::root, section_.area_mm2 / passes, caps(PassRole::root).area_mm2.value);
  if (!root_mm2 || *root_mm2 >= section_.area_mm2) {
    return std::nullopt;
  }
  return FilletPlan{passes, *root_mm2, (section_.area_mm2 - *root_mm2) / (passes - 1)};
}

/// The toes of the whole fillet: first plate's, second plate's.
struct Toes {
  Point first;
  Point second;
  [[nodiscard]] Point at(double share, double s) const {
    return {share * ((1.0 - s) * first.x_mm + s * second.x_mm),
            share * ((1.0 - s) * first.y_mm + s * second.y_mm)};
  }
};

[[nodiscard]] Toes find_toes(const section::WeldSection& section) {
  // Up to the shorter leg both walls are the plates, so the second slice lies on both.
  SEAMTURN_REQUIRE(section.profile.size() >= 2, section.profile.size());
  const section::Slice& on_walls = section.profile[1];
  const auto along = [&](double x_mm, double leg_mm) {
    const double scale = leg_mm / std::hypot(x_mm, on_walls.y_mm);
    return Point{scale * x_mm, scale * on_walls.y_mm};
  };
  return {along(on_walls.right_mm, section.leg_1_mm), along(on_walls.left_mm, section.leg_2_mm)};
}

std::vector<Bead> FilletSearch::lay(const FilletPlan& plan) const {
  std::vector<Bead> beads;
  beads.reserve(static_cast<std::size_t>(plan.passes));
  const Toes toes = find_toes(section_);
  const int layers = layers_of(plan.passes);
  double below = 0.0;
  int laid = 0;
  for (int layer = 1; layer <= layers; ++layer) {
    const int count = beads_of(plan.passes, layer);
    laid += count;
    const double share = leg_share(plan, laid, section_.area_mm2);
    // Centroid of a sector of the triangle between two layer faces.
    const double middle =
        2.0 / 3.0 * (share * share + share * below + below * below) / (share + below);
    for (int i = 0; i < count; ++i) {
      Bead bead;
      bead.role = role_of(layer, layers);
      bead.layer = layer;
      bead.bead = i + 1;
      bead.area_mm2 = layer == 1 ? plan.root_mm2 : plan.other_mm2;
      bead.centre = toes.at(middle, (i + 0.5) / count);
      const double across = count == 1 ? 0.5 : static_cast<double>(i) / (count - 1);
      bead.aim = toes.at(below, across);
      bead.work_angle = count == 1
                            ? Angle()
                            : (1.0 - across) * lean_at_first_plate + across * lean_at_second_plate;
      bead.limited_by = limited_by_;
      beads.push_back(bead);
    }
    below = share;
  }
  return beads;
}

}  // namespace

base::Outcome<std::vector<Bead>> lay_fillet(const section::WeldSection& section,
                                            const Rules& rules) {
  return FilletSearch(section, rules).run();
}

}  // namespace seamturn::pass

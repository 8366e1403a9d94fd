// SPDX-License-Identifier: MIT
// The choice of settings against an exhaustive count of small cases (origin: cross). Nothing here
// uses the room's own search: areas, ranges and counts are written out anew from
// docs/methods/pass-stack.md.
#include <doctest/doctest.h>

#include <functional>

#include "pass/grid_case.hpp"

namespace seamturn::tests {
namespace {

using base::Random;
using process::LinkedSettings;
using process::PassRole;

/// What a stack or a part of one costs; infinite passes: it cannot be laid.
struct Cost {
  double passes = 0.0;
  double departure = 0.0;
  double time_s = 0.0;
  bool can = true;
};

Cost sum(const Cost& a, const Cost& b) {
  return {
      a.passes + b.passes, std::max(a.departure, b.departure), a.time_s + b.time_s, a.can && b.can};
}

using Less = std::function<bool(const Cost&, const Cost&)>;

bool fewer(const Cost& a, const Cost& b) {
  return a.can &&
         (!b.can || a.passes < b.passes || (a.passes == b.passes && a.departure < b.departure));
}
bool faster(const Cost& a, const Cost& b) {
  return a.can && (!b.can || a.time_s < b.time_s);
}

/// So many beads of one size by every row that lays them.
Cost beads(const Case& one, PassRole role, double area_mm2, int count, const Less& less) {
  Cost best;
  best.can = false;
  for (const LinkedSettings& row : one.bench.settings) {
    if (row.role != role || !lays(one, row, area_mm2) ||
        area_mm2 > one.most_mm2 * (1.0 - one.margin) * (1.0 + 1e-9)) {
      continue;
    }
    const Cost cost{static_cast<double>(count),
                    departure(row, area_mm2),
                    500.0 * count * area_mm2 / laid_mm3_s(row),
                    true};
    if (less(cost, best)) best = cost;
  }
  return best;
}

Cost cost_of(const Case& one, const pass::PassStack& stack) {
  Cost cost;
  for (const pass::Pass& pass : stack.passes) {
    for (const LinkedSettings& row : one.bench.settings) {
      if (row.id == pass.settings) {
        CHECK(row.role == pass.role);
        CHECK(lays(one, row, pass.area_mm2));
        CHECK(pass.area_mm2 <= one.most_mm2 * (1.0 - one.margin) * (1.0 + 2e-9));
        cost.departure = std::max(cost.departure, departure(row, pass.area_mm2));
      }
    }
    cost.passes += 1.0;
    cost.time_s += pass.arc_time_s;
  }
  return cost;
}

/// Beads of a fillet's layers: triangles, and 2 = 1+1; what goes beyond lies in the upper layers.
int fillet_layers(int passes) {
  int layers = 1;
  while ((layers + 1) * (layers + 2) / 2 <= passes) ++layers;
  return passes == 2 ? 2 : layers;
}

int fillet_cap_beads(int passes) {
  const int layers = fillet_layers(passes);
  if (passes == 2 || layers == 1) return 1;
  const int extra = passes - layers * (layers + 1) / 2;
  return layers + (extra + layers - 2) / (layers - 1);
}

/// The root at every size of a fine grid, the rest alike.
Cost fillet_cost(const Case& one, int passes, const Less& less) {
  const double all_mm2 = one.bench.section.area_mm2;
  if (passes == 1) {
    return beads(one, PassRole::single, all_mm2, 1, less);
  }
  const int cap = fillet_cap_beads(passes);
  const int fill = passes - 1 - cap;
  Cost best;
  best.can = false;
  for (double root_mm2 = 5.0; root_mm2 < std::min(60.0, all_mm2); root_mm2 += 0.1) {
    const double other_mm2 = (all_mm2 - root_mm2) / (passes - 1);
    Cost cost = beads(one, PassRole::root, root_mm2, 1, less);
    if (fill > 0) cost = sum(cost, beads(one, PassRole::fill, other_mm2, fill, less));
    cost = sum(cost, beads(one, PassRole::cap, other_mm2, cap, less));
    if (less(cost, best)) best = cost;
  }
  return best;
}

/// A V of 60 degrees without root face, its areas by hand.
struct Vee {
  double thickness_mm = 0.0;
  double gap_mm = 0.0;
  double cap_mm2 = 0.0;
  double cap_mean_mm = 0.0;
  [[nodiscard]] double below_mm2(double y_mm) const {
    return gap_mm * y_mm + y_mm * y_mm / std::sqrt(3.0);
  }
  [[nodiscard]] double height_mm(double area_mm2) const {
    const double half = 0.5 * gap_mm * std::sqrt(3.0);
    return std::sqrt(half * half + area_mm2 * std::sqrt(3.0)) - half;
  }
};

Cost layer_cost(const Case& one, PassRole role, double area_mm2, const Less& less) {
  Cost best;
  best.can = false;
  for (int count = 1; count <= 30; ++count) {
    const Cost cost = beads(one, role, area_mm2 / count, count, less);
    if (less(cost, best)) best = cost;
  }
  return best;
}

Cost vee_cost(const Case& one, const Vee& vee, double root_mm2, const Less& less) {
  Cost best;
  best.can = false;
  const Cost root = beads(one, PassRole::root, root_mm2, 1, less);
  const double bottom_mm = vee.height_mm(root_mm2);
  const double rest_mm = vee.thickness_mm - bottom_mm;
  for (int layers = 1; layers <= 20 && root.can; ++layers) {
    double layer_mm = (rest_mm + vee.cap_mean_mm) / layers;
    if (layer_mm - vee.cap_mean_mm < layer_mm / 3.0) layer_mm = rest_mm / (layers - 2.0 / 3.0);
    if (layers == 1) layer_mm = rest_mm;
    const double most_mm = one.most_layer_mm * (1.0 - one.margin) * (1.0 + 1e-9);
    const double last_mm = rest_mm - (layers - 1) * layer_mm + vee.cap_mean_mm;
    if ((layers > 1 && layer_mm > most_mm) || last_mm > most_mm) continue;
    Cost cost = root;
    if (rest_mm <= 0.0 && layers > 1) break;
    for (int layer = 1; layer <= layers; ++layer) {
      const double low_mm = bottom_mm + (layer - 1) * layer_mm;
      const bool last = layer == layers;
      const double high_mm = last ? vee.thickness_mm : low_mm + layer_mm;
      const double area_mm2 =
          vee.below_mm2(high_mm) - vee.below_mm2(low_mm) + (last ? vee.cap_mm2 : 0.0);
      cost = sum(cost, layer_cost(one, last ? PassRole::cap : PassRole::fill, area_mm2, less));
    }
    if (less(cost, best)) best = cost;
  }
  return best;
}

/// Every root size the method page names: shares of the preferred one, and both ends.
Cost vee_cost(const Case& one, const Vee& vee, const Less& less) {
  Cost best;
  best.can = false;
  for (const LinkedSettings& row : one.bench.settings) {
    if (row.role != PassRole::root) continue;
    const auto attempt = [&](double root_mm2) {
      if (!lays(one, row, root_mm2)) return;
      const double all_mm2 = vee.below_mm2(vee.thickness_mm);
      const Cost cost = vee_cost(one, vee, std::min(root_mm2, all_mm2), less);
      if (less(cost, best)) best = cost;
    };
    const double preferred_mm2 = laid_mm3_s(row) / row.travel_preferred_mm_s;
    for (int percent = 40; percent <= 100; percent += 5) attempt(preferred_mm2 * percent / 100.0);
    for (const int percent : {110, 120, 135, 150}) attempt(preferred_mm2 * percent / 100.0);
    attempt(laid_mm3_s(row) / row.travel_max_mm_s / (1.0 - one.margin));
    attempt(laid_mm3_s(row) / row.travel_min_mm_s / (1.0 + one.margin));
  }
  return best;
}

Vee set_vee(Random& random, Case& one) {
  Vee vee;
  vee.thickness_mm = random.between(6.0, 25.0);
  vee.gap_mm = random.between(0.0, 4.0);
  one.bench.section = groove_section(
      {vee.thickness_mm, vee.gap_mm, 0.0, 30.0, 30.0, random.between(0.5, 3.0), 1.0});
  one.bench.settings.resize(6);  // no single rows: a root and layers in every case
  one.most_layer_mm = random.between(4.0, 9.0);
  process::BeadLimit thin = one.bench.limits.front();
  thin.id = "thin";
  thin.roles = {PassRole::fill, PassRole::cap};
  thin.area_max_mm2.reset();
  thin.thickness_max_mm = one.most_layer_mm;
  one.bench.limits.push_back(thin);
  vee.cap_mm2 = one.bench.section.cap_area_mm2;
  vee.cap_mean_mm = vee.cap_mm2 / one.bench.section.cap_width_mm;
  return vee;
}

}  // namespace

TEST_SUITE("pass/grid") {
  TEST_CASE("for any small fillet, an exhaustive grid finds no smaller count beyond the triangle") {
    Random random(base::named_seed(7, "pass/grid/fillet"));
    int laid = 0;
    for (int round = 0; round < 150; ++round) {
      INFO("named_seed(7, pass/grid/fillet), round " << round);
      Case one = random_case(random, process::WeldFamily::fillet);
      const double leg_mm = random.between(4.0, 18.0);
      one.bench.section = fillet_section(leg_mm, leg_mm);
      // The smallest triangle of beads within the limit, if it closes; else the first count that
      // does, from the triangle before upwards.
      int layers = 1;
      while (one.bench.section.area_mm2 / (layers * (layers + 1) / 2) > one.most_mm2) ++layers;
      const int triangle = layers * (layers + 1) / 2;
      const double bead_mm2 = one.bench.section.area_mm2 / triangle;
      bool closes = beads(one, PassRole::single, bead_mm2, 1, fewer).can;
      if (triangle > 1) {
        closes = beads(one, PassRole::root, bead_mm2, 1, fewer).can &&
                 beads(one, PassRole::cap, bead_mm2, 1, fewer).can &&
                 (triangle == 3 || beads(one, PassRole::fill, bead_mm2, 1, fewer).can);
      }
      int expected = closes ? triangle : 0;
      for (int passes = std::max(2, layers * (layers - 1) / 2 + 1); expected == 0 && passes < 40;
           ++passes) {
        if (fillet_cost(one, passes, fewer).can) expected = passes;
      }
      const auto stack = pass::make_pass_stack(request_for(one, pass::StackAim::preferred_point));
      CHECK(stack.has_value() >= (expected > 0));
      if (stack) {
        ++laid;
        CHECK(cost_of(one, *stack).passes <= expected + (expected == 0 ? 100 : 0));
      }
    }
    CHECK(laid > 100);
  }

  TEST_CASE("for any small fillet, an exhaustive grid finds no shorter arc time within a margin") {
    Random random(base::named_seed(7, "pass/grid/fillet-time"));
    int laid = 0;
    for (int round = 0; round < 100; ++round) {
      INFO("named_seed(7, pass/grid/fillet-time), round " << round);
      Case one = random_case(random, process::WeldFamily::fillet);
      one.margin = random.between(0.02, 0.15);
      const double leg_mm = random.between(4.0, 16.0);
      one.bench.section = fillet_section(leg_mm, leg_mm);
      Cost best;
      best.can = false;
      for (int passes = 1; passes <= 24; ++passes) {
        const Cost cost = fillet_cost(one, passes, faster);
        if (faster(cost, best)) best = cost;
      }
      const auto stack = pass::make_pass_stack(request_for(one, pass::StackAim::least_arc_time));
      CHECK(stack.has_value() >= best.can);
      if (stack && best.can) {
        ++laid;
        const Cost got = cost_of(one, *stack);
        CHECK(got.time_s <= best.time_s * (1.0 + 1e-8));
        // The grid's step of 0.1 mm2 is all that may separate the two.
        CHECK(got.time_s >= best.time_s * 0.98);
      }
    }
    CHECK(laid > 70);
  }

  TEST_CASE("for any small V, the count of passes and its departure are the grid's") {
    Random random(base::named_seed(7, "pass/grid/vee"));
    int laid = 0;
    for (int round = 0; round < 150; ++round) {
      INFO("named_seed(7, pass/grid/vee), round " << round);
      Case one = random_case(random, process::WeldFamily::groove);
      const Vee vee = set_vee(random, one);
      const Cost best = vee_cost(one, vee, fewer);
      const auto stack = pass::make_pass_stack(request_for(one, pass::StackAim::preferred_point));
      REQUIRE(stack.has_value() == best.can);
      if (stack) {
        ++laid;
        const Cost got = cost_of(one, *stack);
        CHECK(got.passes == best.passes);
        CHECK(got.departure == doctest::Approx(best.departure).epsilon(1e-7));
      }
    }
    CHECK(laid > 100);
  }

  TEST_CASE("for any small V, the least arc time is the grid's and never longer than preferred") {
    Random random(base::named_seed(7, "pass/grid/vee-time"));
    int laid = 0;
    int shorter = 0;
    for (int round = 0; round < 100; ++round) {
      INFO("named_seed(7, pass/grid/vee-time), round " << round);
      Case one = random_case(random, process::WeldFamily::groove);
      one.margin = random.between(0.02, 0.15);
      const Vee vee = set_vee(random, one);
      const Cost best = vee_cost(one, vee, faster);
      const auto stack = pass::make_pass_stack(request_for(one, pass::StackAim::least_arc_time));
      const auto usual = pass::make_pass_stack(request_for(one, pass::StackAim::preferred_point));
      REQUIRE(stack.has_value() == best.can);
      REQUIRE(stack.has_value() == usual.has_value());
      if (stack) {
        ++laid;
        CHECK(cost_of(one, *stack).time_s == doctest::Approx(best.time_s).epsilon(1e-7));
        CHECK(stack->arc_time_s <= usual->arc_time_s * (1.0 + 1e-9));
        shorter += stack->arc_time_s < usual->arc_time_s * 0.99 ? 1 : 0;
      }
    }
    CHECK(laid > 70);
    CHECK(shorter > 20);  // else the request would be for nothing
  }
}

}  // namespace seamturn::tests

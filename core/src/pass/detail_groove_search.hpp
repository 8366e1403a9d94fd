// SPDX-License-Identifier: MIT
// The search for the layers of a groove: groove_search.cpp goes through the choices,
// groove_count.cpp counts one out and tells which need no counting.
#pragma once

#include <optional>
#include <vector>

#include "pass/detail_groove.hpp"

namespace seamturn::pass {

inline constexpr int most_beads_abreast = 200;

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
  [[nodiscard]] const Caps& caps(process::PassRole role) const { return rules_.caps_of(role); }
  [[nodiscard]] Excess root_excess(double bead_mm2, int beads) const;
  [[nodiscard]] Cuts cut(double rest_mm, int layers) const;
  [[nodiscard]] Abreast beads_abreast(process::PassRole role, const LayerSize& size) const;
  /// The limit that asks for more than one bead abreast; empty: none does.
  [[nodiscard]] std::string_view abreast_limit(process::PassRole role, const LayerSize& size) const;
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
  [[nodiscard]] GrooveLayer root_layer(const GroovePlan& plan) const;
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

}  // namespace seamturn::pass

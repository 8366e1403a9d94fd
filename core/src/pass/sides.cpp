// SPDX-License-Identifier: MIT
#include "seamturn/pass/sides.hpp"

#include <algorithm>
#include <numeric>

#include "seamturn/base/error.hpp"

namespace seamturn::pass {
namespace {

constexpr double rounding_share = 1e-9;

/// One side while it is filled.
class Side {
 public:
  Side(int number, std::span<const double> layers_mm2)
      : number_(number),
        layers_mm2_(layers_mm2),
        all_mm2_(std::accumulate(layers_mm2.begin(), layers_mm2.end(), 0.0)) {}
  [[nodiscard]] int number() const { return number_; }
  [[nodiscard]] bool is_full() const { return next_ == layers_mm2_.size(); }
  [[nodiscard]] double share() const { return is_full() ? 1.0 : laid_mm2_ / all_mm2_; }
  [[nodiscard]] double share_after() const { return (laid_mm2_ + layers_mm2_[next_]) / all_mm2_; }
  [[nodiscard]] double thickest_share() const {
    return *std::max_element(layers_mm2_.begin(), layers_mm2_.end()) / all_mm2_;
  }
  [[nodiscard]] SideStep weld() {
    laid_mm2_ += layers_mm2_[next_++];
    return {SideWork::layer, number_, static_cast<int>(next_)};
  }

 private:
  int number_;
  std::span<const double> layers_mm2_;
  double all_mm2_;
  double laid_mm2_ = 0.0;
  std::size_t next_ = 0;
};

void require_layers(std::span<const double> layers_mm2) {
  SEAMTURN_REQUIRE(!layers_mm2.empty(), layers_mm2.size());
  for (const double area_mm2 : layers_mm2) {
    SEAMTURN_REQUIRE(area_mm2 > 0.0, area_mm2);
  }
}

}  // namespace

std::vector<double> layer_areas_mm2(const PassStack& stack) {
  std::vector<double> areas_mm2(static_cast<std::size_t>(stack.layers), 0.0);
  for (const Pass& pass : stack.passes) {
    areas_mm2.at(static_cast<std::size_t>(pass.layer) - 1) += pass.area_mm2;
  }
  return areas_mm2;
}

std::vector<SideStep> alternate_sides(const SidesRequest& request) {
  require_layers(request.side_1_mm2);
  require_layers(request.side_2_mm2);
  SEAMTURN_REQUIRE(request.first_share >= 0.0 && request.first_share <= 1.0, request.first_share);
  Side first(1, request.side_1_mm2);
  Side second(2, request.side_2_mm2);
  std::vector<SideStep> steps;
  steps.reserve(request.side_1_mm2.size() + request.side_2_mm2.size() + 1);
  do {
    steps.push_back(first.weld());
  } while (!first.is_full() && first.share() < request.first_share - rounding_share);
  if (request.is_gouged) {
    steps.push_back({SideWork::gouge, 2, 0});
  }
  const double most_ahead =
      request.is_balanced ? std::max(first.thickest_share(), second.thickest_share()) : 1.0;
  Side* current = &second;
  Side* other = &first;
  while (!first.is_full() || !second.is_full()) {
    const bool goes_on = !current->is_full() &&
                         (other->is_full() ||
                          current->share_after() - other->share() <= most_ahead + rounding_share);
    if (!goes_on) {
      std::swap(current, other);
    }
    steps.push_back(current->weld());
  }
  return steps;
}

}  // namespace seamturn::pass

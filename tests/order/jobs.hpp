// SPDX-License-Identifier: MIT
// Jobs for the tests of the order: one whose times are whole numbers, and random ones.
#pragma once

#include <string>
#include <vector>

#include "seamturn/base/random.hpp"
#include "seamturn/order/job.hpp"

namespace seamturn::tests {

/// Air moves: 25 mm takes 1 s, 100 mm 2 s, 200 mm 3 s, 300 mm 4 s (trapezoid of 100 mm/s and
/// 100 mm/s2: 2 sqrt(d / a) below 100 mm, d / v + v / a above). Two stances, 10 s there, 12 s back.
inline order::Job whole_number_job() {
  order::Job job;
  job.turn_s = {{0.0, 10.0}, {12.0, 0.0}};
  job.air_speed_mm_s = 100.0;
  job.air_acceleration_mm_s2 = 100.0;
  return job;
}

/// A block of one pass along x, in one stance.
inline order::Block line_block(
    const std::string& name, int zone, double from_mm, double to_mm, double arc_s, int stance = 0) {
  order::Block block;
  block.name = name;
  block.zone = zone;
  order::BlockPass pass;
  pass.arc_s = arc_s;
  block.passes = {pass};
  order::Option option;
  option.stance = stance;
  option.start_W = geom::Vec3(from_mm, 0.0, 0.0);
  option.end_W = geom::Vec3(to_mm, 0.0, 0.0);
  block.options = {option};
  return block;
}

/// What a random job may contain.
struct JobMix {
  int blocks = 5;
  int zones = 3;
  int stances = 3;
  int options_max = 3;
  int passes_max = 2;
  bool gaps = true;
  bool cleaning = true;
  bool loose_precedence = true;  ///< a few `after` besides the chains in the zones
};

inline geom::Vec3 random_point(base::Random& random) {
  const double x = random.between(-800.0, 800.0);
  const double y = random.between(-800.0, 800.0);
  return geom::Vec3(x, y, random.between(0.0, 400.0));
}

inline order::Block random_block(const JobMix& mix, int index, base::Random& random) {
  order::Block block;
  block.name = "b" + std::to_string(index);
  block.zone = static_cast<int>(random.below(static_cast<std::size_t>(mix.zones))) * 7 + 2;
  const auto passes = 1 + random.below(static_cast<std::size_t>(mix.passes_max));
  for (std::size_t k = 0; k < passes; ++k) {
    order::BlockPass pass;
    pass.arc_s = random.below(8) == 0 ? 0.0 : random.between(2.0, 60.0);
    pass.gap_s = mix.gaps && random.below(3) != 0 ? random.between(0.0, 150.0) : 0.0;
    pass.overhead_s = random.between(0.0, 2.0);
    pass.wind_s = random.below(5) == 0 ? random.between(1.0, 10.0) : 0.0;
    pass.unwind_s = random.below(4) == 0 ? random.between(1.0, 20.0) : 0.0;
    block.passes.push_back(pass);
  }
  const auto options = 1 + random.below(static_cast<std::size_t>(mix.options_max));
  for (std::size_t o = 0; o < options; ++o) {
    order::Option option;
    option.stance = static_cast<int>(random.below(static_cast<std::size_t>(mix.stances)));
    option.start_W = random_point(random);
    option.end_W = random.below(5) == 0 ? option.start_W : random_point(random);
    option.course = random.below(3) == 0 ? 1 : 0;
    option.tag = static_cast<int>(o);
    block.options.push_back(option);
  }
  block.touch_s = random.below(4) == 0 ? 0.0 : random.between(1.0, 8.0);
  block.gouge_s = random.below(5) == 0 ? random.between(5.0, 60.0) : 0.0;
  return block;
}

/// Blocks of one zone are chained three times of four; turn times need not keep the triangle rule.
inline order::Job random_job(const JobMix& mix, base::Random& random) {
  order::Job job;
  job.air_speed_mm_s = random.between(50.0, 800.0);
  job.air_acceleration_mm_s2 = random.between(100.0, 3000.0);
  job.home_W = random_point(random);
  job.retract_mm = random.below(4) == 0 ? 0.0 : random.between(20.0, 100.0);
  const auto stances = static_cast<std::size_t>(mix.stances);
  job.turn_s.assign(stances, std::vector<double>(stances, 0.0));
  for (std::size_t from = 0; from < stances; ++from) {
    for (std::size_t to = 0; to < stances; ++to) {
      job.turn_s[from][to] = from == to ? 0.0 : random.between(2.0, 40.0);
    }
  }
  job.start_stance = static_cast<int>(random.below(stances));
  if (mix.cleaning && random.below(2) == 0) {
    job.clean_every_s = random.between(30.0, 120.0);
    job.clean_s = random.between(5.0, 20.0);
  }
  for (int b = 0; b < mix.blocks; ++b) {
    order::Block block = random_block(mix, b, random);
    for (int before = b - 1; before >= 0; --before) {
      const bool same_zone = job.blocks[static_cast<std::size_t>(before)].zone == block.zone;
      const bool chained = same_zone && random.below(4) != 0;
      if (chained || (mix.loose_precedence && random.below(8) == 0)) {
        block.after.push_back(before);
      }
    }
    job.blocks.push_back(block);
  }
  return job;
}

/// How places are heated in a random job.
enum class Heaters { stay_on, for_good, again };

/// Heats two zones of three; blocks of one zone may differ. Drawn after the job, which stays as it
/// is without.
inline void add_heating(order::Job& job, Heaters heaters, base::Random& random) {
  if (heaters == Heaters::stay_on) job.heat_once_s = random.between(30.0, 300.0);
  const int cold_zone = job.blocks[random.below(job.blocks.size())].zone;
  for (order::Block& block : job.blocks) {
    if (block.zone == cold_zone && random.below(2) == 0) continue;
    block.heat_s = random.between(10.0, 120.0);
    if (heaters != Heaters::again) continue;
    block.heat_keep_s = random.below(6) == 0 ? order::never_s : random.between(0.0, 150.0);
    for (order::BlockPass& pass : block.passes) pass.keep_s = random.between(0.0, 200.0);
  }
}

/// Makes some blocks operations of people, a few without a time of their own, and asks for a last
/// stance. Drawn after the job, which stays as it is without.
inline void add_operations(order::Job& job, base::Random& random) {
  int zone = 1000;
  for (order::Block& block : job.blocks) {
    if (random.below(3) != 0) continue;
    block.work_s = random.below(4) == 0 ? 0.0 : random.between(5.0, 200.0);
    block.zone = zone++;
    block.passes.clear();
    block.touch_s = 0.0;
    block.gouge_s = 0.0;
    block.heat_s = 0.0;
    for (order::Option& option : block.options) {
      option.start_W = job.home_W;
      option.end_W = job.home_W;
    }
  }
  job.end_stance = static_cast<int>(random.below(job.turn_s.size()));
}

}  // namespace seamturn::tests

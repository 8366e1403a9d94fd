// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>

#include "seamturn/base/positive.hpp"
#include "seamturn/order/simulate.hpp"

namespace seamturn::order {

namespace {

using base::Refusal;

bool is_time(double seconds) {
  return base::is_amount(seconds);
}

std::string block_text(const Job& job, std::size_t index) {
  const std::string& name = job.blocks[index].name;
  return "block " + (name.empty() ? std::to_string(index) : "'" + name + "'");
}

/// " (sides of joint K)": what asked for the link; nothing where no rule is named.
std::string rule_text(const Job& job, std::size_t block, std::size_t after) {
  for (const LinkReason& reason : job.reasons) {
    const bool is_it = reason.block == static_cast<int>(block) &&
                       reason.after == static_cast<int>(after) && !reason.rule.empty();
    if (is_it) return " (" + reason.rule + ")";
  }
  return "";
}

void check_shop(const Job& job, std::vector<Refusal>& doubts) {
  const std::size_t stances = job.turn_s.size();
  for (std::size_t from = 0; from < stances; ++from) {
    const auto& row = job.turn_s[from];
    if (row.size() != stances) {
      doubts.push_back({"order.index",
                        "turn times from stance " + std::to_string(from) + ": found " +
                            std::to_string(row.size()) + " of " + std::to_string(stances) +
                            " expected (one to every stance)"});
    }
    if (!std::all_of(row.begin(), row.end(), is_time)) {
      doubts.push_back({"order.value",
                        "turn times from stance " + std::to_string(from) +
                            ": every time must be finite and not negative"});
    }
  }
  if (!job.blocks.empty() &&
      (job.start_stance < 0 || static_cast<std::size_t>(job.start_stance) >= stances)) {
    doubts.push_back({"order.index",
                      "start stance " + std::to_string(job.start_stance) + " is none of the " +
                          std::to_string(stances) + " stances"});
  }
  if (job.end_stance &&
      (*job.end_stance < 0 || static_cast<std::size_t>(*job.end_stance) >= stances)) {
    doubts.push_back({"order.index",
                      "end stance " + std::to_string(*job.end_stance) + " is none of the " +
                          std::to_string(stances) + " stances"});
  }
  if (!(base::is_positive(job.air_speed_mm_s) && base::is_positive(job.air_acceleration_mm_s2))) {
    doubts.push_back({"order.value", "air speed and acceleration must be finite and above zero"});
  }
  if (!is_time(job.retract_mm) || !is_time(job.clean_every_s) || !is_time(job.clean_s) ||
      !is_time(job.arc_since_clean_s) || !is_time(job.heat_once_s) || !is_time(job.worth.entry_s) ||
      !is_time(job.worth.stance_s) || !job.home_W.allFinite()) {
    doubts.push_back(
        {"order.value",
         "retract, cleaning interval, cleaning and heating time, the arc since cleaning and what "
         "an "
         "entry or a turn is worth must be finite and not negative, home must be finite"});
  }
}

void check_passes(const Job& job, std::size_t index, std::vector<Refusal>& doubts) {
  const Block& block = job.blocks[index];
  const bool robot_works =
      !block.passes.empty() || block.touch_s > 0.0 || block.gouge_s > 0.0 || block.heat_s > 0.0;
  if (block.work_s ? robot_works : block.passes.empty()) {
    doubts.push_back(
        {"order.block.no_pass",
         block_text(job, index) +
             (block.work_s ? " is an operation of people; it has no passes, touches, gouging "
                             "or heating"
                           : " has no pass to weld")});
  }
  for (const BlockPass& pass : block.passes) {
    if (!is_time(pass.arc_s) || !is_time(pass.gap_s) || !is_time(pass.overhead_s) ||
        !is_time(pass.wind_s) || !is_time(pass.unwind_s) || !(pass.keep_s >= 0.0)) {
      doubts.push_back(
          {"order.value",
           block_text(job, index) + ": the times of a pass must be finite and not negative"});
    }
  }
  if (!is_time(block.work_s.value_or(0.0)) || !is_time(block.touch_s) || !is_time(block.gouge_s) ||
      !is_time(block.heat_s) || !(block.heat_keep_s >= 0.0)) {
    doubts.push_back({"order.value",
                      block_text(job, index) +
                          ": touch, gouging, heating and working times must be finite and not "
                          "negative"});
  }
}

void check_options(const Job& job, std::size_t index, std::vector<Refusal>& doubts) {
  const Block& block = job.blocks[index];
  if (block.options.empty()) {
    doubts.push_back({"order.block.no_option",
                      block_text(job, index) + " has no option: no stance was found in which it "
                                               "can be welded"});
  }
  for (const Option& option : block.options) {
    if (option.stance < 0 || static_cast<std::size_t>(option.stance) >= job.turn_s.size()) {
      doubts.push_back({"order.index",
                        block_text(job, index) + ": stance " + std::to_string(option.stance) +
                            " is none of the " + std::to_string(job.turn_s.size()) + " stances"});
    }
    if (block.work_s && (option.start_W != job.home_W || option.end_W != job.home_W)) {
      doubts.push_back(
          {"order.value", block_text(job, index) + ": while people work the robot is at home"});
    }
    if (!option.start_W.allFinite() || !option.end_W.allFinite()) {
      doubts.push_back({"order.value", block_text(job, index) + ": torch points must be finite"});
    }
  }
  for (const int before : block.after) {
    if (before < 0 || static_cast<std::size_t>(before) >= job.blocks.size()) {
      doubts.push_back({"order.index",
                        block_text(job, index) + " comes after block " + std::to_string(before) +
                            ", which is none of the " + std::to_string(job.blocks.size())});
    }
  }
}

/// One cycle of `after` as block indices, each after the next; empty when there is none.
std::vector<std::size_t> find_cycle(const Job& job) {
  const std::size_t count = job.blocks.size();
  std::vector<std::size_t> waits_for(count, 0);
  std::vector<std::vector<std::size_t>> followers(count);
  for (std::size_t b = 0; b < count; ++b) {
    waits_for[b] = job.blocks[b].after.size();
    for (const int before : job.blocks[b].after) {
      followers[static_cast<std::size_t>(before)].push_back(b);
    }
  }
  std::vector<std::size_t> free;
  for (std::size_t b = 0; b < count; ++b) {
    if (waits_for[b] == 0) free.push_back(b);
  }
  for (std::size_t i = 0; i < free.size(); ++i) {
    for (const std::size_t next : followers[free[i]]) {
      if (--waits_for[next] == 0) free.push_back(next);
    }
  }
  const auto stuck = std::find_if(waits_for.begin(), waits_for.end(), [](auto n) { return n > 0; });
  if (stuck == waits_for.end()) {
    return {};
  }
  // Every stuck block waits for a stuck one: walking back must meet itself.
  std::vector<std::size_t> walk{static_cast<std::size_t>(stuck - waits_for.begin())};
  while (true) {
    std::size_t back = 0;
    for (const int before : job.blocks[walk.back()].after) {
      if (waits_for[static_cast<std::size_t>(before)] > 0) back = static_cast<std::size_t>(before);
    }
    const auto met = std::find(walk.begin(), walk.end(), back);
    if (met != walk.end()) {
      return {met, walk.end()};
    }
    walk.push_back(back);
  }
}

}  // namespace

base::Outcome<bool> check_job(const Job& job) {
  std::vector<Refusal> doubts;
  check_shop(job, doubts);
  for (std::size_t b = 0; b < job.blocks.size(); ++b) {
    check_passes(job, b, doubts);
    check_options(job, b, doubts);
  }
  if (doubts.empty()) {
    const std::vector<std::size_t> cycle = find_cycle(job);
    if (!cycle.empty()) {
      std::string text = block_text(job, cycle.front());
      for (std::size_t i = 0; i < cycle.size(); ++i) {
        const std::size_t before = cycle[(i + 1) % cycle.size()];
        text += " after " + block_text(job, before) + rule_text(job, cycle[i], before);
      }
      doubts.push_back({"order.cycle", "the blocks wait for one another: " + text});
    }
  }
  if (doubts.empty()) {
    return true;
  }
  Refusal all = doubts.front();
  for (std::size_t i = 1; i < doubts.size(); ++i) {
    all.text += '\n' + doubts[i].text;
  }
  return all;
}

bool is_valid(const Job& job, const Sequence& sequence) {
  if (sequence.size() != job.blocks.size()) {
    return false;
  }
  std::vector<char> done(job.blocks.size(), 0);
  for (const Step& step : sequence) {
    if (step.block < 0 || static_cast<std::size_t>(step.block) >= job.blocks.size()) {
      return false;
    }
    const auto b = static_cast<std::size_t>(step.block);
    const Block& block = job.blocks[b];
    const bool fits = step.option >= 0 &&
                      static_cast<std::size_t>(step.option) < block.options.size() && done[b] == 0;
    if (!fits || !std::all_of(block.after.begin(), block.after.end(), [&done](int before) {
          return done[static_cast<std::size_t>(before)] != 0;
        })) {
      return false;
    }
    done[b] = 1;
  }
  return true;
}

}  // namespace seamturn::order

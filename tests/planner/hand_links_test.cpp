// SPDX-License-Identifier: MIT
// Orders by hand as links between the blocks of the ordering job.
#include <algorithm>

#include "ordered_part.hpp"
#include "planner/detail_joints.hpp"
#include "planner/detail_order_job.hpp"
#include "planner/detail_order_links.hpp"
#include "planner/detail_stances.hpp"

namespace seamturn::tests {

namespace detail = planner::detail;

namespace {

/// The job of a part of one stage.
struct Job {
  planner::Inputs inputs;
  std::vector<detail::JointWork> joints;
  std::vector<detail::SeamRef> seams;
  std::vector<detail::StageWork> stages;
  detail::OrderJob job;

  explicit Job(planner::Inputs of) : inputs(std::move(of)) {
    std::vector<base::Finding> findings;
    joints = detail::work_joints(inputs, findings);
    seams = detail::all_seams(joints);
    stages = detail::work_stages(inputs, findings);
    const auto pool = detail::find_stance_pool(inputs, stages.front(), seams, findings);
    const auto placements = detail::choose_placements(inputs, seams, pool);
    job = detail::make_order_job(inputs, stages.front(), seams, pool, placements, true);
  }

  /// Blocks of the passes of a seam, numbered from 1, that an entry names.
  [[nodiscard]] std::vector<int> blocks_of(const joint::HandEntry& entry) const {
    std::vector<int> blocks;
    for (std::size_t b = 0; b < job.origins.size(); ++b) {
      const detail::BlockOrigin& origin = job.origins[b];
      if (origin.seam < 0) continue;
      const auto seam = static_cast<std::size_t>(origin.seam);
      if (seams[seam].joint->joint->id != entry.joint) continue;
      const auto stack = static_cast<std::size_t>(job.placements[seam].front().stack);
      for (const int index : origin.passes) {
        const pass::Pass& pass =
            seams[seam].work->stacks[stack].stack.passes[static_cast<std::size_t>(index)];
        const int number = entry.in_passes ? index + 1 : pass.layer;
        const bool named = number >= entry.from && number <= entry.to.value_or(number);
        if (named) blocks.push_back(static_cast<int>(b));
      }
    }
    return blocks;
  }
};

planner::Inputs by_hand(planner::Inputs inputs, const std::vector<std::string>& entries) {
  inputs.weldment.hand_orders = {hand_order(entries)};
  return inputs;
}

/// Errors of an order by hand over R1 where its second layer, passes 2 and 3, is one block: as long
/// as every pass heats, there is a wait between passes and the planner cuts all layers.
std::string errors_in_one_go(const std::vector<std::string>& entries) {
  Job made(ordered_part());
  const std::vector<int> blocks = made.blocks_of(*joint::read_hand_entry("R1.2"));
  REQUIRE(blocks.size() == 2);
  auto& origins = made.job.origins;
  std::vector<int>& second = origins[static_cast<std::size_t>(blocks[1])].passes;
  std::vector<int>& first = origins[static_cast<std::size_t>(blocks[0])].passes;
  first.insert(first.end(), second.begin(), second.end());
  second.clear();
  made.inputs.weldment.hand_orders = {hand_order(entries)};
  made.job.findings.clear();
  detail::add_rules(made.inputs, made.stages.front(), made.seams, made.job);
  std::string errors;
  for (const base::Finding& finding : made.job.findings) {
    if (finding.severity == base::Severity::error) errors += finding.code + ": " + finding.text;
  }
  return errors;
}

}  // namespace

TEST_SUITE("planner/hand_links") {
  TEST_CASE("for every pair of entries, law: the first block of one waits for the last before it") {
    const std::vector<std::vector<std::string>> orders = {
        {"J1.1", "A1.2", "R1.2"},
        {"A1.3", "J2.2-3", "A3.2"},
        {"J2:2-3", "A1:4", "R2:1-2", "A2:2-5"},
        {"R1", "A4:2-", "J1.2-"},
    };
    for (const std::vector<std::string>& entries : orders) {
      const Job made(by_hand(ordered_part(), entries));
      REQUIRE(made.job.hand_links.size() == entries.size() - 1);
      for (std::size_t k = 1; k < entries.size(); ++k) {
        INFO(entries[k - 1], " before ", entries[k]);
        const auto before = made.blocks_of(*joint::read_hand_entry(entries[k - 1]));
        const auto now = made.blocks_of(*joint::read_hand_entry(entries[k]));
        REQUIRE_FALSE(before.empty());
        REQUIRE_FALSE(now.empty());
        const std::pair<int, int> wanted(*std::min_element(now.begin(), now.end()),
                                         *std::max_element(before.begin(), before.end()));
        CHECK(made.job.hand_links[k - 1] == wanted);
        const auto& after = made.job.job.blocks[static_cast<std::size_t>(wanted.first)].after;
        CHECK(std::count(after.begin(), after.end(), wanted.second) == 1);
      }
    }
    // Layers of several blocks were among them.
    const Job job(ordered_part());
    CHECK(job.blocks_of(*joint::read_hand_entry("A1.2")).size() == 2);
  }

  TEST_CASE("given two passes laid in one go, they may be named as laid, and not the other way") {
    CHECK(errors_in_one_go({"R1:2", "R1:3"}).empty());
    CHECK(errors_in_one_go({"R1:1", "R1:2", "R1:3", "J1"}).empty());
    const std::string errors = errors_in_one_go({"R1:3", "R1:2"});
    CHECK(errors.find("order.hand.contradicts: ") == 0);
    CHECK(errors.find("puts R1:3 before R1:2") != std::string::npos);
    CHECK(errors.find("layers and passes of a seam follow one another") != std::string::npos);
  }

  TEST_CASE("given a pass the seam has not, the finding counts its passes, not its layers") {
    // R1 is laid in 3 passes of 2 layers.
    const std::string passes = errors_of(by_hand(ordered_part(), {"R1:4", "J1"}));
    CHECK(passes.find("order.hand.layer: ") == 0);
    CHECK(passes.find("names R1:4, and seam R1 is laid in 3 passes; ") != std::string::npos);
    const std::string layers = errors_of(by_hand(ordered_part(), {"R1.3", "J1"}));
    CHECK(layers.find("names R1.3, and seam R1 is laid in 2 layers; ") != std::string::npos);
    CHECK(errors_of(by_hand(ordered_part(), {"R1:3", "A1"})).empty());
  }
}

}  // namespace seamturn::tests

// SPDX-License-Identifier: MIT
#include "detail_operations.hpp"

#include <algorithm>

#include "detail_order_links.hpp"

namespace seamturn::planner::detail {

namespace {

using joint::Operation;
using joint::OperationPlace;

bool names(const std::vector<std::string>& list, const std::string& id) {
  return std::find(list.begin(), list.end(), id) != list.end();
}

class Adder {
 public:
  Adder(const StageWork& stage, const StancePool& pool, const SeamBlocks& blocks, OrderJob& out)
      : operations_(stage.operations),
        pool_(pool),
        blocks_(blocks),
        out_(out),
        welds_(static_cast<int>(out.job.blocks.size())) {}

  void add(const geom::Vec3& home_W) {
    for (std::size_t i = 0; i < operations_.size(); ++i) {
      out_.job.blocks.push_back(block_of(i, home_W));
      out_.origins.push_back(BlockOrigin{-1, {}, static_cast<int>(i)});
    }
    chain(OperationPlace::start);
    chain(OperationPlace::end);
    for (std::size_t i = 0; i < operations_.size(); ++i) tie(i);
  }

 private:
  [[nodiscard]] int block(std::size_t operation) const {
    return welds_ + static_cast<int>(operation);
  }
  std::vector<int>& after(int block) { return out_.job.blocks[std::size_t(block)].after; }

  [[nodiscard]] order::Block block_of(std::size_t index, const geom::Vec3& home_W) const {
    order::Block block;
    block.name = operations_[index].id;
    block.zone = static_cast<int>(blocks_.seams.size() + index);
    block.work_s = operations_[index].time_s;
    const int wanted = pool_.of_operations[index];
    for (std::size_t s = 0; s < out_.pool_stance.size(); ++s) {
      const int pool_stance = s == 0 ? at_rest : out_.pool_stance[s];
      if (wanted != as_it_hangs && wanted != pool_stance) continue;
      order::Option option;
      option.stance = static_cast<int>(s);
      option.start_W = option.end_W = home_W;
      block.options.push_back(option);
    }
    return block;
  }

  /// Those of one place follow one another as the file lists them.
  void chain(OperationPlace place) {
    int previous = -1;
    for (std::size_t i = 0; i < operations_.size(); ++i) {
      if (operations_[i].place != place) continue;
      if (previous >= 0) after(block(i)).push_back(previous);
      previous = block(i);
    }
  }

  void tie(std::size_t index) {
    const int own = block(index);
    switch (operations_[index].place) {
      case OperationPlace::start:
        for (int other = 0; other < static_cast<int>(out_.job.blocks.size()); ++other) {
          if (place_of(other) != OperationPlace::start) after(other).push_back(own);
        }
        return;
      case OperationPlace::end:
        for (int other = 0; other < static_cast<int>(out_.job.blocks.size()); ++other) {
          if (place_of(other) == OperationPlace::between) after(own).push_back(other);
        }
        return;
      case OperationPlace::between:
        tie_between(operations_[index], own);
        return;
    }
  }

  /// Welds stand between the operations of the start and those of the end.
  [[nodiscard]] OperationPlace place_of(int block) const {
    if (block < welds_) return OperationPlace::between;
    return operations_[static_cast<std::size_t>(block - welds_)].place;
  }

  void tie_between(const Operation& operation, int own) {
    for (std::size_t i = 0; i < blocks_.seams.size(); ++i) {
      if (blocks_.first.count(i) == 0) continue;
      const std::string& joint = blocks_.seams[i].joint->joint->id;
      const std::string rule = "operation " + operation.id;
      if (names(operation.after, joint)) {
        add_link(out_.job, own, blocks_.last.at(i), rule + " after joint " + joint);
      }
      if (names(operation.before, joint)) {
        add_link(out_.job, blocks_.first.at(i), own, rule + " before joint " + joint);
      }
    }
  }

  const std::vector<Operation>& operations_;
  const StancePool& pool_;
  const SeamBlocks& blocks_;
  OrderJob& out_;
  int welds_;
};

}  // namespace

void add_operations(const StageWork& stage,
                    const StancePool& pool,
                    const SeamBlocks& blocks,
                    const geom::Vec3& home_W,
                    OrderJob& job) {
  Adder(stage, pool, blocks, job).add(home_W);
}

}  // namespace seamturn::planner::detail

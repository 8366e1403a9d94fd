// SPDX-License-Identifier: MIT
// Stages, set-ups and the work between welds, as planned.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "seamturn/joint/member.hpp"
#include "seamturn/joint/stages.hpp"

namespace seamturn::plan {

/// Work of people with its place in the order.
struct PlannedOperation {
  std::string id;
  joint::OperationKind kind = joint::OperationKind::hold;
  std::string stage;
  std::string stance;             ///< id; empty: at rest, or away from the cell
  std::optional<double> start_s;  ///< on the clock; none: away from the cell
  double time_s = 0.0;
  int people = 1;
  std::vector<std::string> members;
  std::vector<std::string> joints;
  std::string note;
};

/// Seams that nobody reaches any more once a member is fitted.
struct ClosedOff {
  std::string member;
  std::vector<std::string> seams;
};

/// What an order fixed by hand costs against seamturn's own at the same rules. Both without the
/// re-hang.
struct HandOrderPrice {
  double by_hand_s = 0.0;
  double own_s = 0.0;  ///< never above by_hand_s: the order by hand is one it may choose
  bool own_proved_best = false;
  int by_hand_stances = 0;  ///< turns to another stance
  int own_stances = 0;
  std::vector<std::string> entries;  ///< as the file writes them, in order
};

struct PlannedStage {
  std::string id;                    ///< empty: the file names no stages
  std::string setup;                 ///< empty: away from the cell
  std::vector<std::string> fitted;   ///< members fitted in it
  std::vector<std::string> present;  ///< all members there, in the order of the file
  joint::Weight part;                ///< of those, frame J
  joint::Weight load;                ///< with fixture and risers, frame D; away: nothing
  std::vector<ClosedOff> closes;     ///< by what is fitted here; those seams were welded before
  std::string holds;                 ///< member the set-up holds: all others hang on it
  double rehang_s = 0.0;             ///< by crane at its beginning; 0: it hangs so already
  int rehang_people = 0;
  std::optional<double> start_s;  ///< of re-hang and first operation; none: away from the cell
  double end_s = 0.0;
  double lower_bound_s = 0.0;  ///< of the welding and the operations in it
  bool proved_best = false;
  std::optional<HandOrderPrice> by_hand;  ///< none: no order by hand in it
};

}  // namespace seamturn::plan

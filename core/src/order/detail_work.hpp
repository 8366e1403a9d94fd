// SPDX-License-Identifier: MIT
// Parts of a cycle that no order can avoid, shared by greedy choice, search and bounds.
#pragma once

#include "detail_precedence.hpp"
#include "detail_run.hpp"
#include "seamturn/order/job.hpp"

namespace seamturn::order {

/// Seconds of a block that are the same in every order and option: gouging, arcs, overheads,
/// unwinding and the retracts at both ends of every pass.
[[nodiscard]] double work_s(const Job& job, const Block& block);

/// Seconds between the passes of a block besides: air back from end to start and waits.
[[nodiscard]] double inside_s(const Job& job, const Block& block, const Option& option);

/// Both, with the option that is least inside.
[[nodiscard]] double least_work_s(const Job& job, const Block& block);

/// Every block takes the torch from its start to its end no faster than an air move would: then a
/// detour over other blocks never shortens a way. True of every weld; not of every made-up job.
[[nodiscard]] bool arcs_are_slow(const Job& job);

/// Touch seconds no order can avoid.
[[nodiscard]] double least_touch_s(const Job& job, const Zones& zones);
/// Heating seconds no order can avoid: every place that needs it, once.
[[nodiscard]] double least_heat_s(const Job& job, const Zones& zones);
/// Some place may have to be heated again when it is left alone too long. Then earlier is not
/// always better, and the exact search cannot compare two beginnings.
[[nodiscard]] bool may_cool_down(const Job& job);
/// Number of cleanings no order can avoid.
[[nodiscard]] int least_cleanings(const Job& job);
/// Seconds of at least so many cleanings, less what waits inside blocks may hide.
[[nodiscard]] double least_clean_s(const Job& job, int cleanings);
/// Cheapest way between stances by any number of turns, each turn made dearer by extra_s.
[[nodiscard]] std::vector<std::vector<double>> turn_closure(const Job& job, double extra_s);
/// Turn seconds before every block had one of its stances. Each turn is made dearer by extra_s, but
/// not one before the first block.
[[nodiscard]] double least_turn_s(const Job& job, double extra_s);
/// Turn seconds, and air seconds between blocks and home, with inside_s of every block.
[[nodiscard]] double least_turn_and_air_s(const Job& job,
                                          const Precedence& precedence,
                                          int cleanings);
/// Earliest possible return home by the longest chain of what must follow what, waits included.
[[nodiscard]] double chain_s(const Job& job, const Precedence& precedence, const Zones& zones);

}  // namespace seamturn::order

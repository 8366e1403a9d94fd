// SPDX-License-Identifier: MIT
// The clock: every second of the cycle is of exactly one kind.
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace seamturn::timeline {

/// The last four are work of people: gouging, preheating, operations between welds, and hanging the
/// part by crane.
enum class SecondKind { arc, turn, air, touch, clean, wait, other, gouge, heat, work, hang };
inline constexpr std::size_t second_kinds = 11;
inline constexpr SecondKind first_by_people = SecondKind::gouge;
[[nodiscard]] constexpr bool is_by_people(SecondKind kind) {
  return kind >= first_by_people;
}
[[nodiscard]] std::string_view second_kind_name(SecondKind kind);  ///< "arc" ...

/// A stretch of the cycle. Events follow one another without gap or overlap.
struct Event {
  SecondKind kind = SecondKind::other;
  double start_s = 0.0;
  double end_s = 0.0;
  int stance = -1;  ///< stance held (turn: stance gone to)
  int item = -1;    ///< index of the pass block worked on, or -1
  int pass = -1;    ///< index of the pass within the block, arc only
};

/// Appends stretches one after another.
class Clock {
 public:
  [[nodiscard]] double now_s() const { return now_s_; }
  /// Pre: seconds >= 0 and finite. Zero seconds append nothing, but for work, so that a hold of no
  /// time keeps its place.
  void spend(SecondKind kind, double seconds, int stance, int item, int pass = -1);
  [[nodiscard]] const std::vector<Event>& events() const { return events_; }
  [[nodiscard]] double total_s(SecondKind kind) const;

 private:
  double now_s_ = 0.0;
  std::vector<Event> events_;
};

}  // namespace seamturn::timeline

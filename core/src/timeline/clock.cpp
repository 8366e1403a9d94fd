// SPDX-License-Identifier: MIT
#include "seamturn/timeline/clock.hpp"

#include <cmath>

#include "seamturn/base/error.hpp"
#include "seamturn/base/positive.hpp"

namespace seamturn::timeline {

std::string_view second_kind_name(SecondKind kind) {
  switch (kind) {
    case SecondKind::arc:
      return "arc";
    case SecondKind::turn:
      return "turn";
    case SecondKind::air:
      return "air";
    case SecondKind::touch:
      return "touch";
    case SecondKind::clean:
      return "clean";
    case SecondKind::wait:
      return "wait";
    case SecondKind::other:
      return "other";
    case SecondKind::gouge:
      return "gouge";
    case SecondKind::heat:
      return "heat";
    case SecondKind::work:
      return "work";
    case SecondKind::hang:
      return "hang";
  }
  base::fail_contract("kind is an enumerator", __FILE__, __LINE__, "");
}

void Clock::spend(SecondKind kind, double seconds, int stance, int item, int pass) {
  SEAMTURN_REQUIRE(base::is_amount(seconds), seconds);
  const double end_s = now_s_ + seconds;
  if (end_s > now_s_ || kind == SecondKind::work) {
    events_.push_back(Event{kind, now_s_, end_s, stance, item, pass});
  }
  now_s_ = end_s;
}

double Clock::total_s(SecondKind kind) const {
  double total_s = 0.0;
  for (const Event& event : events_) {
    if (event.kind == kind) {
      total_s += event.end_s - event.start_s;
    }
  }
  return total_s;
}

}  // namespace seamturn::timeline

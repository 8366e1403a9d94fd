// SPDX-License-Identifier: MIT
// What the chain of stages starts from: the files, read and checked.
#pragma once

#include <optional>
#include <vector>

#include "seamturn/cell/cell.hpp"
#include "seamturn/cost/estimate.hpp"
#include "seamturn/fitup/fit_up.hpp"
#include "seamturn/joint/preparation_range.hpp"
#include "seamturn/joint/weldment.hpp"
#include "seamturn/material/steel.hpp"
#include "seamturn/order/job.hpp"
#include "seamturn/position/classify.hpp"
#include "seamturn/position/rolling.hpp"
#include "seamturn/procedure/record.hpp"
#include "seamturn/process/bead_limits.hpp"
#include "seamturn/process/consumables.hpp"
#include "seamturn/process/gouging.hpp"
#include "seamturn/process/heating.hpp"
#include "seamturn/process/settings.hpp"
#include "seamturn/tack/tack_rules.hpp"

namespace seamturn::planner {

/// What a shop would rather avoid, in seconds of cycle it is worth.
struct Priorities {
  order::Worth worth;
  std::string source;
  base::Status status = base::Status::proposed;
};
/// Stops of consecutive layers lie so far apart unless the file says otherwise.
struct LayerStopRule {
  double stagger_mm = 0.0;
  std::string source;
  base::Status status = base::Status::proposed;
};
/// Seams longer than this are welded in segments unless the file says otherwise.
struct LongSeams {
  double over_mm = 0.0;
  int segments = 2;         ///< of an open seam, from the middle outward
  int arcs = 4;             ///< of a ring the positioner cannot roll, opposite ones in turn
  double overlap_mm = 0.0;  ///< where segments meet
  std::string source;
  base::Status status = base::Status::proposed;
};

/// A turn saved is worth so much where no library says. Our own choice: small, so that of two
/// orders equally long the one with fewer stances is taken.
inline constexpr double usual_stance_worth_s = 2.0;

/// All libraries of a weldment put together.
struct Library {
  std::vector<material::Steel> steels;
  std::vector<process::Wire> wires;
  std::vector<process::Gas> gases;
  std::vector<process::LinkedSettings> settings;
  std::vector<process::BeadLimit> bead_limits;
  std::vector<position::WorkingTolerance> tolerances;
  std::vector<position::RollingLead> rolling_leads;
  std::optional<cost::Rates> rates;
  std::vector<fitup::Tolerances> fit_ups;  ///< the first is meant where a joint names none
  std::optional<process::Gouging> gouging;
  std::optional<process::Heating> heating;
  std::vector<procedure::Record> records;
  std::optional<Priorities> priorities;
  std::optional<LayerStopRule> layer_stops;
  std::optional<LongSeams> long_seams;
  tack::TackRules tack_rules;  ///< by default those of the standard and proposals
  std::vector<joint::PreparationRange> preparation_ranges;
  joint::Places places;  ///< "steel/S355J2" ...
};

struct Inputs {
  joint::Weldment weldment;
  Library library;
  std::optional<cell::Cell> cell;
  std::vector<base::Finding> findings;  ///< warnings and notes of reading
};

/// The wire a joint is welded with: its own, else the weldment's.
/// Pre: the reader found it in the library.
[[nodiscard]] const process::Wire& wire_of(const Inputs& inputs, const joint::Joint& joint);

/// The tolerances a joint is set up within: those it names, else the library's first; null when the
/// libraries state none. Pre: the reader found those named.
[[nodiscard]] const fitup::Tolerances* fit_up_of(const Inputs& inputs, const joint::Joint& joint);

}  // namespace seamturn::planner

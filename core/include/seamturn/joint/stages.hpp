// SPDX-License-Identifier: MIT
// How the part is really built: set-ups on the faceplate, stages of assembly, and the work between
// welds that is not a weld.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "seamturn/base/angle.hpp"
#include "seamturn/geom/vector.hpp"

namespace seamturn::joint {

/// What is bolted on the faceplate with the part: fixture or riser, frame D.
struct SetupSolid {
  std::string kind;  ///< "fixture", "riser"
  double mass_kg = 0.0;
  geom::Vec3 centre = geom::Vec3::Zero();  ///< of gravity, and of the box
  std::optional<geom::Vec3> size_mm;       ///< box along the axes of D; none: weight only
};

/// A clamp on the part, frame J: a round foot that covers the face under it.
struct Clamp {
  std::string id;
  geom::Vec3 at = geom::Vec3::Zero();
  double radius_mm = 0.0;
};

/// Where slings take the part, and the hook they meet at. Frame J.
struct LiftPoint {
  std::string id;
  geom::Vec3 at = geom::Vec3::Zero();
};
struct Lifting {
  std::string id;
  geom::Vec3 hook = geom::Vec3::Zero();
  std::vector<LiftPoint> points;
};

/// How the part sits on the faceplate D: X_DJ, and what is bolted on with it.
struct Setup {
  std::string id;
  geom::Pose X_DJ;
  base::Angle turned;  ///< about the faceplate's normal; inside X_DJ
  std::vector<SetupSolid> solids;
  std::vector<Clamp> clamps;
  std::vector<std::string> hides;  ///< joints nobody reaches in it, as stated
  std::optional<double> hang_s;    ///< to hang the part so by crane
  int hang_people = 1;
  std::string lifting;      ///< id of the points it is hung by; empty: none stated
  std::string lifting_off;  ///< id of those it is taken off by; empty: the same
};

/// Weight of fixture and risers together, frame D.
struct SetupWeight {
  double mass_kg = 0.0;
  geom::Vec3 centre = geom::Vec3::Zero();
};
[[nodiscard]] SetupWeight fixture_weight(const Setup& setup);

/// A value an axis of the positioner is to have.
struct AxisValue {
  std::string axis;
  base::Angle value;
};

enum class OperationKind {
  fit,
  temperature_check,
  visual_test,
  surface_test,
  volume_test,
  leak_test,
  residual_field,
  grinding,
  cleaning,
  straightening,
  vent_hole,
  stress_relief,
  machining,
  hold
};
/// Names in the order of the kinds: "fit", "visual-test" ...
[[nodiscard]] std::span<const std::string_view> operation_names();
[[nodiscard]] std::string_view operation_name(OperationKind kind);

/// Where in its stage an operation stands, where `after` and `before` do not say it.
enum class OperationPlace { start, between, end };

/// Work of people in a stage.
struct Operation {
  std::string id;
  OperationKind kind = OperationKind::hold;
  OperationPlace place = OperationPlace::end;
  double time_s = 0.0;
  int people = 1;
  std::vector<std::string> members;        ///< fit: what is fitted; others: what it is about
  std::vector<std::string> joints;         ///< what it is about
  std::vector<std::string> after, before;  ///< joints of its stage
  bool level = false;                      ///< at the positioner's rest position
  std::vector<AxisValue> axes;  ///< stance it needs; none and not level: as the part hangs
  std::string note;
};

/// A stretch of the build: members are fitted, seams welded, all in one set-up.
struct Stage {
  std::string id;
  std::string setup;                  ///< id; empty: away from the cell, nothing is welded
  std::vector<Operation> operations;  ///< in the order of the file; fitting comes first
};

/// What an order by hand names: all seams of a joint or one of them, all its layers or some.
struct HandEntry {
  std::string text;  ///< as the file writes it: "R1", "J4.b", "J4.b/2", "R2.1", "R2.2-", "R2:3-4"
  std::string joint;
  char side = 0;           ///< 'a' or 'b'; 0: all seams of the joint
  int segment = 0;         ///< from 1, of each seam named; 0: all of it
  bool in_passes = false;  ///< `from` and `to` count passes, else layers
  int from = 1;
  std::optional<int> to;  ///< none: up to the last
  bool operator==(const HandEntry&) const = default;
};
/// "J1", "J1.b", "J1.2", "J1.b.2-4", "J1.2-": layers; "J1:2", "J1.b:2-": passes. Both count from 1
/// and rise. Nothing for other texts. Source: none - a format of our own (docs/files.md). Tests:
/// joint/hand_order.
[[nodiscard]] std::optional<HandEntry> read_hand_entry(std::string_view text);
/// Both name a layer or pass of one seam, or may: one by layers and one by passes do.
[[nodiscard]] bool overlap(const HandEntry& a, const HandEntry& b);

/// An order a person fixed: all an entry names is finished before the next one is begun. What it
/// does not name stands where it likes.
struct HandOrder {
  std::string stage;  ///< id; empty: the file names no stages
  std::vector<HandEntry> entries;
};

/// Ids of the members a stage fits, in the order of its operations.
[[nodiscard]] std::vector<std::string> fitted_members(const Stage& stage);

}  // namespace seamturn::joint

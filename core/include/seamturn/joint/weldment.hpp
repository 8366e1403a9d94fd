// SPDX-License-Identifier: MIT
// Everything a weldment file says, checked and in internal units.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "seamturn/joint/datum.hpp"
#include "seamturn/joint/joint.hpp"
#include "seamturn/joint/member.hpp"
#include "seamturn/joint/places.hpp"
#include "seamturn/joint/stages.hpp"

namespace seamturn::joint {

/// What is said of tacking the part as a whole.
struct Tacking {
  double site_factor_ratio = 1.0;  ///< on weight while tacks alone carry: crane, turning, shock
  std::string certificate;         ///< of the tacker, for the sheet
};

struct Batch {
  int parts = 1;
};

struct Weldment {
  std::string title;
  std::string revision;
  std::string date;
  std::string author;
  std::string wire;  ///< id of the wire used unless a joint names another
  double ambient_c = 20.0;
  std::vector<std::string> libraries;  ///< file names as used
  std::string cell;                    ///< file name as used; empty: no cell
  std::vector<Member> members;
  std::vector<Joint> joints;
  std::vector<Setup> setups;  ///< at least one where a cell is used
  std::vector<Stage> stages;  ///< in order; none: all members are there from the start
  std::vector<Lifting> liftings;
  std::vector<Datum> datums;
  std::optional<Tacking> tacking;
  std::vector<HandOrder> hand_orders;
  std::string balance_off;      ///< why no sides and twins keep step; empty: they do
  bool magnet_handled = false;  ///< a magnet has lifted the plates or the part
  Batch batch;
  bool invented = false;  ///< demo data, said so in the file
  Places places;
};

[[nodiscard]] const Member* find_member(const Weldment& weldment, std::string_view id);
[[nodiscard]] const Joint* find_joint(const Weldment& weldment, std::string_view id);
[[nodiscard]] const Setup* find_setup(const Weldment& weldment, std::string_view id);
[[nodiscard]] const Datum* find_datum(const Weldment& weldment, std::string_view id);

}  // namespace seamturn::joint

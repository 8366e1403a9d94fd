// SPDX-License-Identifier: MIT
#include "seamturn/process/weld_position.hpp"

#include "seamturn/base/error.hpp"

namespace seamturn::process {

namespace {

struct PositionName {
  WeldPosition position;
  std::string_view name;
};
constexpr PositionName position_names[] = {
    {WeldPosition::pa, "PA"},
    {WeldPosition::pb, "PB"},
    {WeldPosition::pc, "PC"},
    {WeldPosition::pd, "PD"},
    {WeldPosition::pe, "PE"},
    {WeldPosition::pf, "PF"},
    {WeldPosition::pg, "PG"},
};

struct RoleName {
  PassRole role;
  std::string_view name;
};
constexpr RoleName role_names[] = {
    {PassRole::tack, "tack"},
    {PassRole::root, "root"},
    {PassRole::fill, "fill"},
    {PassRole::cap, "cap"},
    {PassRole::single, "single"},
};

}  // namespace

std::string_view position_name(WeldPosition position) {
  for (const PositionName& row : position_names) {
    if (row.position == position) return row.name;
  }
  base::fail_contract("position is one of WeldPosition", __FILE__, __LINE__, "");
}

std::optional<WeldPosition> find_position(std::string_view name) {
  for (const PositionName& row : position_names) {
    if (row.name == name) return row.position;
  }
  return std::nullopt;
}

std::string_view family_name(WeldFamily family) {
  return family == WeldFamily::groove ? "groove" : "fillet";
}

std::string_view role_name(PassRole role) {
  for (const RoleName& row : role_names) {
    if (row.role == role) return row.name;
  }
  base::fail_contract("role is one of PassRole", __FILE__, __LINE__, "");
}

std::optional<PassRole> find_role(std::string_view name) {
  for (const RoleName& row : role_names) {
    if (row.name == name) return row.role;
  }
  return std::nullopt;
}

}  // namespace seamturn::process

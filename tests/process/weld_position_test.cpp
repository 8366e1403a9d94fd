// SPDX-License-Identifier: MIT
#include "seamturn/process/weld_position.hpp"

#include <string>

#include "oracle.hpp"

namespace seamturn::tests {

using process::PassRole;
using process::WeldFamily;
using process::WeldPosition;

TEST_SUITE("process/weld_position") {
  TEST_CASE("for any position and role, law: its name finds it again") {
    for (const WeldPosition position : {WeldPosition::pa,
                                        WeldPosition::pb,
                                        WeldPosition::pc,
                                        WeldPosition::pd,
                                        WeldPosition::pe,
                                        WeldPosition::pf,
                                        WeldPosition::pg}) {
      CHECK(process::find_position(process::position_name(position)) == position);
    }
    for (const PassRole role :
         {PassRole::tack, PassRole::root, PassRole::fill, PassRole::cap, PassRole::single}) {
      CHECK(process::find_role(process::role_name(role)) == role);
    }
  }

  TEST_CASE("given ISO 6947, the seven main positions of plates are PA to PG") {
    const char* const names[] = {"PA", "PB", "PC", "PD", "PE", "PF", "PG"};
    const WeldPosition positions[] = {WeldPosition::pa,
                                      WeldPosition::pb,
                                      WeldPosition::pc,
                                      WeldPosition::pd,
                                      WeldPosition::pe,
                                      WeldPosition::pf,
                                      WeldPosition::pg};
    for (std::size_t i = 0; i < std::size(names); ++i) {
      CHECK(process::position_name(positions[i]) == names[i]);
    }
    CHECK(process::family_name(WeldFamily::groove) == "groove");
    CHECK(process::family_name(WeldFamily::fillet) == "fillet");
  }

  TEST_CASE("refuses names that are no position or role because nearly right is another position") {
    for (const char* name : {"", "pa", "PA ", "PH", "1G", "P"}) {
      INFO(std::string(name));
      CHECK_FALSE(process::find_position(name).has_value());
    }
    for (const char* name : {"", "Root", "fill ", "hot"}) {
      INFO(std::string(name));
      CHECK_FALSE(process::find_role(name).has_value());
    }
  }
}

}  // namespace seamturn::tests

// SPDX-License-Identifier: MIT
// Both libraries of steels, read the way a weldment reads them.
#pragma once

#include <algorithm>

#include "repository.hpp"
#include "scratch.hpp"
#include "seamturn/io/read.hpp"

namespace seamturn::tests {

/// A tee of two plates, base 25 mm and web 15 mm, of any two steels; `analysis` goes into the web.
inline std::filesystem::path steel_tee(const std::string& folder_name,
                                       const std::string& base_steel,
                                       const std::string& web_steel,
                                       const std::string& analysis = "") {
  const auto folder = scratch_folder(folder_name);
  const auto used = [&](const char* file) {
    return std::filesystem::relative(repository() / "joints" / file, folder).string();
  };
  const auto file = folder / "tee.xml";
  write_bytes(file,
              R"(<weldment xmlns="urn:seamturn:weldment:1" schema="1.0" title="Steels" revision="A"
          author="test" date="2026-11-26" invented="yes" wire="G3Si1-1.2">
  <use library=")" +
                  used("library/standards.xml") + R"("/>
  <use library=")" +
                  used("library/steels.xml") + R"("/>
  <use library=")" +
                  used("library/shop.xml") + R"("/>
  <use cell=")" + used("cells/tilt_table.xml") +
                  R"("/>
  <plate id="base" steel=")" +
                  base_steel + R"(" thickness="25 mm" size="400 x 300 mm" at="0 0 0 mm"/>
  <plate id="web" steel=")" +
                  web_steel +
                  R"(" thickness="15 mm" size="400 x 120 mm" at="0 142.5 25 mm" stand="y">)" +
                  analysis + R"(</plate>
  <setup id="table" part-at="-200 -150 60 mm"><fixture mass="85 kg" centre="0 0 30 mm"/></setup>
  <joint id="J1" type="tee" members="base web">
    <fillet throat="5 mm"/>
    <line from="10 157.5 25 mm" to="390 157.5 25 mm"/>
  </joint>
</weldment>
)");
  return file;
}

inline const std::vector<material::Steel>& all_steels() {
  static const std::vector<material::Steel> steels =
      io::read_inputs(steel_tee("all_steels", "S355J2", "S355J2")).library.steels;
  return steels;
}

}  // namespace seamturn::tests

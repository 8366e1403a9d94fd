// SPDX-License-Identifier: MIT
// Uses the installed library as a third party does: a unit, a geometry, a plan, the plugins.
#include <filesystem>
#include <iostream>

#include "seamturn/base/units.hpp"
#include "seamturn/geom/path.hpp"
#include "seamturn/io/plan_xml.hpp"
#include "seamturn/plugin_host/plugin_host.hpp"

namespace {

int failures = 0;

void expect(bool holds, const char* what) {
  std::cout << (holds ? "ok      " : "FAILED  ") << what << '\n';
  if (!holds) ++failures;
}

}  // namespace

int main() {
  using namespace seamturn;
  const auto leg = base::parse_quantity("5/16 in", base::Dimension::length);
  expect(leg.has_value() && *leg == 7.9375, "5/16 in is 7.9375 mm");

  const geom::LinePath line{geom::Vec3::Zero(), geom::Vec3(3.0, 4.0, 0.0)};
  expect(geom::path_length_mm(line) == 5.0, "a 3-4-5 line has length 5 mm");

  const std::string plan = io::plan_xml(plan::Plan{});
  expect(io::is_plan_xml(plan), "an empty plan is a plan");

  const plugin_host::PluginHost host({}, {SEAMTURN_PLUGIN_FOLDER, OWN_PLUGIN_FOLDER});
  for (const auto& verdict : host.verdicts()) {
    std::cout << "        " << verdict.file.string() << ": "
              << (verdict.loaded ? verdict.id : verdict.reason) << '\n';
  }
  expect(host.writer_ids() == std::vector<std::string>{"joint-list",
                                                       "pass-drawing",
                                                       "path-listing",
                                                       "procedure-sheet",
                                                       "stance-drawing",
                                                       "turn-chart"},
         "the installed plugins and our own are loaded");
  expect(host.write_document("joint-list", "<joints><joint id=\"J1\"/></joints>", "joints.txt") ==
             "J1\n",
         "our own plugin writes");
  expect(std::filesystem::exists(SEAMTURN_SHARE_FOLDER "/schemas/plan.xsd"), "plan.xsd is there");
  expect(std::filesystem::exists(SEAMTURN_SHARE_FOLDER "/library/standards.xml"),
         "the library of standards is there");
  return failures == 0 ? 0 : 1;
}

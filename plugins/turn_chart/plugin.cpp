// SPDX-License-Identifier: MIT
// The border of turn-chart: one document for the whole part, none when nothing is turned.
#include <stdexcept>

#include "seamturn/plugin_abi/shim.hpp"
#include "turn_chart/chart.hpp"

namespace {

using seamturn::plan_reader::PlanTree;
constexpr std::string_view chart_name = "charts/clock.svg";

std::vector<std::string> document_names(std::string_view plan_xml) {
  const PlanTree plan(plan_xml);
  if (!seamturn::turn_chart::has_chart(plan)) return {};
  return {std::string(chart_name)};
}

void write_document(std::string_view plan_xml,
                    std::string_view name,
                    seamturn::plugin_abi::Sink& out) {
  const PlanTree plan(plan_xml);
  if (!seamturn::turn_chart::has_chart(plan)) {
    throw std::runtime_error("no arc of this plan is on a clock: nothing is turned");
  }
  if (name != chart_name) {
    throw std::runtime_error("the plan gives no document \"" + std::string(name) + "\"");
  }
  out << seamturn::turn_chart::chart_svg(plan);
}

}  // namespace

SEAMTURN_DOCUMENT_WRITER("turn-chart",
                         "The clock of the order as a strip chart, kind by kind (SVG)",
                         "1.0",
                         document_names,
                         write_document);

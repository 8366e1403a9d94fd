// SPDX-License-Identifier: MIT
// The border of path-listing: one document for the whole part, none when nothing is turned.
#include <stdexcept>

#include "path_listing/listing.hpp"
#include "seamturn/plugin_abi/shim.hpp"

namespace {

using seamturn::plan_reader::PlanTree;
constexpr std::string_view listing_name = "paths/listing.xml";

std::vector<std::string> document_names(std::string_view plan_xml) {
  const PlanTree plan(plan_xml);
  if (!seamturn::path_listing::has_listing(plan)) return {};
  return {std::string(listing_name)};
}

void write_document(std::string_view plan_xml,
                    std::string_view name,
                    seamturn::plugin_abi::Sink& out) {
  const PlanTree plan(plan_xml);
  if (!seamturn::path_listing::has_listing(plan)) {
    throw std::runtime_error("no seam of this plan has a place on a positioner");
  }
  if (name != listing_name) {
    throw std::runtime_error("the plan gives no document \"" + std::string(name) + "\"");
  }
  out << seamturn::path_listing::listing_xml(plan);
}

}  // namespace

SEAMTURN_DOCUMENT_WRITER("path-listing",
                         "Points, settings and gates by stance, in the order of the clock (XML)",
                         "1.0",
                         document_names,
                         write_document);

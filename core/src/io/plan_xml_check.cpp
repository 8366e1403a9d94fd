// SPDX-License-Identifier: MIT
#include <algorithm>

#include "detail_file_context.hpp"
#include "detail_markup_check.hpp"
#include "detail_utf8.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/io/plan_xml.hpp"

namespace seamturn::io {

namespace {

constexpr std::string_view blanks = " \t\r\n";

/// Skips blanks, the XML declaration and comments.
std::string_view from_root(std::string_view bytes) {
  if (bytes.substr(0, detail::byte_order_mark.size()) == detail::byte_order_mark) {
    bytes.remove_prefix(detail::byte_order_mark.size());
  }
  for (;;) {
    bytes.remove_prefix(std::min(bytes.find_first_not_of(blanks), bytes.size()));
    const std::string_view end = bytes.substr(0, 2) == "<?" ? "?>" : "-->";
    if (bytes.substr(0, 2) != "<?" && bytes.substr(0, 4) != "<!--") return bytes;
    const std::size_t at = bytes.find(end);
    if (at == std::string_view::npos) return {};
    bytes.remove_prefix(at + end.size());
  }
}

/// The parts without which no writer can work; their content is the writer's business.
void check_parts(const detail::FileContext& context) {
  const detail::Element root = context.tree.root();
  for (const char* part : {"weldment", "consumables", "joints", "procedures", "timeline"}) {
    if (root.child(part)) continue;
    context.report.error(
        context.spot(root),
        "read.element.missing",
        "<plan> without <" + std::string(part) +
            "> found; expected a plan as the program wrote it; make the plan anew");
  }
}

}  // namespace

bool is_plan_xml(std::string_view bytes) {
  constexpr std::string_view start = "<plan";
  constexpr std::string_view any_major = "urn:seamturn:plan:";
  const std::string_view root = from_root(bytes);
  if (root.substr(0, start.size()) != start) return false;
  const std::string_view tag = root.substr(0, root.find('>'));
  return tag.size() > start.size() && blanks.find(tag[start.size()]) != std::string_view::npos &&
         tag.find(any_major) != std::string_view::npos;
}

void check_plan_xml(std::string_view bytes, const std::string& file_name) {
  detail::Report report;
  const auto text = std::make_shared<const detail::Source>(file_name, std::string(bytes));
  detail::MarkupTree tree;
  if (detail::check_markup(*text, report, tree)) {
    detail::FileContext context{text, tree, report};
    if (detail::check_root(context, "plan", plan_namespace)) check_parts(context);
  }
  if (report.error_count() > 0) throw base::InputError(report.sorted());
}

}  // namespace seamturn::io

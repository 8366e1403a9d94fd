// SPDX-License-Identifier: MIT
#include "detail_file_context.hpp"

#include <charconv>
#include <optional>

#include "detail_attribute_reader.hpp"
#include "detail_utf8.hpp"

namespace seamturn::io::detail {

namespace {

struct SchemaVersion {
  int major = 0;
  int minor = 0;
};

constexpr SchemaVersion known_version{1, 0};

std::optional<SchemaVersion> schema_version(std::string_view text) {
  SchemaVersion version;
  const char* end = text.data() + text.size();
  const auto major = std::from_chars(text.data(), end, version.major);
  if (major.ec != std::errc() || major.ptr == end || *major.ptr != '.') return std::nullopt;
  const auto minor = std::from_chars(major.ptr + 1, end, version.minor);
  if (minor.ec != std::errc() || minor.ptr != end) return std::nullopt;
  if (version.major < 1 || version.minor < 0) return std::nullopt;
  return version;
}

bool check_schema(FileContext& context, AttributeReader& root) {
  const std::string text = root.text("schema");
  if (text.empty()) return false;
  const std::optional<SchemaVersion> version = schema_version(text);
  if (!version) {
    root.error(
        "schema",
        "read.schema.malformed",
        "schema " + in_quotes(text) + " found; expected \"major.minor\", e.g. schema=\"1.0\"");
    return false;
  }
  if (version->major > known_version.major) {
    root.error("schema",
               "read.schema.newer_major",
               "schema " + in_quotes(text) +
                   " is newer than this program; expected 1.x; take a newer program, or a file "
                   "written for schema 1");
    return false;
  }
  if (version->minor > known_version.minor) {
    context.unknown = base::Severity::warning;
    context.report.add(base::Severity::warning,
                       root.spot("schema"),
                       "read.schema.newer_minor",
                       "schema " + in_quotes(text) +
                           " is newer than this program, which knows 1.0; unknown items are "
                           "passed over with a warning: check that none of them matters");
  }
  return true;
}

}  // namespace

bool check_root(FileContext& context, std::string_view root_name, std::string_view root_namespace) {
  const Element element = context.tree.root();
  const std::string expected = "<" + std::string(root_name) + " xmlns=\"" +
                               std::string(root_namespace) + "\" schema=\"1.0\" ...>";
  if (element.name() != root_name) {
    context.report.error(context.spot(element),
                         "read.root.wrong",
                         "root element " + in_quotes(element.name()) + " found; expected " +
                             expected + "; check that this is the right file");
    return false;
  }
  AttributeReader root(context, element);
  const MarkupTree::Attribute* const space = element.find_attribute("xmlns");
  if (space == nullptr || space->value() != root_namespace) {
    root.error("xmlns",
               "read.namespace.wrong",
               (space != nullptr ? "namespace " + in_quotes(space->value()) : "no namespace") +
                   " found; expected " + expected);
    return false;
  }
  return check_schema(context, root);
}

}  // namespace seamturn::io::detail

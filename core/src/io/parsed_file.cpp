// SPDX-License-Identifier: MIT
#include "detail_parsed_file.hpp"

#include <charconv>
#include <optional>

#include "detail_attribute_reader.hpp"
#include "detail_markup_check.hpp"
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

Spot ParsedFile::spot(const pugi::xml_attribute& attribute) const {
  return Spot{source.get(), offset(attribute.value())};
}

Spot ParsedFile::spot(const pugi::xml_node& element) const {
  return Spot{source.get(), offset(element.name())};
}

std::unique_ptr<ParsedFile> make_parsed_file(std::string name, std::string bytes) {
  auto file = std::make_unique<ParsedFile>();
  file->source = std::make_shared<const Source>(std::move(name), std::move(bytes));
  return file;
}

bool parse(ParsedFile& file, Report& report) {
  if (!check_markup(*file.source, report, file.index)) return false;
  file.buffer = file.source->bytes();
  const pugi::xml_parse_result result = file.document.load_buffer_inplace(
      file.buffer.data(), file.buffer.size(), pugi::parse_default, pugi::encoding_utf8);
  if (!result) {
    // Our own check is meant to be the stricter one; what it missed must still not pass.
    report.error(Spot{file.source.get(), static_cast<std::size_t>(result.offset)},
                 "read.xml.malformed",
                 std::string("the XML is broken near here (") + result.description() +
                     "); expected well-formed XML; mend the tag");
    return false;
  }
  return true;
}

bool check_root(FileContext& context, std::string_view root_name, std::string_view root_namespace) {
  const pugi::xml_node element = context.file.document.document_element();
  const std::string expected = "<" + std::string(root_name) + " xmlns=\"" +
                               std::string(root_namespace) + "\" schema=\"1.0\" ...>";
  if (element.name() != root_name) {
    context.report.error(context.file.spot(element),
                         "read.root.wrong",
                         "root element " + in_quotes(element.name()) + " found; expected " +
                             expected + "; check that this is the right file");
    return false;
  }
  const pugi::xml_attribute space = element.attribute("xmlns");
  if (!space || space.value() != root_namespace) {
    context.report.error(space ? context.file.spot(space) : context.file.spot(element),
                         "read.namespace.wrong",
                         (space ? "namespace " + in_quotes(space.value()) : "no namespace") +
                             " found; expected " + expected);
    return false;
  }
  AttributeReader root(context, element);
  return check_schema(context, root);
}

}  // namespace seamturn::io::detail

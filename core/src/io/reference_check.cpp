// SPDX-License-Identifier: MIT
#include "detail_reference_check.hpp"

#include <algorithm>
#include <charconv>
#include <iterator>
#include <optional>
#include <string>

#include "detail_byte_class.hpp"
#include "detail_encoding_check.hpp"
#include "detail_utf8.hpp"

namespace seamturn::io::detail {

namespace {

struct Named {
  std::string_view name;
  char means;
};
constexpr Named named[] = {{"amp", '&'}, {"lt", '<'}, {"gt", '>'}, {"quot", '"'}, {"apos", '\''}};

const Named* find_named(std::string_view name) {
  const auto* const found = std::find_if(
      std::begin(named), std::end(named), [&](const Named& one) { return one.name == name; });
  return found == std::end(named) ? nullptr : found;
}

bool is_word(std::string_view name) {
  return !name.empty() && std::all_of(name.begin(), name.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
  });
}

/// Of "176" or "xB0"; nothing when it is no character that text may hold.
std::optional<std::uint32_t> numbered_character(std::string_view digits) {
  const bool hexadecimal = digits.starts_with('x');
  if (hexadecimal) digits.remove_prefix(1);
  std::uint32_t code = 0;
  const char* end = digits.data() + digits.size();
  const auto parsed = std::from_chars(digits.data(), end, code, hexadecimal ? 16 : 10);
  if (parsed.ec != std::errc() || parsed.ptr != end || is_control(code)) return std::nullopt;
  return code;
}

/// What the reference that starts a text means, and how many bytes it takes; none: nothing.
struct Meaning {
  std::string text;
  std::size_t length = 0;
};
std::optional<Meaning> find_meaning(std::string_view text) {
  const std::size_t end = text.find(';');
  if (end == std::string_view::npos) return std::nullopt;
  const std::string_view name = text.substr(1, end - 1);
  if (const Named* one = find_named(name)) return Meaning{std::string(1, one->means), end + 1};
  if (!name.starts_with('#')) return std::nullopt;
  const std::optional<std::uint32_t> code = numbered_character(name.substr(1));
  if (!code) return std::nullopt;
  return Meaning{utf8_text(*code), end + 1};
}

}  // namespace

bool check_references(const Source& source,
                      std::size_t offset,
                      std::string_view value,
                      Report& report) {
  bool readable = true;
  for (std::size_t i = value.find('&'); i != std::string_view::npos; i = value.find('&', i + 1)) {
    const std::size_t end = value.find(';', i);
    const std::string_view name =
        end == std::string_view::npos ? std::string_view() : value.substr(i + 1, end - i - 1);
    if (find_named(name) != nullptr) continue;
    const Spot spot{&source, offset + i};
    if (name.starts_with('#')) {
      if (numbered_character(name.substr(1))) continue;
      report.error(spot,
                   "read.xml.entity",
                   in_quotes(value.substr(i, end - i + 1)) +
                       " numbers no character that text may hold; expected e.g. &#176; or &#xB0;");
      readable = false;
      continue;
    }
    const std::string found =
        is_word(name) ? "entity " + in_quotes(value.substr(i, end - i + 1)) + " is not known"
                      : "a bare \"&\" found";
    report.error(spot,
                 "read.xml.entity",
                 found +
                     "; expected one of &amp; &lt; &gt; &quot; &apos; or a character number; "
                     "write &amp; for the sign itself");
  }
  return readable;
}

std::string value_read(std::string_view written) {
  std::string value;
  value.reserve(written.size());
  while (!written.empty()) {
    std::size_t taken = 1;
    if (const auto meaning = written[0] == '&' ? find_meaning(written) : std::nullopt) {
      value += meaning->text;
      taken = meaning->length;
    } else {
      value += blank_bytes.holds(written[0]) ? ' ' : written[0];
      if (written.starts_with("\r\n")) taken = 2;
    }
    written.remove_prefix(taken);
  }
  return value;
}

}  // namespace seamturn::io::detail

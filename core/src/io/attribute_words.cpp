// SPDX-License-Identifier: MIT
// Words, unknown names and the places of an element.
#include <algorithm>
#include <array>

#include "detail_attribute_reader.hpp"
#include "detail_byte_class.hpp"
#include "detail_find_value.hpp"
#include "detail_utf8.hpp"
#include "seamturn/base/near_name.hpp"
#include "seamturn/base/same_text.hpp"

namespace seamturn::io::detail {

std::string_view take_piece(std::string_view& text) {
  text.remove_prefix(blank_bytes.run_end(text, 0));
  std::size_t end = 0;
  while (end < text.size() && !blank_bytes.holds(text[end])) ++end;
  const std::string_view piece = text.substr(0, end);
  text.remove_prefix(end);
  return piece;
}

std::string one_of(std::span<const std::string_view> words) {
  std::string text;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) text += i + 1 == words.size() ? " or " : ", ";
    text += words[i];
  }
  return text;
}

std::string did_you_mean(std::string_view found, std::span<const std::string_view> known) {
  const std::optional<std::string> near = base::find_near_name(found, known);
  return near ? "; did you mean \"" + *near + "\"?" : std::string();
}

std::optional<std::size_t> AttributeReader::read_word(const Attribute& attribute,
                                                      std::string_view found,
                                                      std::span<const std::string_view> words) {
  const auto at = std::find_if(words.begin(), words.end(), [&](std::string_view word) {
    return base::same_text(word, found);
  });
  if (at != words.end()) return static_cast<std::size_t>(at - words.begin());
  error(attribute.name(),
        "read.word.unknown",
        "attribute \"" + std::string(attribute.name()) + "\" is " + in_quotes(found) +
            "; expected " + one_of(words) + did_you_mean(found, words));
  return std::nullopt;
}

std::size_t AttributeReader::word(MarkedName name, std::span<const std::string_view> words) {
  const Attribute* attribute = ask(name);
  if (attribute != nullptr) return read_word(*attribute, attribute->value(), words).value_or(0);
  missing(name, one_of(words));
  return 0;
}

std::optional<std::size_t> AttributeReader::find_word(MarkedName name,
                                                      std::span<const std::string_view> words) {
  const Attribute* attribute = ask(name);
  if (attribute == nullptr) return std::nullopt;
  return read_word(*attribute, attribute->value(), words);
}

void AttributeReader::repeated(const Attribute& attribute, std::string_view word) {
  error(attribute.name(),
        "read.word.repeated",
        in_quotes(word) + " stands twice in attribute \"" + std::string(attribute.name()) +
            "\"; expected once");
}

bool AttributeReader::find_yes(MarkedName name) {
  constexpr std::array<std::string_view, 2> words = {"no", "yes"};
  return find_word(name, words).value_or(0) == 1;
}

base::Status AttributeReader::status(MarkedName name) {
  constexpr std::array<std::string_view, 5> words = {
      "verified", "from memory", "computed", "common practice", "proposed"};
  return base::find_status(words.at(word(name, words))).value_or(base::Status::from_memory);
}

Spot AttributeReader::spot() const {
  return context_.spot(element_);
}

Spot AttributeReader::spot_of(const Attribute& attribute) const {
  return Spot{context_.source.get(), attribute.value_at()};
}

Spot AttributeReader::spot(std::string_view name) const {
  const Attribute* const attribute = find(MarkedName(name));
  return attribute != nullptr ? spot_of(*attribute) : spot();
}

void AttributeReader::error(std::string_view name, std::string code, std::string text) {
  context_.report.error(spot(name), std::move(code), std::move(text));
}

void AttributeReader::error(std::string code, std::string text) {
  context_.report.error(spot(), std::move(code), std::move(text));
}

void AttributeReader::refuse(MarkedName name, const char* code, std::string_view why) {
  if (ask(name) == nullptr) return;
  error(name.text(),
        code,
        "attribute \"" + std::string(name.text()) + "\" found; expected none: " + std::string(why) +
            "; delete it");
}

void AttributeReader::finish() {
  if (was_asked_.count() == attributes_.size()) return;
  const std::vector<std::string_view> asked = asked_names();
  std::vector<std::string_view> seen;
  for (std::size_t i = 0; i < attributes_.size(); ++i) {
    const Attribute& attribute = attributes_[i];
    if (was_asked_[i] || base::is_among(attribute.name(), asked)) continue;
    const bool of_root = attribute.name() == "xmlns" || attribute.name() == "schema";
    if (of_root && element_.is_root()) continue;
    if (base::is_among(attribute.name(), seen)) continue;  // told as a duplicate
    seen.push_back(attribute.name());
    unknown(attribute);
  }
}

std::vector<std::string_view> AttributeReader::asked_names() const {
  std::vector<std::string_view> names;
  for (const MarkedName& asked : std::span(asked_).first(asked_count_)) {
    if (!base::is_among(asked.text(), names)) names.push_back(asked.text());
  }
  return names;
}

void AttributeReader::unknown(const Attribute& attribute) {
  const std::vector<std::string_view> known = asked_names();
  context_.report.add(context_.unknown,
                      spot_of(attribute),
                      "read.attribute.unknown",
                      "<" + std::string(element_.name()) + "> has no attribute " +
                          in_quotes(attribute.name()) + "; expected " +
                          (known.empty() ? "none" : one_of(known)) +
                          did_you_mean(attribute.name(), known) + "; correct or delete it");
}

void AttributeReader::finish(std::string_view key, joint::Places& places) {
  finish();
  static_cast<void>(keep_places(key, places));
}

bool AttributeReader::keep_places(std::string_view key,
                                  joint::Places& places,
                                  const Element& part) const {
  joint::Places::Element element{context_.offset(element_), std::nullopt};
  if (part) element.part = context_.offset(part);
  return places.add(key, context_.source, element, find_value);
}

void check_children(FileContext& context,
                    const Element& element,
                    std::span<const std::string_view> known) {
  for (const Element& child : element.children()) {
    const std::string_view name = child.name();
    if (base::is_among(name, known)) continue;
    const std::string expected = known.empty() ? "no element in it" : one_of(known);
    context.report.add(context.unknown,
                       context.spot(child),
                       "read.element.unknown",
                       "element <" + std::string(printable(name.substr(0, 60))) + "> found in <" +
                           std::string(element.name()) + ">; expected " + expected +
                           did_you_mean(name, known) + "; correct or delete it");
  }
}

Element only_child(FileContext& context, const Element& element, std::string_view name, Need need) {
  const Element first = element.child(name);
  if (!first && need == Need::required) {
    context.report.error(context.spot(element),
                         "read.element.missing",
                         "<" + std::string(element.name()) + "> holds no <" + std::string(name) +
                             ">; expected one; add it");
  }
  const Element second = first.next(name);
  if (second) {
    context.report.error(context.spot(second),
                         "read.element.repeated",
                         "a second <" + std::string(name) + "> in <" + std::string(element.name()) +
                             ">; expected one; delete one of them");
  }
  return first;
}

}  // namespace seamturn::io::detail

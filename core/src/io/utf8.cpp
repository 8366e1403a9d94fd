// SPDX-License-Identifier: MIT
#include "detail_utf8.hpp"

#include <iterator>

namespace seamturn::io::detail {

namespace {

struct Form {
  std::uint32_t mask;
  std::uint32_t lead;
  std::size_t length;
  std::uint32_t smallest;  // below it the form is longer than needed
};
constexpr Form utf8_forms[] = {
    {0x80U, 0x00U, 1, 0x0U},
    {0xE0U, 0xC0U, 2, 0x80U},
    {0xF0U, 0xE0U, 3, 0x800U},
    {0xF8U, 0xF0U, 4, 0x10000U},
};

std::uint32_t byte_at(std::string_view text, std::size_t i) {
  return static_cast<unsigned char>(text[i]);
}

}  // namespace

Character character_at_start(std::string_view text) {
  const std::uint32_t lead = byte_at(text, 0);
  for (const Form& form : utf8_forms) {
    if ((lead & form.mask) != form.lead) continue;
    if (text.size() < form.length) return {};
    std::uint32_t code = lead & ~form.mask;
    for (std::size_t i = 1; i < form.length; ++i) {
      const std::uint32_t next = byte_at(text, i);
      if ((next & 0xC0U) != 0x80U) return {};
      code = (code << 6U) | (next & 0x3FU);
    }
    const bool surrogate = code >= 0xD800U && code <= 0xDFFFU;
    if (code < form.smallest || surrogate || code > 0x10FFFFU) return {};
    return Character{code, form.length};
  }
  return {};
}

std::string utf8_text(std::uint32_t code) {
  std::size_t form = 0;
  while (form + 1 < std::size(utf8_forms) && code >= utf8_forms[form + 1].smallest) ++form;
  std::string text(utf8_forms[form].length, '\0');
  for (std::size_t i = text.size() - 1; i > 0; --i, code >>= 6U) {
    text[i] = static_cast<char>(0x80U | (code & 0x3FU));
  }
  text[0] = static_cast<char>(utf8_forms[form].lead | code);
  return text;
}

bool is_xml_character(std::uint32_t code) {
  if (code < 0x20U) return code == 0x9U || code == 0xAU || code == 0xDU;
  if (code >= 0xD800U && code <= 0xDFFFU) return false;
  return code != 0xFFFEU && code != 0xFFFFU && code <= 0x10FFFFU;
}

std::string printable(std::string_view text) {
  std::string out;
  while (!text.empty()) {
    const Character character = character_at_start(text);
    const bool control = character.code == 0x7FU ||
                         (character.code >= 0x80U && character.code <= 0x9FU) ||
                         character.code == 0xDU || character.code == 0xAU;
    const std::size_t length = character.length == 0 ? 1 : character.length;
    const bool fine = character.length > 0 && is_xml_character(character.code) && !control;
    if (fine) {
      out += text.substr(0, length);
    } else {
      out += '?';
    }
    text.remove_prefix(length);
  }
  return out;
}

std::string in_quotes(std::string_view text) {
  constexpr std::size_t shown = 60;
  std::string_view head = text.substr(0, shown);
  // Not in the middle of a character.
  while (head.size() < text.size() && !head.empty() &&
         (static_cast<unsigned char>(text[head.size()]) & 0xC0U) == 0x80U) {
    head.remove_suffix(1);
  }
  return '"' + printable(head) + (head.size() < text.size() ? "...\"" : "\"");
}

}  // namespace seamturn::io::detail

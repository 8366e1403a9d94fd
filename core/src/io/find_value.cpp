// SPDX-License-Identifier: MIT
#include "detail_byte_class.hpp"
#include "detail_find_value.hpp"

namespace seamturn::io::detail {

std::optional<std::size_t> find_value(std::string_view text,
                                      std::size_t element,
                                      std::string_view attribute) {
  std::size_t at = name_bytes.run_end(text, element);
  while (true) {
    at = blank_bytes.run_end(text, at);
    const std::size_t name_end = name_bytes.run_end(text, at);
    if (name_end == at) return std::nullopt;  // "/>" or ">"
    const std::string_view name = text.substr(at, name_end - at);
    const std::size_t quote = text.find_first_of("\"'", name_end);
    if (quote == std::string_view::npos) return std::nullopt;
    if (name == attribute) return quote + 1;
    at = text.find(text[quote], quote + 1);
    if (at == std::string_view::npos) return std::nullopt;
    ++at;
  }
}

}  // namespace seamturn::io::detail

// SPDX-License-Identifier: MIT
#include <algorithm>
#include <charconv>

#include "seamturn/joint/stages.hpp"

namespace seamturn::joint {

namespace {

constexpr int most_layers = 1000;

/// Takes the part before the first point; the rest follows it.
std::string_view take_part(std::string_view& rest) {
  const std::size_t point = rest.find('.');
  const std::string_view part = rest.substr(0, point);
  rest = point == std::string_view::npos ? std::string_view() : rest.substr(point + 1);
  return part;
}

/// A layer number and nothing else.
std::optional<int> read_layer(std::string_view text) {
  int layer = 0;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), layer);
  const bool all = fault == std::errc() && end == text.data() + text.size();
  if (!all || layer < 1 || layer > most_layers || text.front() == '0') return std::nullopt;
  return layer;
}

/// "2", "2-3", "2-".
bool read_layers(std::string_view text, HandEntry& entry) {
  const std::size_t dash = text.find('-');
  const std::optional<int> from = read_layer(text.substr(0, dash));
  if (!from) return false;
  entry.from_layer = *from;
  entry.to_layer = from;
  if (dash == std::string_view::npos) return true;
  const std::string_view last = text.substr(dash + 1);
  entry.to_layer = last.empty() ? std::nullopt : read_layer(last);
  return last.empty() || (entry.to_layer && *entry.to_layer >= *from);
}

}  // namespace

std::optional<HandEntry> read_hand_entry(std::string_view text) {
  HandEntry entry;
  entry.text = text;
  if (text.empty() || text.back() == '.') return std::nullopt;
  std::string_view rest = text;
  entry.joint = take_part(rest);
  if (entry.joint.empty()) return std::nullopt;
  if (rest.empty()) return entry;
  std::string_view part = take_part(rest);
  if (part == "a" || part == "b") {
    entry.side = part.front();
    if (rest.empty()) return entry;
    part = take_part(rest);
  }
  if (!rest.empty() || !read_layers(part, entry)) return std::nullopt;
  return entry;
}

bool overlap(const HandEntry& a, const HandEntry& b) {
  if (a.joint != b.joint || (a.side != b.side && a.side != 0 && b.side != 0)) return false;
  const bool a_ends_before = a.to_layer && *a.to_layer < b.from_layer;
  const bool b_ends_before = b.to_layer && *b.to_layer < a.from_layer;
  return !a_ends_before && !b_ends_before;
}

}  // namespace seamturn::joint

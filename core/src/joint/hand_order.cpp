// SPDX-License-Identifier: MIT
#include <algorithm>
#include <charconv>

#include "seamturn/joint/stages.hpp"
#include "seamturn/joint/weld_length.hpp"

namespace seamturn::joint {

namespace {

constexpr int most_layers = 1000;

/// A whole number from 1 on and nothing else.
std::optional<int> read_count(std::string_view text, int most) {
  int count = 0;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), count);
  const bool all = fault == std::errc() && end == text.data() + text.size();
  if (!all || count < 1 || count > most || text.front() == '0') return std::nullopt;
  return count;
}

/// Takes the part before the first point; the rest follows it.
std::string_view take_part(std::string_view& rest) {
  const std::size_t point = rest.find('.');
  const std::string_view part = rest.substr(0, point);
  rest = point == std::string_view::npos ? std::string_view() : rest.substr(point + 1);
  return part;
}

/// Takes the "/2" off a name; false: what follows the stroke is no segment.
bool take_segment(std::string_view& name, HandEntry& entry) {
  const std::size_t stroke = name.find('/');
  if (stroke == std::string_view::npos) return true;
  const std::optional<int> segment = read_count(name.substr(stroke + 1), most_segments);
  entry.segment = segment.value_or(0);
  name = name.substr(0, stroke);
  return segment.has_value();
}

/// "2", "2-3", "2-".
bool read_layers(std::string_view text, HandEntry& entry) {
  const std::size_t dash = text.find('-');
  const std::optional<int> from = read_count(text.substr(0, dash), most_layers);
  if (!from) return false;
  entry.from_layer = *from;
  entry.to_layer = from;
  if (dash == std::string_view::npos) return true;
  const std::string_view last = text.substr(dash + 1);
  entry.to_layer = last.empty() ? std::nullopt : read_count(last, most_layers);
  return last.empty() || (entry.to_layer && *entry.to_layer >= *from);
}

}  // namespace

std::optional<HandEntry> read_hand_entry(std::string_view text) {
  HandEntry entry;
  entry.text = text;
  if (text.empty() || text.back() == '.') return std::nullopt;
  std::string_view rest = text;
  std::string_view part = take_part(rest);
  if (!take_segment(part, entry) || part.empty()) return std::nullopt;
  entry.joint = part;
  if (rest.empty()) return entry;
  part = take_part(rest);
  if (entry.segment == 0 && (part.starts_with('a') || part.starts_with('b'))) {
    entry.side = part.front();
    if (!take_segment(part, entry) || part.size() > 1) return std::nullopt;
    if (rest.empty()) return entry;
    part = take_part(rest);
  }
  if (!rest.empty() || !read_layers(part, entry)) return std::nullopt;
  return entry;
}

bool overlap(const HandEntry& a, const HandEntry& b) {
  const auto differ = [](int one, int other) { return one != other && one != 0 && other != 0; };
  if (a.joint != b.joint || differ(a.side, b.side) || differ(a.segment, b.segment)) return false;
  const bool a_ends_before = a.to_layer && *a.to_layer < b.from_layer;
  const bool b_ends_before = b.to_layer && *b.to_layer < a.from_layer;
  return !a_ends_before && !b_ends_before;
}

}  // namespace seamturn::joint

// SPDX-License-Identifier: MIT
#include <algorithm>
#include <charconv>

#include "seamturn/joint/stages.hpp"
#include "seamturn/joint/weld_length.hpp"

namespace seamturn::joint {

namespace {

constexpr int most_layers = 1000;  // or passes

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

/// "2", "2-3", "2-": of layers or passes.
bool read_counts(std::string_view text, HandEntry& entry) {
  const std::size_t dash = text.find('-');
  const std::optional<int> from = read_count(text.substr(0, dash), most_layers);
  if (!from) return false;
  entry.from = *from;
  entry.to = from;
  if (dash == std::string_view::npos) return true;
  const std::string_view last = text.substr(dash + 1);
  entry.to = last.empty() ? std::nullopt : read_count(last, most_layers);
  return last.empty() || (entry.to && *entry.to >= *from);
}

/// A joint, one of its seams, segments of these, or layers of them.
bool read_name(std::string_view rest, HandEntry& entry) {
  std::string_view part = take_part(rest);
  if (!take_segment(part, entry) || part.empty()) return false;
  entry.joint = part;
  if (rest.empty()) return true;
  part = take_part(rest);
  if (entry.segment == 0 && (part.starts_with('a') || part.starts_with('b'))) {
    entry.side = part.front();
    if (!take_segment(part, entry) || part.size() > 1) return false;
    if (rest.empty()) return true;
    part = take_part(rest);
  }
  return rest.empty() && read_counts(part, entry);
}

}  // namespace

std::optional<HandEntry> read_hand_entry(std::string_view text) {
  HandEntry entry;
  entry.text = text;
  const std::size_t colon = text.find(':');
  const std::string_view name = text.substr(0, colon);
  entry.from = 0;
  if (name.empty() || name.back() == '.' || !read_name(name, entry)) return std::nullopt;
  const bool names_layers = entry.from > 0;
  if (!names_layers) entry.from = 1;
  if (colon == std::string_view::npos) return entry;
  entry.in_passes = true;
  if (names_layers || !read_counts(text.substr(colon + 1), entry)) return std::nullopt;
  return entry;
}

bool overlap(const HandEntry& a, const HandEntry& b) {
  const auto differ = [](int one, int other) { return one != other && one != 0 && other != 0; };
  if (a.joint != b.joint || differ(a.side, b.side) || differ(a.segment, b.segment)) return false;
  if (a.in_passes != b.in_passes) return true;
  const bool a_ends_before = a.to && *a.to < b.from;
  const bool b_ends_before = b.to && *b.to < a.from;
  return !a_ends_before && !b_ends_before;
}

}  // namespace seamturn::joint

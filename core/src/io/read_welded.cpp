// SPDX-License-Identifier: MIT
// How much of a seam is welded, as the trade writes it.
#include <array>
#include <initializer_list>

#include "detail_drafts.hpp"

namespace seamturn::io::detail {

namespace {

using joint::LengthForm;

constexpr std::array<std::string_view, 3> length_forms = {
    "continuous", "all-round", "intermittent"};
constexpr std::array<std::string_view, 2> patterns = {"chain", "staggered"};
constexpr std::array<std::string_view, 2> travels = {"outward", "back-step"};

void read_elements(AttributeReader& reader, joint::WeldLength& asked) {
  constexpr int most_elements = 1000;
  asked.count = reader.count("count", 1, most_elements);
  asked.each_mm = reader.quantity("each", ranges::size);
  asked.gap_mm = reader.quantity("gap", ranges::size);
  asked.pattern =
      static_cast<joint::LengthPattern>(reader.find_word("pattern", patterns).value_or(0));
}

}  // namespace

std::optional<WeldedDraft> find_welded(FileContext& context,
                                       const Element& element,
                                       const std::string& key,
                                       joint::Places& places) {
  const Element welded = only_child(context, element, "welded", Need::may_be_absent);
  if (!welded) return std::nullopt;
  AttributeReader reader(context, welded);
  WeldedDraft draft;
  draft.spot = reader.spot();
  joint::WeldLength& asked = draft.asked;
  asked.form = static_cast<LengthForm>(reader.find_word("form", length_forms).value_or(0));
  if (asked.form == LengthForm::intermittent) {
    read_elements(reader, asked);
    for (const MarkedName name :
         std::initializer_list<MarkedName>{"corner-clear", "stop-stagger"}) {
      reader.refuse(
          name, "read.welded.form", "the elements of an intermittent weld lie as counted");
    }
  } else {
    for (const MarkedName name :
         std::initializer_list<MarkedName>{"count", "each", "gap", "pattern"}) {
      reader.refuse(name, "read.welded.form", "it belongs to form=\"intermittent\"");
    }
  }
  const auto length = [&](MarkedName name) {
    return reader.find_quantity(name, ranges::weld_length).value_or(0.0);
  };
  asked.run_on_mm = length("run-on");
  asked.run_off_mm = length("run-off");
  asked.end_return_mm = length("end-return");
  asked.overlap_mm = length("overlap");
  asked.corner_clear_mm = length("corner-clear");
  asked.stop_stagger_mm = length("stop-stagger");
  if (reader.has("segments")) asked.segments = reader.count("segments", 1, joint::most_segments);
  asked.travel = static_cast<joint::SegmentTravel>(reader.find_word("travel", travels).value_or(0));
  asked.crater_s = reader.find_quantity("crater-time", ranges::time);
  reader.finish(key + "/welded", places);
  check_children(context, welded, {});
  return draft;
}

}  // namespace seamturn::io::detail

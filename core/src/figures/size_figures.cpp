// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>

#include "detail_figures.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/joint/groove_size.hpp"
#include "seamturn/joint/weld_size.hpp"

namespace seamturn::figures::detail {

namespace {

using base::Angle;
using joint::SizeCheck;

std::size_t choice_or(Arguments& arguments,
                      std::string_view key,
                      const std::vector<std::string_view>& words,
                      std::size_t fallback) {
  return arguments.has(key) ? arguments.choice(key, words) : fallback;
}

/// "at least 5 mm: holds (from memory)".
std::string short_text(const SizeCheck& check) {
  return std::string(check.bound == joint::SizeBound::at_least ? "at least " : "at most ") +
         base::digits_text(check.required) + " " + check.unit + ": " +
         (check.holds ? "holds" : "fails") + " (" +
         std::string(base::status_name(check.citation.status)) + ")";
}

void add_checks(ResultMaker& result, const std::vector<SizeCheck>& checks) {
  result.value("verdict", std::string(joint::verdict_name(joint::size_verdict(checks))));
  for (const SizeCheck& check : checks) {
    std::string name = check.rule;
    std::replace(name.begin(), name.end(), '-', '_');
    result.value(name, short_text(check));
  }
  result.findings(joint::size_findings(checks));
}

/// Whether the table by thickness is entered with the thinner part.
bool low_hydrogen_of(Arguments& arguments) {
  if (arguments.has("hydrogen")) return arguments.choice("hydrogen", {"low", "other"}) == 0;
  const std::string process = arguments.has("process") ? arguments.text("process") : "135";
  const std::optional<bool> known = joint::is_low_hydrogen(process);
  if (!known) arguments.add_usage("process " + process + " needs hydrogen=low or hydrogen=other");
  return known.value_or(true);
}

joint::FilletSize fillet_size(Arguments& arguments) {
  joint::FilletSize size;
  size.thinner_mm = arguments.number("thinner");
  size.thicker_mm = arguments.number("thicker", size.thinner_mm);
  size.between_plates = Angle::rad(arguments.number("angle", Angle::deg(90.0).rad()));
  size.low_hydrogen = low_hydrogen_of(arguments);
  const std::size_t load = choice_or(arguments, "load", {"static", "cyclic", "end"}, 0);
  size.cyclic_load = load == 1;
  size.end_loaded = load == 2;
  size.edge_thickness_mm = arguments.find_number("edge");
  size.length_mm = arguments.find_number("length");
  size.root_loss_mm = arguments.find_number("root-loss");
  size.rules = static_cast<joint::SizeRules>(
      choice_or(arguments, "rules", {"european", "american", "all"}, 2));
  size.column =
      static_cast<joint::SizeColumn>(choice_or(arguments, "column", {"metric", "inch"}, 0));
  size.german_annex = choice_or(arguments, "annex", {"none", "de"}, 0) == 1;
  if (arguments.has("clear")) {
    if (!size.length_mm) arguments.add_usage("clear= needs length= of a segment");
    size.intermittent =
        joint::IntermittentRun{size.length_mm.value_or(0.0), arguments.number("clear")};
  }
  if (arguments.has("leg") && arguments.has("throat")) {
    arguments.add_usage("give leg= or throat=, not both");
  }
  size.leg_mm = arguments.has("throat")
                    ? arguments.number("throat") / std::cos(0.5 * size.between_plates.rad())
                    : arguments.number("leg");
  return size;
}

Answer fillet_answer(Arguments& arguments) {
  const joint::FilletSize size = fillet_size(arguments);
  if (!arguments.good()) return FigureResult{};
  const base::Outcome<joint::LeastLeg> least = joint::least_fillet_leg(size);
  if (!least) return least.error();
  ResultMaker result("weld-size");
  result.principal(least->leg_mm, "mm")
      .value("least_leg_mm", least->leg_mm, "mm")
      .value("governed_by", least->rule)
      .value("status", std::string(base::status_name(least->citation.status)));
  if (size.edge_thickness_mm) {
    result.value("largest_edge_leg_mm", joint::largest_edge_leg_mm(*size.edge_thickness_mm), "mm");
  }
  if (!arguments.has("leg") && !arguments.has("throat")) return result.done();
  const base::Outcome<std::vector<SizeCheck>> checks = joint::check_fillet_size(size);
  if (!checks) return checks.error();
  const auto throat = joint::counted_throat(size.leg_mm, size.between_plates, size.root_loss_mm);
  if (!throat) return throat.error();
  result.value("leg_mm", size.leg_mm, "mm").value("counted_throat_mm", throat->throat_mm, "mm");
  if (size.length_mm) {
    result.value("counted_leg_mm", joint::counted_leg_mm(size.leg_mm, *size.length_mm), "mm");
  }
  if (size.end_loaded && size.length_mm) {
    result.value("length_share", joint::end_loaded_share_ratio(size.leg_mm, *size.length_mm), "");
  }
  add_checks(result, *checks);
  return result.done();
}

joint::PartialGroove partial_groove(Arguments& arguments) {
  joint::PartialGroove groove;
  const std::size_t shape = choice_or(arguments, "groove", {"v", "bevel", "j"}, 1);
  constexpr joint::PartialShape shapes[] = {
      joint::PartialShape::v, joint::PartialShape::bevel, joint::PartialShape::u_or_j};
  constexpr double usual_deg[] = {60.0, 45.0, 20.0};
  groove.shape = shapes[shape];
  groove.angle = Angle::rad(arguments.number("angle", Angle::deg(usual_deg[shape]).rad()));
  groove.depth_mm = arguments.number("depth");
  groove.process = arguments.has("process") ? arguments.text("process") : "135";
  const std::string position = arguments.has("position") ? arguments.text("position") : "PA";
  if (const auto known = process::find_position(position)) {
    groove.position = *known;
  } else {
    arguments.add_bad_value("key position=: \"" + position + "\" is none of PA to PG",
                            "figure.word.unknown");
  }
  return groove;
}

Answer partial_answer(Arguments& arguments) {
  const double thinner_mm = arguments.number("thinner");
  const joint::PartialGroove groove = partial_groove(arguments);
  if (!(thinner_mm > 0.0)) arguments.add_bad_value("thinner must be above zero");
  if (arguments.has("leg") && !(arguments.number("leg") > 0.0)) {
    arguments.add_bad_value("leg must be above zero");
  }
  if (!arguments.good()) return FigureResult{};
  const double least_mm = joint::least_partial_throat_mm(thinner_mm);
  ResultMaker result("weld-size");
  result.principal(least_mm, "mm").value("least_throat_mm", least_mm, "mm");
  if (!arguments.has("depth")) return result.done();
  const base::Outcome<joint::CountedGroove> counted = joint::counted_groove_throat(groove);
  if (!counted) return counted.error();
  result.value("counted_throat_mm", counted->throat_mm, "mm")
      .value("deduction_mm", counted->deduction_mm, "mm")
      .value("deduction_status", std::string(base::status_name(counted->citation.status)));
  if (arguments.has("leg")) {
    result.value("combined_throat_mm",
                 joint::combined_throat_mm(counted->throat_mm, arguments.number("leg")),
                 "mm");
  }
  const auto checks = joint::check_partial_size({counted->throat_mm, thinner_mm});
  if (!checks) return checks.error();
  add_checks(result, *checks);
  return result.done();
}

Answer plug_answer(Arguments& arguments, bool is_slot) {
  joint::PlugSize size;
  size.plate_mm = arguments.number("thinner");
  if (!(size.plate_mm > 0.0)) arguments.add_bad_value("thinner must be above zero");
  size.fill_mm = arguments.number("fill", size.plate_mm);
  size.width_mm = arguments.number("width");
  if (is_slot) size.slot_length_mm = arguments.find_number("slot-length");
  if (is_slot && arguments.has("width") && !size.slot_length_mm) {
    arguments.add_usage("weld slot with width= needs slot-length=");
  }
  if (!arguments.good()) return FigureResult{};
  const double least_mm = joint::least_plug_width_mm(size.plate_mm);
  ResultMaker result("weld-size");
  result.principal(least_mm, "mm")
      .value("least_width_mm", least_mm, "mm")
      .value("largest_width_mm", joint::largest_plug_width_mm(size.plate_mm), "mm")
      .value("least_fill_mm", joint::least_plug_fill_mm(size.plate_mm), "mm");
  if (!arguments.has("width")) return result.done();
  const auto checks = joint::check_plug_size(size);
  if (!checks) return checks.error();
  add_checks(result, *checks);
  return result.done();
}

}  // namespace

Answer weld_size_figure(Arguments& arguments) {
  switch (choice_or(arguments, "weld", {"fillet", "partial", "plug", "slot"}, 0)) {
    case 1:
      return partial_answer(arguments);
    case 2:
      return plug_answer(arguments, false);
    case 3:
      return plug_answer(arguments, true);
    default:
      return fillet_answer(arguments);
  }
}

}  // namespace seamturn::figures::detail

// SPDX-License-Identifier: MIT
// Shrinkage by rule, general tolerances by class.
#include <algorithm>
#include <cmath>
#include <initializer_list>

#include "detail_figures.hpp"
#include "seamturn/base/factors.hpp"
#include "seamturn/shrinkage/rules.hpp"
#include "seamturn/shrinkage/tolerance_class.hpp"

namespace seamturn::figures::detail {

namespace {

using shrinkage::Allowance;
using shrinkage::RuleValue;

/// What rules and allowances say of one thing: the band lies between them.
class Said {
 public:
  explicit Said(std::string_view rule) : rule_(rule) {}
  void rule(const std::string& name, const RuleValue& value) {
    take(name, value.mm, value.citation);
    base::append_findings(findings_, value.findings);
  }
  /// An end of an allowance, `times` for several welds.
  void allowance(const std::string& name, double mm, const base::Citation& citation) {
    take(name, mm, citation);
  }
  void silent(const std::string& name) { silent_.push_back(name); }

  [[nodiscard]] FigureResult done() const {
    const auto by_amount = [](double a, double b) { return std::abs(a) < std::abs(b); };
    const double high = *std::max_element(mm_.begin(), mm_.end(), by_amount);
    const double low = silent_.empty() ? *std::min_element(mm_.begin(), mm_.end(), by_amount) : 0.0;
    ResultMaker result("shrinkage");
    result.principal(high, "mm").value("rule", rule_).value("low_mm", low, "mm");
    result.value("high_mm", high, "mm");
    for (std::size_t i = 0; i < names_.size(); ++i) {
      result.value(names_[i] + "_mm", mm_[i], "mm").value(names_[i] + "_status", statuses_[i]);
    }
    for (const std::string& name : silent_) {
      result.value(name, std::string("silent here: the low end is 0"));
    }
    return result.findings(findings_).done();
  }

 private:
  void take(const std::string& name, double mm, const base::Citation& citation) {
    names_.push_back(name);
    mm_.push_back(mm);
    statuses_.emplace_back(base::status_name(citation.status));
  }
  std::string rule_;
  std::vector<std::string> names_;
  std::vector<double> mm_;
  std::vector<std::string> statuses_;
  std::vector<std::string> silent_;
  std::vector<base::Finding> findings_;
};

/// The force by heat; what a beam makes of it rests on its coefficient.
double force_n(const Arguments& arguments) {
  using base::j_per_kj;
  return shrinkage::force_by_heat_n(arguments.number("heat-input") * j_per_kj);
}
RuleValue resting_on_force(RuleValue value) {
  value.citation = {"SHRINK-FORCE", "F = 0.2 Q", base::Status::from_memory};
  return value;
}

/// False, and said in the arguments, when a key of this rule is missing or one of another is given.
bool has_exactly(Arguments& arguments,
                 std::string_view rule,
                 std::initializer_list<std::string_view> needed,
                 std::initializer_list<std::string_view> allowed = {}) {
  bool good = true;
  for (const base::FigureKey& key : shrinkage::shrinkage_card().keys) {
    if (key.required) continue;
    const auto in = [&key](auto list) {
      return std::find(list.begin(), list.end(), key.name) != list.end();
    };
    const bool given = arguments.has(key.name);
    if (given == in(needed) || (given && in(allowed))) continue;
    arguments.add_usage(std::string(key.name) + "= " +
                        (given ? "does not belong to" : "is missing for") +
                        " rule=" + std::string(rule));
    good = false;
  }
  return good;
}

Answer across_butt(Arguments& arguments) {
  if (!has_exactly(arguments, "across-butt", {"area", "thickness"}, {"gap"})) return FigureResult{};
  const shrinkage::ButtWeld weld{
      arguments.number("area"), arguments.number("thickness"), arguments.number("gap")};
  Said said("across-butt");
  said.rule("by_mean_width", shrinkage::butt_by_mean_width(weld));
  said.rule("by_area_and_gap", shrinkage::butt_by_area_and_gap(weld));
  return said.done();
}

Answer across_fillets(Arguments& arguments, std::string_view rule) {
  if (!has_exactly(arguments, rule, {"leg", "thickness"})) return FigureResult{};
  const shrinkage::FilletPair pair{arguments.number("leg"), arguments.number("thickness")};
  Said said(rule);
  said.rule("by_rule",
            rule == "across-tee" ? shrinkage::tee_fillets(pair) : shrinkage::lap_fillets(pair));
  const base::Outcome<Allowance> allowed = shrinkage::allowance_across_fillet(pair);
  if (allowed) {
    said.allowance("allowance_of_two", 2.0 * allowed->mm.high, allowed->citation);
  } else {
    said.silent("allowance_of_two");
  }
  return said.done();
}

Answer along_butt(Arguments& arguments) {
  if (!has_exactly(arguments, "along-butt", {"current", "length", "thickness"})) {
    return FigureResult{};
  }
  const double length_mm = arguments.number("length");
  Said said("along-butt");
  said.rule("by_rule",
            shrinkage::along_butt(
                {arguments.number("current"), length_mm, arguments.number("thickness")}));
  const Allowance allowed = shrinkage::allowance_along_butt(length_mm);
  said.allowance("allowance", allowed.mm.high, allowed.citation);
  return said.done();
}

Answer along_fillet(Arguments& arguments) {
  if (!has_exactly(arguments, "along-fillet", {"area", "section-area", "length"}, {"heat-input"})) {
    return FigureResult{};
  }
  const double length_mm = arguments.number("length");
  const double section_mm2 = arguments.number("section-area");
  const base::Outcome<RuleValue> by_rule =
      shrinkage::along_fillet({arguments.number("area"), section_mm2, length_mm});
  if (!by_rule) return by_rule.error();
  Said said("along-fillet");
  said.rule("by_rule", *by_rule);
  if (arguments.has("heat-input")) {
    said.rule("by_force",
              resting_on_force(
                  shrinkage::shortening_by_force(force_n(arguments), length_mm, section_mm2)));
  }
  const Allowance allowed = shrinkage::allowance_along_fillet(length_mm);
  said.allowance("allowance", allowed.mm.high, allowed.citation);
  return said.done();
}

Answer bow(Arguments& arguments) {
  if (!has_exactly(arguments, "bow", {"area", "heat-input", "arm", "length", "second-moment"})) {
    return FigureResult{};
  }
  const shrinkage::BowedMember member{
      arguments.number("arm"), arguments.number("length"), arguments.number("second-moment")};
  Said said("bow");
  said.rule("by_area", shrinkage::bow_by_area(arguments.number("area"), member));
  said.rule("by_force", resting_on_force(shrinkage::bow_by_force(force_n(arguments), member)));
  return said.done();
}

Answer tilt(Arguments& arguments) {
  if (!has_exactly(arguments, "tilt", {"width", "leg", "thickness"})) return FigureResult{};
  const double width_mm = arguments.number("width");
  const double thickness_mm = arguments.number("thickness");
  Said said("tilt");
  said.rule("by_rule", shrinkage::flange_tilt({width_mm, arguments.number("leg"), thickness_mm}));
  const base::Outcome<Allowance> lean = shrinkage::published_lean(width_mm, thickness_mm);
  if (lean) {
    said.allowance("lean_of_1_deg", lean->mm.low, lean->citation);
    said.allowance("lean_of_3_deg", lean->mm.high, lean->citation);
  } else {
    said.silent("published_lean");
  }
  return said.done();
}

}  // namespace

Answer shrinkage_figure(Arguments& arguments) {
  arguments.require_positive({"area",
                              "thickness",
                              "leg",
                              "length",
                              "current",
                              "section-area",
                              "heat-input",
                              "second-moment",
                              "width"});
  const std::vector<std::string_view> rules = {
      "across-butt", "across-tee", "across-lap", "along-butt", "along-fillet", "bow", "tilt"};
  const std::size_t rule = arguments.choice("rule", rules);
  if (arguments.number("gap") < 0.0) arguments.add_bad_value("gap= must not be below 0");
  if (!arguments.good()) return FigureResult{};
  if (rule == 0) return across_butt(arguments);
  if (rule == 1 || rule == 2) return across_fillets(arguments, rules[rule]);
  if (rule == 3) return along_butt(arguments);
  if (rule == 4) return along_fillet(arguments);
  return rule == 5 ? bow(arguments) : tilt(arguments);
}

Answer tolerance_figure(Arguments& arguments) {
  arguments.require_positive({"size"});
  const std::size_t choice = arguments.choice("class", {"A", "B", "C", "D", "E", "F", "G", "H"});
  if (!arguments.good()) return FigureResult{};
  const double size_mm = arguments.number("size");
  ResultMaker result("tolerance");
  const bool is_size = choice < 4;
  const base::Outcome<shrinkage::Tolerance> tolerance =
      is_size ? shrinkage::linear_tolerance(static_cast<shrinkage::SizeClass>(choice), size_mm)
              : shrinkage::form_tolerance(static_cast<shrinkage::FormClass>(choice - 4), size_mm);
  if (!tolerance) return tolerance.error();
  result.principal(tolerance->mm, "mm")
      .value("of", std::string(is_size ? "a length, plus and minus" : "form, width of the zone"))
      .value("row", tolerance->row)
      .value("status", std::string(base::status_name(tolerance->citation.status)));
  if (is_size) {
    const shrinkage::AngularTolerance angle =
        shrinkage::angular_tolerance(static_cast<shrinkage::SizeClass>(choice), size_mm);
    result.value("angle_minutes", angle.minutes, "")
        .value("angle_mm_per_m", angle.mm_per_m, "mm/m")
        .value("angle_row", angle.row)
        .value("angle_status", std::string(base::status_name(angle.citation.status)));
  }
  return result.done();
}

}  // namespace seamturn::figures::detail

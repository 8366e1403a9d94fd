// SPDX-License-Identifier: MIT
#include <map>
#include <set>
#include <utility>

#include "detail_attribute_reader.hpp"
#include "detail_file.hpp"
#include "detail_utf8.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/base/listed.hpp"
#include "seamturn/io/plan_xml.hpp"
#include "seamturn/io/read.hpp"

namespace seamturn::io {

namespace {

using detail::AttributeReader;
using detail::Element;
using detail::FileContext;
using detail::Need;

constexpr detail::Range bare_angle{base::Dimension::none, "", -36000.0, 36000.0};
constexpr int most_passes = 100000;
constexpr std::string_view flags[] = {"false", "true"};

/// Reads of a plan what a search may begin with. The plan was written by this program: what is
/// wrong in it was damaged or changed by hand.
class Earlier {
 public:
  Earlier(FileContext& context, const joint::Weldment& weldment) : context_(context) {
    for (const joint::Joint& joint : weldment.joints) {
      for (const joint::Seam& seam : joint.seams) seams_.insert(seam.id);
    }
  }

  planner::EarlierOrder read() {
    const Element root = context_.tree.root();
    const auto part = [&](const char* name) {
      return detail::only_child(context_, root, name, Need::required);
    };
    for (const Element stance : part("stances").children("stance")) read_stance(stance);
    for (const Element joint : part("joints").children("joint")) {
      for (const Element seam : joint.children("seam")) read_seam(seam);
    }
    const Element timeline = part("timeline");
    for (const Element event : timeline.children("event")) read_event(event);
    note_left_out(timeline);
    return std::move(out_);
  }

 private:
  void read_stance(const Element& element) {
    AttributeReader reader(context_, element);
    turn::Stance stance;
    stance.rolling = reader.word("rolling", flags) == 1;
    for (const Element axis : element.children("axis")) {
      const double angle_deg = AttributeReader(context_, axis).quantity("angle_deg", bare_angle);
      stance.axes.push_back(base::Angle::deg(angle_deg));
    }
    if (stance.axes.empty()) contradicts(reader, "id", "stance without an axis");
    stances_.emplace(reader.text("id"), std::move(stance));
  }

  void read_seam(const Element& element) {
    const std::string id = AttributeReader(context_, element).text("id");
    for (const Element pass : element.children("pass")) {
      AttributeReader reader(context_, pass);
      const int number = reader.count("number", 1, most_passes);
      reversed_[std::pair(id, number)] = reader.word("reversed", flags) == 1;
    }
  }

  /// Arcs, and work of people.
  void read_event(const Element& element) {
    AttributeReader reader(context_, element);
    const std::string kind = reader.text("kind");
    if (kind != "arc" && kind != "work") return;
    planner::EarlierStep step;
    step.stage = reader.find_text("stage");
    if (kind == "work") {
      step.operation = reader.text("operation");
    } else {
      step.seam = reader.text("seam");
      step.pass = reader.count("pass", 1, most_passes);
      // A piece of a long seam, "J1/2", belongs to its seam.
      const std::string whole = step.seam.substr(0, step.seam.find('/'));
      if (!whole.empty() && !seams_.contains(whole)) {
        left_out_.insert(whole);
        return;
      }
      const auto known = reversed_.find(std::pair(step.seam, step.pass));
      if (known == reversed_.end()) {
        return contradicts(reader, "pass", "pass that none of its seams has");
      }
      step.reversed = known->second;
    }
    const std::string stance = reader.find_text("stance");
    if (!stance.empty()) {
      const auto known = stances_.find(stance);
      if (known == stances_.end()) {
        return contradicts(reader, "stance", "stance that is none of its stances");
      }
      step.stance = known->second;
    }
    out_.steps.push_back(std::move(step));
  }

  void contradicts(AttributeReader& reader, std::string_view attribute, const std::string& what) {
    reader.error(attribute,
                 "read.earlier.contradicts",
                 "the plan names a " + what +
                     "; expected a plan as the program wrote it; take another one, or plan without "
                     "--start-from");
  }

  void note_left_out(const Element& timeline) {
    if (left_out_.empty()) return;
    const std::vector<std::string> ids(left_out_.begin(), left_out_.end());
    context_.report.add(base::Severity::note,
                        context_.spot(timeline),
                        "read.earlier.seam_unknown",
                        "seams of this plan that the weldment has not were left out of the order "
                        "the search begins with: " +
                            base::listed(ids) + "; check that it is a plan of this weldment");
  }

  FileContext& context_;
  std::set<std::string> seams_;  ///< of the weldment
  std::map<std::string, turn::Stance> stances_;
  std::map<std::pair<std::string, int>, bool> reversed_;
  std::set<std::string> left_out_;
  planner::EarlierOrder out_;
};

}  // namespace

planner::EarlierOrder read_earlier_order(const std::filesystem::path& plan_file,
                                         const joint::Weldment& weldment) {
  detail::Report report;
  std::string bytes = read_bytes(plan_file);
  if (bytes.size() > detail::largest_file) {
    report.error_of_file(plan_file.string(),
                         "read.file.too_large",
                         "the file is larger than " +
                             std::to_string(detail::largest_file / (1024 * 1024)) +
                             " MiB; expected a plan as the program wrote it; check that this is "
                             "the right file");
    throw base::InputError(report.sorted());
  }
  const auto text = std::make_shared<const detail::Source>(plan_file.string(), std::move(bytes));
  detail::MarkupTree tree;
  planner::EarlierOrder order;
  if (detail::check_markup(*text, report, tree)) {
    FileContext context{text, tree, report};
    if (detail::check_root(context, "plan", plan_namespace)) {
      order = Earlier(context, weldment).read();
    }
  }
  if (report.error_count() > 0) throw base::InputError(report.sorted());
  order.file = plan_file.string();
  order.findings = report.sorted();
  return order;
}

}  // namespace seamturn::io

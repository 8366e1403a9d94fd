// SPDX-License-Identifier: MIT
// The strip chart of the clock, read back with a ruler: bars against its own axis.
#include <doctest/doctest.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <map>

#include "planner/planned_demos.hpp"
#include "sample_plan.hpp"
#include "seamturn/base/error.hpp"
#include "seamturn/io/output.hpp"
#include "seamturn/io/plan_xml.hpp"
#include "seamturn/plugin_host/plugin_host.hpp"
#include "xml_check.hpp"

namespace seamturn {

namespace {

using plan::Plan;
using timeline::SecondKind;

std::string chart(const std::string& plan_xml) {
  static const plugin_host::PluginHost host({}, {plugin_host::installed_plugin_folder()});
  return host.write_document("turn-chart", plan_xml, "charts/clock.svg");
}

std::vector<std::string> names(const std::string& plan_xml) {
  static const plugin_host::PluginHost host({}, {plugin_host::installed_plugin_folder()});
  return host.document_names("turn-chart", plan_xml);
}

/// The texts that follow a mark, each up to an end.
std::vector<std::string> pieces(const std::string& text,
                                const std::string& mark,
                                const std::string& end) {
  std::vector<std::string> found;
  for (std::size_t at = text.find(mark); at != std::string::npos; at = text.find(mark, at)) {
    at += mark.size();
    found.push_back(text.substr(at, text.find(end, at) - at));
  }
  return found;
}

double number(const std::string& element, const std::string& attribute) {
  const std::vector<std::string> found = pieces(element, " " + attribute + "=\"", "\"");
  REQUIRE(found.size() == 1);
  double value = NAN;
  std::from_chars(found[0].data(), found[0].data() + found[0].size(), value);
  return value;
}

/// All numbers in a text, in order.
std::vector<double> numbers(const std::string& text) {
  std::vector<double> found;
  const char* at = text.data();
  const char* end = at + text.size();
  while (at < end) {
    double value = 0.0;
    const auto read = std::from_chars(at, end, value);
    if (read.ec == std::errc()) found.push_back(value);
    at = read.ec == std::errc() ? read.ptr : at + 1;
  }
  return found;
}

/// Seconds of a label "h:min".
double label_s(const std::string& words) {
  const std::size_t colon = words.find(':');
  REQUIRE(colon != std::string::npos);
  return 3600.0 * std::stod(words.substr(0, colon)) + 60.0 * std::stod(words.substr(colon + 1));
}

struct Bar {
  std::string kind;
  double from_s;
  double to_s;
};

/// Bars of a strip, measured against the first and the last mark of its own axis.
void read_strip(const std::string& strip, std::vector<Bar>& bars) {
  const std::string axis = pieces(strip, "<g class=\"axis\"", "</g>").at(0);
  const std::vector<std::string> rules = pieces(axis, "<line", "/>");
  std::vector<double> labels_s;
  for (const std::string& words : pieces(axis, "text-anchor=\"middle\">", "<")) {
    labels_s.push_back(label_s(words));
  }
  REQUIRE(labels_s.size() == rules.size());
  REQUIRE(labels_s.size() >= 2);
  const double left_px = number(rules.front(), "x1");
  const double s_per_px =
      (labels_s.back() - labels_s.front()) / (number(rules.back(), "x1") - left_px);
  for (std::size_t kind = 0; kind < timeline::second_kinds; ++kind) {
    const std::string name(timeline::second_kind_name(static_cast<SecondKind>(kind)));
    for (const std::string& path : pieces(strip, "<path class=\"" + name + "\" d=\"", "\"")) {
      for (const std::string& bar : pieces(path, "M", "M")) {
        const std::vector<double> x_y_length = numbers(bar);
        REQUIRE(x_y_length.size() == 3);
        const double from_s = labels_s.front() + (x_y_length[0] - left_px) * s_per_px;
        bars.push_back({name, from_s, from_s + x_y_length[2] * s_per_px});
      }
    }
  }
}

/// All bars in the order of the clock; what a strip's end cuts in two is joined again.
std::vector<Bar> bars_of(const std::string& svg) {
  std::vector<Bar> bars;
  const std::string mark = "<g class=\"strip\">";
  std::vector<std::size_t> starts;
  for (std::size_t at = svg.find(mark); at != std::string::npos; at = svg.find(mark, at + 1)) {
    starts.push_back(at);
  }
  REQUIRE(!starts.empty());
  std::vector<double> edges_s;
  for (std::size_t i = 0; i < starts.size(); ++i) {
    const std::size_t end = i + 1 < starts.size() ? starts[i + 1] : svg.find("class=\"notes\"");
    const std::string strip = svg.substr(starts[i], end - starts[i]);
    read_strip(strip, bars);
    const std::string axis = pieces(strip, "<g class=\"axis\"", "</g>").at(0);
    edges_s.push_back(label_s(pieces(axis, "text-anchor=\"middle\">", "<").at(0)));
  }
  // By their middles: rounded starts of a short bar and a long one may change places.
  std::sort(bars.begin(), bars.end(), [](const Bar& a, const Bar& b) {
    return a.from_s + a.to_s < b.from_s + b.to_s;
  });
  std::vector<Bar> joined;
  for (const Bar& bar : bars) {
    const bool at_edge = std::any_of(edges_s.begin(), edges_s.end(), [&](double edge_s) {
      return std::abs(edge_s - bar.from_s) < 0.02;
    });
    const bool goes_on = at_edge && !joined.empty() && joined.back().kind == bar.kind &&
                         std::abs(joined.back().to_s - bar.from_s) < 0.02;
    goes_on ? joined.back().to_s = bar.to_s : (joined.push_back(bar), 0.0);
  }
  return joined;
}

struct Charted {
  std::string file;
  const Plan* plan = nullptr;
  std::string svg;
};

const std::vector<Charted>& all_charted() {
  static const std::vector<Charted> all = [] {
    std::vector<Charted> made;
    for (const tests::Planned& one : tests::plans()) {
      made.push_back({one.file, &one.plan, chart(io::plan_xml(one.plan))});
    }
    return made;
  }();
  return all;
}

/// Coordinates have three decimals; a strip is 1080 of them for at most eight hours.
constexpr double slack_s = 0.06;

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  REQUIRE(at != std::string::npos);
  return text.replace(at, from.size(), to);
}

}  // namespace

TEST_SUITE("plugins/chart") {
  TEST_CASE("given a plan on a positioner, one chart with a safe name") {
    const std::vector<std::string> given = names(io::plan_xml(tests::sample_plan()));
    CHECK(given == std::vector<std::string>{"charts/clock.svg"});
    CHECK(io::is_safe_name(given.front()));
  }

  TEST_CASE("given a plan without an arc on the clock, no chart, and refuses to write one") {
    Plan plan = tests::sample_plan();
    plan.timeline.clear();
    const std::string xml = io::plan_xml(plan);
    CHECK(names(xml).empty());
    CHECK_THROWS_AS((void)chart(xml), base::UnavailableError);
  }

  TEST_CASE("for any chart, law: well-formed, twice the same bytes, nothing fetched or run") {
    for (const Charted& one : all_charted()) {
      INFO(one.file);
      CHECK(tests::form_verdict(one.svg, "chart") == "");
      CHECK(one.svg == chart(io::plan_xml(*one.plan)));
      CHECK(tests::count_of(one.svg, "http") == 1);
      CHECK(one.svg.size() < 100000);
      for (const char* mark : {"<script", "href", "style", "<image", "nan", "inf\""}) {
        INFO(mark);
        CHECK(one.svg.find(mark) == std::string::npos);
      }
    }
  }

  TEST_CASE("for any chart, law: every arc of the plan is a bar from its start to its end") {
    for (const Charted& one : all_charted()) {
      INFO(one.file);
      std::vector<Bar> arcs;
      for (const Bar& bar : bars_of(one.svg)) {
        if (bar.kind == "arc") arcs.push_back(bar);
      }
      std::size_t next = 0;
      for (const plan::PlannedEvent& event : one.plan->timeline) {
        if (event.kind != SecondKind::arc) continue;
        REQUIRE(next < arcs.size());
        CHECK(std::abs(arcs[next].from_s - event.start_s) < slack_s);
        CHECK(std::abs(arcs[next].to_s - event.end_s) < slack_s);
        ++next;
      }
      CHECK(next == arcs.size());
      CHECK(next > 0);
    }
  }

  TEST_CASE("for any chart, law: bars do not overlap, leave no gap, and add up to the cycle") {
    for (const Charted& one : all_charted()) {
      INFO(one.file);
      double now_s = 0.0;
      std::map<std::string, double> total_s;
      std::map<std::string, int> count;
      for (const Bar& bar : bars_of(one.svg)) {
        CHECK(std::abs(bar.from_s - now_s) < slack_s);
        now_s = bar.to_s;
        total_s[bar.kind] += bar.to_s - bar.from_s;
        ++count[bar.kind];
      }
      CHECK(std::abs(now_s - one.plan->cycle_s) < slack_s);
      for (std::size_t kind = 0; kind < timeline::second_kinds; ++kind) {
        const std::string name(timeline::second_kind_name(static_cast<SecondKind>(kind)));
        INFO(name);
        // each length is rounded to half a thousandth of 1080 parts of at most two hours
        const double rounding_s = 0.0035 * (count[name] + 20);
        CHECK(std::abs(total_s[name] - one.plan->seconds[kind]) < rounding_s);
      }
    }
  }

  TEST_CASE("for any chart, law: every label of a seam stands where that seam is welded") {
    for (const Charted& one : all_charted()) {
      INFO(one.file);
      std::size_t labels = 0;
      for (const std::string& group : pieces(one.svg, "<g class=\"seams\">", "</g>")) {
        for (const std::string& words : pieces(group, "\">", "<")) {
          if (words.find(' ') == std::string::npos) continue;
          const std::string seam = words.substr(0, words.find(' '));
          const int pass = std::stoi(words.substr(words.find(' ') + 1));
          const bool laid = std::any_of(
              one.plan->timeline.begin(), one.plan->timeline.end(), [&](const auto& event) {
                return event.seam == seam && event.pass == pass;
              });
          INFO(words);
          CHECK(laid);
          ++labels;
        }
      }
      CHECK(labels > 2);
    }
  }

  TEST_CASE("for the hub, law: heading and legend tell cycle, arc share and what is proved") {
    const Plan& plan = tests::hub().plan;
    const std::string svg = chart(io::plan_xml(plan));
    const double share = 100.0 * plan.seconds[0] / plan.cycle_s;
    const std::string heading = pieces(svg, "<g class=\"heading\">", "</g>").at(0);
    const std::vector<std::string> lines = pieces(heading, "\">", "<");
    const auto has = [&](const std::string& words) {
      return heading.find(words) != std::string::npos;
    };
    CHECK(has(plan.weldment.title));
    const std::string told = pieces(heading, ", arc ", " %").at(0);
    CHECK(std::abs(std::stod(told) - share) <= 0.0501);
    CHECK(has("No order of this model is shorter than ") == !plan.proved_best);
    CHECK(has("Proved best: no better order in this model at these times") == plan.proved_best);
    CHECK(svg.find("Invented demo data") != std::string::npos);
  }

  TEST_CASE("given a proved order, the heading says within which limits") {
    Plan plan = tests::sample_plan();
    plan.proved_best = true;
    CHECK(chart(io::plan_xml(plan))
              .find("Proved best: no better order in this model at these times") !=
          std::string::npos);
  }

  TEST_CASE("given a title with every sign XML gives a meaning, it is escaped") {
    const std::string svg = chart(io::plan_xml(tests::sample_plan()));
    CHECK(tests::form_verdict(svg, "chart_title") == "");
    CHECK(svg.find("<A>") == std::string::npos);
    CHECK(svg.find("&lt;A&gt; &amp;") != std::string::npos);
  }

  TEST_CASE("given waits, they are striped bars in a lane of their own") {
    // law: the bracket waits, by its own seconds
    const Plan& plan = tests::planned_demo("bracket.xml").plan;
    REQUIRE(plan.seconds[static_cast<std::size_t>(SecondKind::wait)] > 0.0);
    const std::string svg = chart(io::plan_xml(plan));
    const std::string waits = pieces(svg, "<path class=\"wait\"", "/>").at(0);
    CHECK(waits.find(" stroke=\"url(#wait)\"") != std::string::npos);
    CHECK(svg.find("<pattern id=\"wait\"") != std::string::npos);
    const std::string arcs = pieces(svg, "<path class=\"arc\"", "/>").at(0);
    CHECK(numbers(waits).at(1) != numbers(arcs).at(1));
  }

  TEST_CASE("for any damage to the clock, it refuses and says what was found") {
    const std::string good = io::plan_xml(tests::sample_plan());
    CHECK_NOTHROW((void)chart(good));
    const std::string event = "<event kind=\"arc\"";
    const std::vector<std::pair<std::string, std::string>> damages = {
        {event, "<event kind=\"arcs\""},
        {"<timeline cycle_s=\"", "<timeline cycle_s=\"-"},
        {"<event kind=\"turn\" start_s=\"", "<event kind=\"turn\" start_s=\"x"}};
    for (const auto& [from, to] : damages) {
      INFO(from, " -> ", to);
      CHECK_THROWS_AS((void)chart(replaced(good, from, to)), base::UnavailableError);
    }
    Plan plan = tests::sample_plan();
    REQUIRE(plan.timeline.size() >= 2);
    std::swap(plan.timeline.front(), plan.timeline.back());
    CHECK_THROWS_AS((void)chart(io::plan_xml(plan)), base::UnavailableError);
  }

  TEST_CASE("for the picture of the handbook, law: it is what the plugin draws now") {
    INFO("write it again: seamturn write turn-chart joints/grab_hub.xml, charts/clock.svg");
    const auto folder = tests::repository() / "docs" / "methods";
    CHECK(tests::text_of(folder / "order.md").find("(pictures/hub-clock.svg)") !=
          std::string::npos);
    CHECK((tests::text_of(folder / "pictures" / "hub-clock.svg") ==
           chart(io::plan_xml(tests::hub().plan))));
  }
}

}  // namespace seamturn

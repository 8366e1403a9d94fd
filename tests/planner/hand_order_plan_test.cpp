// SPDX-License-Identifier: MIT
// An order fixed by hand is kept, checked and priced.
#include "split_part.hpp"

namespace seamturn::tests {

namespace {

/// First start and last end of what an entry names.
Span span_of(const Plan& plan, const joint::HandEntry& entry) {
  Span span{1e12, -1.0};
  for (const Arc& arc : arcs_of(plan)) {
    const bool is_seam = arc.seam->joint == entry.joint &&
                         (entry.side == 0 || arc.seam->drawn == entry.joint + '.' + entry.side) &&
                         (entry.segment == 0 ||
                          arc.seam->id == arc.seam->drawn + '/' + std::to_string(entry.segment));
    const int layer = arc.pass->pass.layer;
    if (!is_seam || layer < entry.from || layer > entry.to.value_or(layer)) continue;
    span.from_s = std::min(span.from_s, *arc.pass->start_s);
    span.to_s = std::max(span.to_s, *arc.pass->end_s);
  }
  return span;
}

bool is_kept(const Plan& plan, const joint::HandOrder& order) {
  for (std::size_t k = 1; k < order.entries.size(); ++k) {
    const Span before = span_of(plan, order.entries[k - 1]);
    const Span now = span_of(plan, order.entries[k]);
    REQUIRE(before.to_s > 0.0);
    if (before.to_s > now.from_s) return false;
  }
  return true;
}

planner::Inputs with_order(const std::vector<std::string>& entries) {
  planner::Inputs inputs = ordered_part();
  inputs.weldment.hand_orders = {hand_order(entries)};
  return inputs;
}

bool told(const std::string& errors, const std::string& code, const std::string& words) {
  return errors.find(code + ": ") != std::string::npos && errors.find(words) != std::string::npos;
}

}  // namespace

TEST_SUITE("planner/hand_order_plan") {
  TEST_CASE("given the whole order by hand, it is welded exactly so") {
    planner::Inputs inputs =
        with_order({"R2", "J3.b", "A4", "J2", "A3", "J3.a", "R1", "A2", "J1", "A1"});
    const Plan plan = quick_plan(inputs);
    CHECK(is_kept(plan, inputs.weldment.hand_orders.front()));
    std::string seams;
    for (const plan::PlannedEvent& event : plan.timeline) {
      if (event.kind != timeline::SecondKind::arc) continue;
      if (!seams.ends_with(event.seam + " ")) seams += event.seam + " ";
    }
    CHECK(seams == "R2 J3.b A4 J2 A3 J3.a R1 A2 J1 A1 ");
  }

  TEST_CASE("given layers and seams of a part of the job, they keep their order, all others move") {
    for (const std::vector<std::string>& entries :
         {std::vector<std::string>{"R1.1", "J3", "R1.2-"},
          std::vector<std::string>{"J3.b.1", "A1.1-2", "J3.a.1", "J1"},
          std::vector<std::string>{"A1", "J3.a.2"}}) {
      const planner::Inputs inputs = with_order(entries);
      const Plan plan = quick_plan(inputs);
      CHECK(is_kept(plan, inputs.weldment.hand_orders.front()));
      REQUIRE(plan.stages.front().by_hand);
      CHECK(plan.stages.front().by_hand->entries == entries);
      CHECK(plan.not_turned.empty());
    }
  }

  TEST_CASE(
      "given segments by hand, they go before the order balance would take, and all keep it") {
    for (const std::vector<std::string>& entries :
         {std::vector<std::string>{"R1/4.1", "R1/2.1", "R1/1.1", "R1/3.1", "R1/3.2-"},
          std::vector<std::string>{"J3.b/2.1", "J3.a/1.1", "R1/2.1"}}) {
      planner::Inputs inputs = part_of({"R1", "J3"});
      ask(inputs, "R1", 4, 10.0);
      ask(inputs, "J3", 2);
      inputs.weldment.hand_orders = {hand_order(entries)};
      const Plan plan = quick_plan(inputs);
      CHECK(is_kept(plan, inputs.weldment.hand_orders.front()));
      CHECK(plan.stages.front().by_hand->entries == entries);
    }
  }

  TEST_CASE("given a joint whose two seams go in segments, one without a side is of both") {
    planner::Inputs inputs = part_of({"J3"});
    ask(inputs, "J3", 2);
    inputs.weldment.hand_orders = {hand_order({"J3/2.1", "J3/1.1"})};
    const Plan plan = quick_plan(inputs);
    double ends_s = 0.0;
    for (const char* first : {"J3.a/2", "J3.b/2"}) {
      ends_s = std::max(ends_s, layer_span(seam_of(plan, first), 1).to_s);
    }
    for (const char* second : {"J3.a/1", "J3.b/1"}) {
      CHECK(layer_span(seam_of(plan, second), 1).from_s >= ends_s);
    }
  }

  TEST_CASE("given a segment the seam does not go in, the finding says in how many it goes") {
    planner::Inputs inputs = part_of({"R1", "J3"});
    inputs.library.long_seams.reset();
    ask(inputs, "J3", 2);
    inputs.weldment.hand_orders = {hand_order({"J3.a/3", "R1"})};
    CHECK(told(errors_of(inputs), "order.hand.segment", "J3 is welded in 2 segments"));
    inputs.weldment.hand_orders = {hand_order({"J3.a/2", "R1/1"})};
    CHECK(told(
        errors_of(inputs), "order.hand.segment", "names R1/1, and joint R1 is welded in one "));
    inputs.weldment.hand_orders = {hand_order({"J3.a/2", "R1"})};
    CHECK(errors_of(inputs).empty());
  }

  TEST_CASE("given several orders, each is kept, and they may cross") {
    planner::Inputs inputs = with_order({"R1", "J1"});
    inputs.weldment.hand_orders.push_back(hand_order({"J3", "J1"}));
    inputs.weldment.hand_orders.push_back(hand_order({"A1.1", "R1.2-"}));
    const Plan plan = quick_plan(inputs);
    for (const joint::HandOrder& order : inputs.weldment.hand_orders) CHECK(is_kept(plan, order));
    CHECK(plan.stages.front().by_hand->entries.size() == 6);
    inputs.weldment.hand_orders.push_back(hand_order({"J1", "J3.a"}));
    CHECK(told(errors_of(inputs), "order.hand.contradicts", "J1 before J3.a"));
    CHECK(told(errors_of(inputs), "order.hand.contradicts", ": order by hand \"J3 J1\"; "));
  }

  TEST_CASE("an order by hand goes before balance: the pair is told and others keep step") {
    const planner::Inputs inputs = with_order({"J1", "J2"});
    const Plan plan = quick_plan(inputs);
    CHECK(is_kept(plan, inputs.weldment.hand_orders.front()));
    CHECK_FALSE(find_twins_of(plan, "J1")->keeps_step);
    CHECK(find_twins_of(plan, "J1")->why_not == "order by hand \"J1 J2\"");
    CHECK(texts_of(plan, "order.balance.yields").size() == 1);
    CHECK(keep_step(plan, "R1", "R2"));
  }

  TEST_CASE("its price is the plan against the one without it, at the same effort") {
    // cross: a plan of the file without the order; no pair gives way, so the rules are the same.
    const Plan free = quick_plan(ordered_part());
    CHECK_FALSE(free.stages.front().by_hand);
    std::vector<std::string> order = {"A1", "J3", "R1"};
    int dearer = 0;
    do {
      const Plan plan = quick_plan(with_order(order));
      REQUIRE(texts_of(plan, "order.balance.yields").empty());
      const plan::HandOrderPrice& price = *plan.stages.front().by_hand;
      CHECK(price.by_hand_s == doctest::Approx(plan.cycle_s));
      CHECK(price.own_s == doctest::Approx(std::min(free.cycle_s, plan.cycle_s)));
      dearer += price.own_s < price.by_hand_s - 1.0 ? 1 : 0;
      int turns = 0;  // visits but the first: the table hangs at rest, level, before it
      for (const plan::PlannedStance& stance : plan.stances) turns += stance.visits;
      CHECK(std::abs(price.by_hand_stances - turns) <= 1);
    } while (std::next_permutation(order.begin(), order.end()));
    CHECK(dearer > 0);
  }

  TEST_CASE("where the own order is proved best, law: no order by hand is shorter") {
    // brute force: of the two whole orders of two seams, the better one is the own.
    planner::Inputs inputs = io::read_inputs(repository() / "tests/good/tee.xml");
    joint_in(inputs, "J2").after.clear();
    double best_s = 1e12;
    std::vector<double> own_s;
    for (const std::vector<std::string>& entries :
         {std::vector<std::string>{"J1", "J2"}, std::vector<std::string>{"J2", "J1"}}) {
      inputs.weldment.hand_orders = {hand_order(entries)};
      const Plan plan = planner::make_plan(inputs);
      const plan::HandOrderPrice& price = *plan.stages.front().by_hand;
      REQUIRE(price.own_proved_best);
      CHECK(price.by_hand_s >= price.own_s - 1e-9);
      best_s = std::min(best_s, price.by_hand_s);
      own_s.push_back(price.own_s);
    }
    CHECK(own_s[0] == doctest::Approx(best_s));
    CHECK(own_s[1] == doctest::Approx(best_s));
  }

  TEST_CASE("given an order against other rules of the file, the finding names entries and rules") {
    planner::Inputs inputs = with_order({"R1", "J1"});
    joint_in(inputs, "R1").after = {"J1"};
    const std::string after = errors_of(inputs);
    CHECK(told(after, "order.hand.contradicts", "puts R1 before J1"));
    CHECK(told(after, "order.hand.contradicts", "joint R1 after joint J1"));
    const std::string layers = errors_of(with_order({"J1.2", "J1.1"}));
    CHECK(told(layers, "order.hand.contradicts", "J1.2 before J1.1"));
    CHECK(told(layers, "order.hand.contradicts", "layers and passes of a seam follow one another"));
    // Balance is no rule of the file: of two seams the order stands.
    CHECK(errors_of(with_order({"R2", "R1"})).empty());
    planner::Inputs staged = staged_part();
    staged.weldment.hand_orders = {hand_order({"J2", "J1"}, "tee")};
    const std::string operation = errors_of(staged);
    CHECK(told(operation, "order.hand.contradicts", "order by hand of stage tee"));
    CHECK(told(operation, "order.hand.contradicts", "operation VT_back after joint J1"));
  }

  TEST_CASE("given the sides of a groove against their gouging, the finding names the joint") {
    planner::Inputs inputs = io::read_inputs(repository() / "tests/good/double_grooves.xml");
    inputs.weldment.hand_orders = {hand_order({"X.b", "X.a"})};
    CHECK(told(errors_of(inputs), "order.hand.contradicts", "sides of joint X"));
    inputs.weldment.hand_orders = {hand_order({"K.a", "K.b", "X.a.1"})};
    CHECK(errors_of(inputs).empty());
  }

  TEST_CASE("given a layer the seam has not, or a seam without a place, the finding says so") {
    CHECK(told(errors_of(with_order({"J1.9", "R1"})), "order.hand.layer", "names J1.9"));
    CHECK(told(errors_of(with_order({"J1.2-9", "R1"})), "order.hand.layer", "names J1.2-9"));
    CHECK(told(errors_of(with_order({"J1.9-", "R1"})), "order.hand.layer", "names J1.9-"));
    planner::Inputs inputs = with_order({"J1", "R1"});
    joint_in(inputs, "R1").seams.front().path.reset();
    CHECK(told(errors_of(inputs), "order.hand.no_place", "seam R1 has no place"));
  }

  TEST_CASE("given stages, an order holds in its own and names nothing of another") {
    planner::Inputs inputs = staged_part();
    inputs.weldment.hand_orders = {hand_order({"J3", "J5", "J4", "J6"}, "ribs")};
    const Plan plan = quick_plan(inputs);
    CHECK(is_kept(plan, inputs.weldment.hand_orders.front()));
    CHECK_FALSE(stage_in(plan, "tee").by_hand);
    const plan::HandOrderPrice& price = *stage_in(plan, "ribs").by_hand;
    const plan::PlannedStage& stage = stage_in(plan, "ribs");
    CHECK(price.by_hand_s == doctest::Approx(stage.end_s - *stage.start_s - stage.rehang_s));
    inputs.weldment.hand_orders = {hand_order({"J3", "J2"}, "ribs")};
    CHECK(told(errors_of(inputs), "stage.hand_order.elsewhere", "names J2, which is welded in"));
  }
}

}  // namespace seamturn::tests

// SPDX-License-Identifier: MIT
// Orders by hand and balance as links between pass blocks.
#include <algorithm>

#include "detail_order_links.hpp"
#include "seamturn/base/listed.hpp"
#include "seamturn/joint/segments.hpp"

namespace seamturn::planner::detail {

namespace {

using base::Finding;
using base::Severity;

class Rules {
 public:
  Rules(const Inputs& inputs,
        const StageWork& stage,
        const std::vector<SeamRef>& seams,
        OrderJob& out)
      : inputs_(inputs),
        stage_(stage),
        seams_(seams),
        out_(out),
        layers_(layers_of(seams, out)),
        passes_(passes_of(out)) {}

  void add() {
    const auto& orders = inputs_.weldment.hand_orders;
    for (std::size_t i = 0; i < orders.size(); ++i) {
      const std::string own = stage_.stage != nullptr ? stage_.stage->id : "";
      if (orders[i].stage == own) by_hand(orders[i], "hand-order/" + std::to_string(i) + "@seams");
    }
    for (const Twins& twins : find_twins(inputs_, seams_)) {
      if (is_welded(twins.first) && is_welded(twins.second)) out_.twins.push_back(twins);
    }
    // What the file states goes before what is found.
    for (const bool is_stated : {true, false}) {
      for (Twins& twins : out_.twins) {
        const bool stated = twins.kind == plan::TwinKind::stated;
        if (stated == is_stated) keep_step(twins);
      }
    }
    sides_over_neighbours();
    for (const Run& run : find_runs(seams_)) {
      over_neighbours(run);
      if (inputs_.weldment.balance_off.empty()) in_ranks(run);
    }
  }

 private:
  [[nodiscard]] const std::string& id(std::size_t seam) const {
    return seams_[seam].work->seam->id;
  }
  [[nodiscard]] const joint::Joint& joint(std::size_t seam) const {
    return *seams_[seam].joint->joint;
  }
  [[nodiscard]] bool is_welded(std::size_t seam) const { return !layers_[seam].empty(); }

  void tell(Severity severity, const char* code, const std::string& key, const std::string& text) {
    out_.findings.push_back(Finding{severity, code, text, place_of(inputs_.weldment, key), {}});
  }

  [[nodiscard]] std::string hand_name() const {
    return "order by hand" + (stage_.stage != nullptr ? " of " + stage_.name() : std::string());
  }

  /// Where the seams an entry names begin and end.
  std::vector<LayerBlocks> blocks_of(const joint::HandEntry& entry, const std::string& key) {
    std::vector<LayerBlocks> blocks;
    for (const std::size_t i : seams_of(entry, key)) {
      if (!is_welded(i)) {
        tell(Severity::error,
             "order.hand.no_place",
             key,
             hand_name() + " names " + entry.text + ", and seam " + id(i) +
                 " has no place in the weldment, so none in the order; give it one, or take the "
                 "name away");
        continue;
      }
      const std::vector<LayerBlocks>& parts = entry.in_passes ? passes_[i] : layers_[i];
      const int last = static_cast<int>(parts.size());
      if (std::max(entry.from, entry.to.value_or(1)) > last) {
        tell(Severity::error,
             "order.hand.layer",
             key,
             hand_name() + " names " + entry.text + ", and seam " + id(i) + " is laid in " +
                 (entry.in_passes ? base::counted(parts.size(), "pass", "passes")
                                  : base::counted(parts.size(), "layer")) +
                 "; name one of these");
        continue;
      }
      const int to = entry.to.value_or(last);
      blocks.push_back({parts[static_cast<std::size_t>(entry.from) - 1].first,
                        parts[static_cast<std::size_t>(to) - 1].last});
    }
    return blocks;
  }

  /// Seams an entry names, or the segments of them; none when they are of another stage, which
  /// check_hand_orders tells.
  std::vector<std::size_t> seams_of(const joint::HandEntry& entry, const std::string& key) {
    std::vector<std::size_t> all;
    std::vector<std::size_t> named;
    for (std::size_t i = 0; i < seams_.size(); ++i) {
      const joint::Seam& seam = *seams_[i].work->seam;
      const bool is_joint = joint(i).id == entry.joint && stage_.welds(joint(i));
      const bool is_side =
          entry.side == 0 || joint::drawn_id(seam) == entry.joint + '.' + entry.side;
      if (!is_joint || !is_side) continue;
      all.push_back(i);
      const int number = seam.segment ? seam.segment->number : 0;
      if (entry.segment == 0 || number == entry.segment) named.push_back(i);
    }
    if (named.empty() && !all.empty()) no_such_segment(entry, all.front(), key);
    return named;
  }

  void no_such_segment(const joint::HandEntry& entry, std::size_t seam, const std::string& key) {
    const std::optional<joint::Segment>& segment = seams_[seam].work->seam->segment;
    const std::string pieces =
        segment ? "in " + std::to_string(segment->of) + " segments" : "in one piece";
    tell(Severity::error,
         "order.hand.segment",
         key,
         hand_name() + " names " + entry.text + ", and joint " + entry.joint + " is welded " +
             pieces + "; name a segment it has, or ask for more with segments=");
  }

  /// Several orders are told apart by what they name.
  [[nodiscard]] std::string hand_name(const joint::HandOrder& hand) const {
    std::vector<std::string> entries;
    for (const joint::HandEntry& entry : hand.entries) entries.push_back(entry.text);
    return hand_name() + " \"" + base::listed(entries, " ") + "\"";
  }

  void by_hand(const joint::HandOrder& hand, const std::string& key) {
    const std::string rule = hand_name(hand);
    std::vector<std::vector<LayerBlocks>> blocks;
    for (const joint::HandEntry& entry : hand.entries) {
      out_.by_hand.push_back(entry.text);
      blocks.push_back(blocks_of(entry, key));
    }
    for (std::size_t k = 1; k < blocks.size(); ++k) {
      std::vector<std::string> against;
      for (const LayerBlocks& before : blocks[k - 1]) {
        for (const LayerBlocks& now : blocks[k]) {
          const bool in_one_go = now.first == before.last;
          if (in_one_go && hand.entries[k - 1].from < hand.entries[k].from) continue;
          const auto found = against_link(out_.job, now.first, before.last);
          if (found) {
            against.insert(against.end(), found->begin(), found->end());
            if (found->empty())
              against.emplace_back("layers and passes of a seam follow one another");
            continue;
          }
          add_link(out_.job, now.first, before.last, rule);
          out_.hand_links.push_back({now.first, before.last});
        }
      }
      if (against.empty()) continue;
      tell(Severity::error,
           "order.hand.contradicts",
           key,
           hand_name() + " puts " + hand.entries[k - 1].text + " before " + hand.entries[k].text +
               ", and by other rules of the file it cannot be: " + told_once(against) +
               "; change the order, or take one of these away");
    }
  }

  static std::string told_once(const std::vector<std::string>& rules) {
    std::vector<std::string> once;
    for (const std::string& rule : rules) {
      if (std::find(once.begin(), once.end(), rule) == once.end()) once.push_back(rule);
    }
    return base::listed(once, "; ");
  }

  /// Layer k of both before layer k + 1 of either. Sides of one groove follow the order of their
  /// gouging already.
  void keep_step(Twins& twins) {
    if (!twins.off.empty()) return;
    if (twins.kind == plan::TwinKind::groove) {
      const joint::Joint& groove = joint(twins.first);
      const bool takes_turns = joint::first_share_of(groove) < 1.0;
      if (!takes_turns) twins.against = "side 1 of joint " + groove.id + " is filled first";
      return;
    }
    const std::string rule = "balance of " + id(twins.first) + " with " + id(twins.second);
    std::vector<std::string> against = follow(twins.first, twins.second, rule);
    const std::vector<std::string> other = follow(twins.second, twins.first, rule);
    against.insert(against.end(), other.begin(), other.end());
    if (against.empty()) return;
    twins.against = told_once(against);
    const std::string key = "joint/" + joint(twins.first).id;
    if (twins.kind == plan::TwinKind::stated) {
      tell(Severity::error,
           "order.balance.contradicts",
           key,
           "the file states that " + id(twins.first) + " and " + id(twins.second) +
               " are welded layer by layer, and by its other rules they cannot be: " +
               twins.against + "; take one of these away");
      return;
    }
    tell(Severity::note,
         "order.balance.yields",
         key,
         id(twins.first) + " and " + id(twins.second) + " (" +
             std::string(plan::twin_kind_name(twins.kind)) +
             ") would be welded layer by layer; the file says otherwise, and goes first: " +
             twins.against);
  }

  /// A seam's next layer waits for the twin's layer of the same number, where it has one. Returns
  /// the rules against it.
  std::vector<std::string> follow(std::size_t seam, std::size_t twin, const std::string& rule) {
    std::vector<std::string> against;
    for (std::size_t k = 1; k < layers_[seam].size() && k <= layers_[twin].size(); ++k) {
      add_or_tell(layers_[seam][k].first, layers_[twin][k - 1].last, rule, against);
    }
    return against;
  }

  void add_or_tell(int block,
                   int after,
                   const std::string& rule,
                   std::vector<std::string>& against) {
    const auto found = against_link(out_.job, block, after);
    if (!found) {
      add_link(out_.job, block, after, rule);
      return;
    }
    for (const std::string& by : *found) against.push_back(by);
  }

  /// Where stops of layers lie apart, a layer runs onto its neighbours' layer below.
  void over_neighbours(const Run& run) {
    std::vector<std::size_t> segments;
    for (const auto& rank : run.ranks) segments.insert(segments.end(), rank.begin(), rank.end());
    for (const std::size_t seam : segments) {
      for (const std::size_t other : segments) {
        if (!are_neighbours(seam, other)) continue;
        const std::string rule = "layers of " + id(seam) + " lie over those of " + id(other);
        for (std::size_t k = 1; k < layers_[seam].size() && k <= layers_[other].size(); ++k) {
          std::vector<std::string> against;  // a layer below goes first whatever the file says
          add_or_tell(layers_[seam][k].first, layers_[other][k - 1].last, rule, against);
          if (against.empty()) continue;
          return tell_contradiction(seam, rule, against);
        }
      }
    }
  }

  /// The second side of a groove reaches over the marks into its neighbours: their roots stand on
  /// the first side before it is begun, and gouged.
  void sides_over_neighbours() {
    for (std::size_t i = 0; i < seams_.size(); ++i) {
      const bool second = joint::has_two_sides(joint(i)) && seams_[i].work->seam->side == 2;
      if (!second || !seams_[i].work->seam->segment || !is_welded(i)) continue;
      for (std::size_t j = 0; j < seams_.size(); ++j) {
        const bool first = seams_[j].joint == seams_[i].joint && seams_[j].work->seam->side == 1;
        if (!first || !is_welded(j) || !are_neighbours(i, j)) continue;
        std::vector<std::string> against;
        add_or_tell(layers_[i][0].first,
                    layers_[j][0].last,
                    "side 2 of " + id(i) + " lies behind the root of " + id(j),
                    against);
        if (!against.empty()) tell_contradiction(i, "side 2 lies behind roots beside it", against);
      }
    }
  }

  void tell_contradiction(std::size_t seam,
                          const std::string& rule,
                          const std::vector<std::string>& against) {
    tell(Severity::error,
         "order.segments.contradict",
         "joint/" + joint(seam).id,
         rule + ", and by other rules of the file they cannot: " + told_once(against) +
             "; take one of these away, or weld the seam in one, segments=\"1\"");
  }

  [[nodiscard]] bool are_neighbours(std::size_t a, std::size_t b) const {
    const auto& one = seams_[a].work->seam->segment;
    const auto& other = seams_[b].work->seam->segment;
    if (!one || !other) return false;
    const int apart = std::abs(one->number - other->number);
    return apart == 1 || (geom::is_closed(one->course) && apart == one->of - 1);
  }

  /// All roots before any other layer, and each layer rank by rank.
  void in_ranks(const Run& run) {
    const std::vector<std::vector<std::size_t>> ranks = balanced_ranks(run);
    std::vector<std::size_t> all;
    for (const auto& rank : ranks) all.insert(all.end(), rank.begin(), rank.end());
    if (all.empty() || (run.ring && all.size() < 3)) return;
    const std::string what = course_name(run, all.front());
    std::vector<std::string> against;
    for (const std::size_t seam : all) {
      for (const std::size_t other : all) {
        if (seam == other || layers_[seam].size() < 2) continue;
        add_or_tell(layers_[seam][1].first, layers_[other][0].last, what, against);
      }
    }
    for (std::size_t r = 1; r < ranks.size(); ++r) {
      for (const std::size_t seam : ranks[r]) {
        for (const std::size_t before : ranks[r - 1]) layer_by_layer(seam, before, what, against);
      }
    }
    if (against.empty()) return;
    tell(Severity::note,
         "order.balance.yields",
         "joint/" + joint(all.front()).id,
         what +
             " would be welded layer by layer, all roots first; the file says otherwise, and goes "
             "first: " +
             told_once(against));
  }

  /// Those of the stage whose joints are balanced; ranks without any are left out.
  [[nodiscard]] std::vector<std::vector<std::size_t>> balanced_ranks(const Run& run) const {
    std::vector<std::vector<std::size_t>> ranks;
    for (const auto& rank : run.ranks) {
      std::vector<std::size_t> own;
      for (const std::size_t seam : rank) {
        if (is_welded(seam) && joint(seam).balance_off.empty()) own.push_back(seam);
      }
      if (!own.empty()) ranks.push_back(std::move(own));
    }
    return ranks;
  }

  [[nodiscard]] std::string course_name(const Run& run, std::size_t first) const {
    const std::string& drawn = joint::drawn_id(*seams_[first].work->seam);
    return run.ring ? "opposite arcs of the ring of " + drawn
                    : "segments of " + drawn + " from the middle outward";
  }

  void layer_by_layer(std::size_t seam,
                      std::size_t before,
                      const std::string& rule,
                      std::vector<std::string>& against) {
    const std::size_t most = std::min(layers_[seam].size(), layers_[before].size());
    for (std::size_t k = 0; k < most; ++k) {
      add_or_tell(layers_[seam][k].first, layers_[before][k].last, rule, against);
    }
  }

  const Inputs& inputs_;
  const StageWork& stage_;
  const std::vector<SeamRef>& seams_;
  OrderJob& out_;
  std::vector<std::vector<LayerBlocks>> layers_;
  std::vector<std::vector<LayerBlocks>> passes_;
};

}  // namespace

void add_rules(const Inputs& inputs,
               const StageWork& stage,
               const std::vector<SeamRef>& seams,
               OrderJob& order) {
  Rules(inputs, stage, seams, order).add();
}

}  // namespace seamturn::planner::detail

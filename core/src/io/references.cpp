// SPDX-License-Identifier: MIT
// Names that point at other things: steels, wires, gases, members, and the order `after` asks for.
#include <algorithm>
#include <optional>
#include <utility>

#include "detail_drafts.hpp"
#include "detail_utf8.hpp"
#include "seamturn/base/number_text.hpp"
#include "seamturn/base/same_text.hpp"

namespace seamturn::io::detail {

namespace {

/// The attribute that says how thick a member is; the element itself when several do.
const char* thickness_attribute(const joint::Shape& shape) {
  if (std::holds_alternative<joint::Tube>(shape)) return "wall";
  if (std::holds_alternative<joint::Bar>(shape)) return "size";
  return std::holds_alternative<joint::Forging>(shape) ? "id" : "thickness";
}

using Names = std::vector<std::string_view>;

/// What a name should point at, and the code when it does not.
struct Kind {
  const char* word;
  const char* code;
  bool in_library = false;  ///< described in a library, not in the weldment
};

/// The attribute that holds a name, of a thing "kind/id" or of the weldment, which has no id.
struct Holder {
  const joint::Places& places;
  std::string_view kind;
  std::optional<std::string_view> id;
  std::string_view attribute;
  [[nodiscard]] Spot spot() const {
    std::string key(kind);
    if (id) key.append("/").append(*id);
    return places.nearest_spot(key, attribute);
  }
};

constexpr Kind wire_kind{"wire", "read.wire.unknown", true};
constexpr Kind gas_kind{"gas", "read.gas.unknown", true};
constexpr Kind steel_kind{"steel", "read.steel.unknown", true};
constexpr Kind member_kind{"member", "read.member.unknown"};
constexpr Kind fit_up_kind{"fit-up tolerances", "read.fit_up.unknown", true};
constexpr Kind record_kind{"record", "read.record.unknown", true};
constexpr Kind joint_kind{"joint", "read.joint.unknown"};
constexpr Kind stage_kind{"stage", "read.stage.unknown"};
constexpr Kind setup_kind{"set-up", "read.setup.unknown"};
constexpr Kind lifting_kind{"lifting", "read.lifting.unknown"};

template <class Thing, class Name>
Names names_of(const std::vector<Thing>& things, const Name& name) {
  Names names;
  names.reserve(things.size());
  for (const Thing& thing : things) names.push_back(name(thing));
  return names;
}

/// Every name that may be meant, as long as a message can hold.
std::string known_text(const Names& known) {
  constexpr std::size_t shown = 8;
  const Names first(known.begin(),
                    known.begin() + static_cast<std::ptrdiff_t>(std::min(known.size(), shown)));
  return "expected " + one_of(first) + (known.size() > shown ? ", ..." : "");
}

std::string none_text(const Kind& kind) {
  const std::string word(kind.word);
  return kind.in_library ? "no library in use holds a " + word +
                               "; expected one that does, <use library=\"..\"/>; add it"
                         : "the weldment describes no " + word + "; expected one; describe it";
}

/// There are bands and every one reaches beyond the one before it (NaN does not).
bool rise(const std::vector<material::SteelBand>& bands) {
  double last_mm = 0.0;
  return !bands.empty() && std::all_of(bands.begin(), bands.end(), [&](const auto& band) {
    return band.up_to_mm > std::exchange(last_mm, band.up_to_mm);
  });
}

class ReferenceCheck {
 public:
  ReferenceCheck(const WeldmentDraft& draft, const planner::Library& library, Report& report)
      : draft_(draft), library_(library), report_(report) {}

  void of_libraries() {
    wires_ = names_of(library_.wires, [](const auto& w) { return std::string_view(w.id); });
    gases_ = names_of(library_.gases, [](const auto& g) { return std::string_view(g.id); });
    steels_ =
        names_of(library_.steels, [](const auto& s) { return std::string_view(s.designation); });
    const joint::Weldment& weldment = draft_.weldment;
    expect(weldment.wire, wires_, wire_kind, {weldment.places, "weldment", std::nullopt, "wire"});
    const Names fit_ups =
        names_of(library_.fit_ups, [](const auto& row) { return std::string_view(row.id); });
    const Names records =
        names_of(library_.records, [](const auto& row) { return std::string_view(row.id); });
    for (const JointDraft& joint : draft_.joints) {
      expect(joint.joint.heat.record,
             records,
             record_kind,
             {weldment.places, "joint", joint.joint.id, "record"});
      expect(
          joint.joint.wire, wires_, wire_kind, {weldment.places, "joint", joint.joint.id, "wire"});
      expect(joint.joint.fit_up,
             fit_ups,
             fit_up_kind,
             {weldment.places, "joint", joint.joint.id, "fit-up"});
    }
    for (const process::LinkedSettings& row : library_.settings) {
      expect(row.wire, wires_, wire_kind, {library_.places, "settings", row.id, "wire"});
      expect(row.gas, gases_, gas_kind, {library_.places, "settings", row.id, "gas"});
    }
    for (const joint::Member& member : weldment.members) steel_of(member);
  }

  void of_weldment() {
    const joint::Places& places = draft_.weldment.places;
    const Names members =
        names_of(draft_.weldment.members, [](const auto& m) { return std::string_view(m.id); });
    const Names joints =
        names_of(draft_.joints, [](const auto& j) { return std::string_view(j.joint.id); });
    // A thing without a readable id may be the one meant; one mistake makes one finding.
    const bool has_unread_member = draft_.unsound_members.contains("");
    const bool has_unread_joint = base::is_among("", joints);
    for (const JointDraft& joint : draft_.joints) {
      for (const std::string* member : {&joint.joint.member_1, &joint.joint.member_2}) {
        if (has_unread_member || draft_.unsound_members.contains(*member)) continue;
        expect(*member, members, member_kind, {places, "joint", joint.joint.id, "members"});
      }
      if (has_unread_joint) continue;
      for (const std::string& before : joint.joint.after) {
        expect(before, joints, joint_kind, {places, "joint", joint.joint.id, "after"});
      }
    }
  }

  /// What stages, set-ups, operations and datums point at.
  void of_build() {
    const joint::Weldment& weldment = draft_.weldment;
    const joint::Places& places = weldment.places;
    const Names joints =
        names_of(draft_.joints, [](const auto& j) { return std::string_view(j.joint.id); });
    const Names members =
        names_of(weldment.members, [](const auto& m) { return std::string_view(m.id); });
    const Names stages =
        names_of(weldment.stages, [](const auto& s) { return std::string_view(s.id); });
    const Names setups =
        names_of(weldment.setups, [](const auto& s) { return std::string_view(s.id); });
    const Names liftings =
        names_of(weldment.liftings, [](const auto& l) { return std::string_view(l.id); });
    const auto all = [&](const auto& names, const Names& known, const Kind& kind, Holder holder) {
      for (const std::string& name : names) expect(name, known, kind, holder);
    };
    for (const JointDraft& joint : draft_.joints) {
      expect(joint.joint.stage, stages, stage_kind, {places, "joint", joint.joint.id, "stage"});
    }
    for (const joint::Setup& setup : weldment.setups) {
      all(setup.hides, joints, joint_kind, {places, "setup", setup.id, "hides"});
      expect(setup.lifting, liftings, lifting_kind, {places, "setup", setup.id, "lifting"});
      expect(setup.lifting_off, liftings, lifting_kind, {places, "setup", setup.id, "lifting-off"});
    }
    for (const joint::Datum& datum : weldment.datums) {
      expect(datum.member, members, member_kind, {places, "datum", datum.id, "member"});
    }
    of_order(joints, stages);
    for (const joint::Stage& stage : weldment.stages) {
      expect(stage.setup, setups, setup_kind, {places, "stage", stage.id, "setup"});
      for (const joint::Operation& operation : stage.operations) {
        all(operation.members,
            members,
            member_kind,
            {places, "operation", operation.id, "members"});
        all(operation.joints, joints, joint_kind, {places, "operation", operation.id, "joints"});
        all(operation.after, joints, joint_kind, {places, "operation", operation.id, "after"});
        all(operation.before, joints, joint_kind, {places, "operation", operation.id, "before"});
      }
    }
  }

 private:
  void of_order(const Names& joints, const Names& stages) {
    const joint::Places& places = draft_.weldment.places;
    for (const JointDraft& joint : draft_.joints) {
      expect(joint.joint.balance_with,
             joints,
             joint_kind,
             {places, "balance", joint.joint.id, "with"});
    }
    for (std::size_t i = 0; i < draft_.weldment.hand_orders.size(); ++i) {
      const joint::HandOrder& order = draft_.weldment.hand_orders[i];
      const std::string number = std::to_string(i);
      expect(order.stage, stages, stage_kind, {places, "hand-order", number, "stage"});
      for (const joint::HandEntry& entry : order.entries) {
        expect(entry.joint, joints, joint_kind, {places, "hand-order", number, "seams"});
      }
    }
  }

  void expect(const std::string& name, const Names& known, const Kind& kind, const Holder& holder) {
    if (name.empty() || base::is_among(name, known)) return;
    const std::string start =
        std::string(kind.word) + " " + in_quotes(name) + " is not described anywhere; ";
    report_.error(holder.spot(),
                  kind.code,
                  start + (known.empty() ? none_text(kind)
                                         : known_text(known) + did_you_mean(name, known) +
                                               "; correct the name or describe it"));
  }

  void steel_of(const joint::Member& member) {
    const Holder of_steel{draft_.weldment.places, "member", member.id, "steel"};
    expect(member.steel, steels_, steel_kind, of_steel);
    if (draft_.unsound_members.contains(member.id)) return;
    const auto& steels = library_.steels;
    const auto steel = std::find_if(
        steels.begin(), steels.end(), [&](const auto& s) { return s.designation == member.steel; });
    if (steel == steels.end() || !rise(steel->bands)) return;  // told already
    const double wall_mm = joint::wall_thickness_mm(member.shape);
    if (const material::SteelBand* band = material::find_band(*steel, wall_mm)) {
      need_analysis(member, *steel, *band);
      check_scope(member, *steel, *band);
      return;
    }
    const Spot spot = draft_.weldment.places.nearest_spot("member/" + member.id,
                                                          thickness_attribute(member.shape));
    const std::string text =
        "steel " + steel->designation + " is described up to " +
        base::shortest_text(steel->bands.back().up_to_mm) + " mm and this is " +
        base::shortest_text(wall_mm) +
        " mm; expected a thickness its standard covers; take another steel, or add a band with "
        "its source";
    // A heat's own analysis governs; only the strength then stays unsaid.
    report_.add(member.analysis ? base::Severity::warning : base::Severity::error,
                spot,
                "read.steel.thickness",
                text);
  }

  /// Maxima that leave carbon or manganese open say nothing about a carbon equivalent.
  void need_analysis(const joint::Member& member,
                     const material::Steel& steel,
                     const material::SteelBand& band) {
    if (member.analysis || material::bounds_carbon_equivalent(band)) return;
    report_.add(base::Severity::error,
                draft_.weldment.places.nearest_spot("member/" + member.id, "steel"),
                "read.steel.analysis",
                "the standard of steel " + steel.designation +
                    " leaves C or Mn without a limit here, so no carbon equivalent follows from "
                    "its limits; expected the analysis of the certificate, <analysis c=\"..\" "
                    "mn=\"..\"/>, inside this member; add it");
  }

  /// Preheat, cooling, weight and all else here are those of unalloyed and low-alloy steel.
  void check_scope(const joint::Member& member,
                   const material::Steel& steel,
                   const material::SteelBand& band) {
    const std::string why =
        material::why_out_of_scope(steel, member.analysis ? *member.analysis : band.maxima);
    if (why.empty()) return;
    report_.add(base::Severity::error,
                draft_.weldment.places.nearest_spot("member/" + member.id, "steel"),
                "read.steel.scope",
                "member " + member.id + " of " + steel.designation + ": " + why +
                    "; expected an unalloyed or low-alloy steel: preheat, t8/5, waits, wire and "
                    "weight here would be wrong; plan it by the maker's instructions, or correct "
                    "group or composition");
  }

  const WeldmentDraft& draft_;
  const planner::Library& library_;
  Report& report_;
  Names wires_;
  Names gases_;
  Names steels_;
};

/// Joints and what each waits for, by index.
using Waits = std::vector<std::vector<std::size_t>>;

Waits waits_of(const std::vector<JointDraft>& joints) {
  // By name; of two with the same name the first comes first.
  std::vector<std::pair<std::string_view, std::size_t>> index;
  index.reserve(joints.size());
  for (std::size_t i = 0; i < joints.size(); ++i) index.emplace_back(joints[i].joint.id, i);
  std::sort(index.begin(), index.end());
  Waits waits(joints.size());
  for (std::size_t i = 0; i < joints.size(); ++i) {
    for (const std::string& before : joints[i].joint.after) {
      const auto found = std::lower_bound(
          index.begin(), index.end(), std::pair{std::string_view(before), std::size_t{0}});
      if (found != index.end() && found->first == before) waits[i].push_back(found->second);
    }
  }
  return waits;
}

/// Takes away, again and again, joints that wait for nothing left; what stays waits in a circle or
/// for one.
void remove_free(const Waits& waits, std::vector<bool>& gone) {
  std::vector<std::vector<std::size_t>> waiting_for(waits.size());
  std::vector<std::size_t> open(waits.size(), 0);
  std::vector<std::size_t> free;
  for (std::size_t i = 0; i < waits.size(); ++i) {
    if (gone[i]) continue;
    for (const std::size_t before : waits[i]) {
      if (gone[before]) continue;
      ++open[i];
      waiting_for[before].push_back(i);
    }
    if (open[i] == 0) free.push_back(i);
  }
  while (!free.empty()) {
    const std::size_t done = free.back();
    free.pop_back();
    gone[done] = true;
    for (const std::size_t next : waiting_for[done]) {
      if (--open[next] == 0) free.push_back(next);
    }
  }
}

/// A circle among the joints that stay. Each of them waits for another that stays, so following
/// the waits must come round.
std::vector<std::size_t> find_circle(const Waits& waits,
                                     const std::vector<bool>& gone,
                                     std::size_t start) {
  std::vector<std::size_t> trail;
  std::size_t at = start;
  while (std::find(trail.begin(), trail.end(), at) == trail.end()) {
    trail.push_back(at);
    at = *std::find_if(waits[at].begin(), waits[at].end(), [&](std::size_t i) { return !gone[i]; });
  }
  trail.erase(trail.begin(), std::find(trail.begin(), trail.end(), at));
  std::rotate(trail.begin(), std::min_element(trail.begin(), trail.end()), trail.end());
  return trail;
}

void check_circles(const WeldmentDraft& draft, Report& report) {
  constexpr int most_told = 20;
  constexpr std::size_t most_named = 12;
  const Waits waits = waits_of(draft.joints);
  std::vector<bool> gone(waits.size(), false);
  for (int told = 0; told < most_told; ++told) {
    remove_free(waits, gone);
    const auto stays = std::find(gone.begin(), gone.end(), false);
    if (stays == gone.end()) return;
    const auto circle = find_circle(waits, gone, static_cast<std::size_t>(stays - gone.begin()));
    const JointDraft& first = draft.joints[circle.front()];
    std::string chain = first.joint.id;
    for (std::size_t i = 1; i < std::min(circle.size(), most_named); ++i) {
      chain += " after " + draft.joints[circle[i]].joint.id;
    }
    if (circle.size() > most_named) chain += " after ...";
    report.error(draft.weldment.places.nearest_spot(first.key, "after"),
                 "read.after.cycle",
                 "the joints wait for each other: " + chain + " after " + first.joint.id +
                     "; expected an order in which they can be welded; delete one of these after=");
    for (const std::size_t i : circle) gone[i] = true;
  }
}

}  // namespace

void check_references(const WeldmentDraft& draft,
                      const planner::Library& library,
                      bool has_libraries,
                      Report& report) {
  ReferenceCheck check(draft, library, report);
  check.of_weldment();
  check.of_build();
  if (has_libraries) check.of_libraries();
  check_order_references(draft, report);
  check_circles(draft, report);
}

}  // namespace seamturn::io::detail

// SPDX-License-Identifier: MIT
// The tack plan of every seam as drawn.
#include <algorithm>
#include <cmath>
#include <limits>
#include <string_view>

#include "detail_assemble.hpp"
#include "detail_carried.hpp"
#include "detail_joints.hpp"
#include "detail_tacking.hpp"
#include "seamturn/base/listed.hpp"
#include "seamturn/joint/segments.hpp"

namespace seamturn::planner::detail {

namespace {

/// The stronger of both members asks for the longer tack.
double stronger_mpa(const JointWork& work) {
  return std::max(stated_yield_mpa(*work.steel_1, *work.member_1).value_or(unknown_yield_mpa),
                  stated_yield_mpa(*work.steel_2, *work.member_2).value_or(unknown_yield_mpa));
}

/// A planned seam: all of one drawn, or a segment of it.
struct Piece {
  const joint::Seam* seam = nullptr;
  const plan::PlannedSeam* planned = nullptr;
};

/// A seam as drawn: where segments meet it has no end.
struct DrawnSeam {
  const JointWork* joint = nullptr;
  std::string id;
  bool second = false;  ///< of two
  std::vector<Piece> pieces;
};

/// The widest gap the fit-up tolerances let through.
double widest_gap_mm(const Inputs& inputs, const joint::Joint& joint, double drawn_mm) {
  const fitup::Tolerances* row = fit_up_of(inputs, joint);
  return row == nullptr ? drawn_mm : drawn_mm + row->gap_plus_mm;
}

/// A run that is the whole weld is tacked thinner, so that it takes the tack in. Common practice.
constexpr double tack_of_single_run = 2.0 / 3.0;

double root_run_mm(const Piece& piece) {
  const section::WeldSection& section = piece.planned->section;
  const std::vector<pass::Pass>& passes = piece.planned->stack.passes;
  if (section.is_fillet && passes.size() == 1) return tack_of_single_run * section.throat_mm;
  const double root_mm2 = passes.front().area_mm2;
  // Of a groove's root bead: as high as it is wide.
  return section.is_fillet ? tack::fillet_throat_mm(root_mm2, piece.seam->between_walls)
                           : std::sqrt(root_mm2);
}

bool is_intermittent(const joint::Seam& seam) {
  return seam.asked.form == joint::LengthForm::intermittent;
}

/// The elements of an intermittent weld; of segments what one alone welds, so that no tack lies
/// under a stop. Empty: all of the seam.
std::vector<joint::Stretch> where_to_tack(const DrawnSeam& drawn) {
  std::vector<joint::Stretch> within;
  for (const Piece& piece : drawn.pieces) {
    double from_mm = 0.0;
    std::vector<joint::Stretch> stretches;
    if (piece.seam->segment) {
      from_mm = piece.seam->segment->begins_mm;
      stretches = {joint::own_stretch(*piece.seam)};
    } else if (is_intermittent(*piece.seam)) {
      stretches = joint::stretches_of(*piece.seam);
    }
    for (const joint::Stretch& one : stretches) {
      within.push_back({from_mm + one.from_mm, from_mm + one.to_mm});
    }
  }
  return within;
}

tack::TackSeam tack_seam(const Inputs& inputs, const DrawnSeam& drawn) {
  const joint::Joint& joint = *drawn.joint->joint;
  const Piece& first = drawn.pieces.front();
  tack::TackSeam seam;
  seam.path = joint::drawn_course(*first.seam);
  seam.within = where_to_tack(drawn);
  seam.count = joint.tacks;
  seam.thicker_mm = thicker_mm(*drawn.joint);
  seam.yield_mpa = stronger_mpa(*drawn.joint);
  if (const auto* groove = std::get_if<joint::Groove>(&joint.preparation)) {
    seam.drawn_gap_mm = groove->gap_mm;
    seam.gap_mm = widest_gap_mm(inputs, joint, groove->gap_mm);
  }
  if (const auto* fillet = std::get_if<joint::Fillet>(&joint.preparation)) {
    seam.gap_mm = fillet->gap_mm;
  }
  seam.weld_throat_mm = first.planned->section.throat_mm;
  seam.root_run_mm = std::numeric_limits<double>::infinity();
  for (const Piece& piece : drawn.pieces) {
    seam.root_run_mm = std::min(seam.root_run_mm, root_run_mm(piece));
  }
  // Elements say themselves how those of both sides lie to one another.
  seam.second_side = drawn.second && !is_intermittent(*first.seam);
  seam.gouged_from_it = joint.root == joint::RootDecision::gouge && first.seam->side == 2;
  return seam;
}

/// Those with a place, in the order of the file.
std::vector<DrawnSeam> seams_to_tack(const std::vector<JointWork>& joints, const plan::Plan& plan) {
  std::vector<DrawnSeam> seams;
  for (std::size_t j = 0; j < joints.size(); ++j) {
    const bool none = joints[j].joint->tacks == 0;
    const bool plug = std::holds_alternative<joint::Plug>(joints[j].joint->preparation);
    if (none || plug) continue;
    for (std::size_t s = 0; s < joints[j].seams.size(); ++s) {
      const joint::Seam& seam = *joints[j].seams[s].seam;
      if (!seam.path) continue;
      const plan::PlannedSeam& planned = plan.joints[j].seams[s];
      auto drawn = std::find_if(seams.begin(), seams.end(), [&](const DrawnSeam& known) {
        return known.id == planned.drawn;
      });
      if (drawn == seams.end()) {
        const bool second = planned.drawn != plan.joints[j].seams.front().drawn;
        drawn = seams.insert(drawn, DrawnSeam{&joints[j], planned.drawn, second, {}});
      }
      drawn->pieces.push_back({&seam, &planned});
    }
  }
  return seams;
}

constexpr std::string_view count_few = "tack.count.few";

bool is_few(const tack::TackPlan& plan) {
  return std::any_of(plan.findings.begin(), plan.findings.end(), [](const base::Finding& finding) {
    return finding.code == count_few;
  });
}

/// Where segments leave too little room between their stops, tacks may lie under them.
base::Outcome<tack::TackPlan> tacks_of(tack::TackSeam& seam,
                                       const tack::TackRules& rules,
                                       bool in_segments) {
  base::Outcome<tack::TackPlan> plan = tack::plan_tacks(seam, rules);
  if (!in_segments || (plan && !is_few(*plan))) return plan;
  tack::TackSeam whole = seam;
  whole.within.clear();
  base::Outcome<tack::TackPlan> anywhere = tack::plan_tacks(whole, rules);
  if (!anywhere || (plan && plan->tacks.size() >= anywhere->tacks.size())) return plan;
  seam = whole;
  return anywhere;
}

/// Station of a piece's own path for one of the seam drawn.
double own_station_mm(const Piece& piece, double drawn_mm) {
  if (!piece.seam->segment) return drawn_mm;
  const geom::Path& course = piece.seam->segment->course;
  const double on_mm = drawn_mm - piece.seam->segment->begins_mm;
  return geom::is_closed(course) ? geom::wrapped_station_mm(on_mm, geom::path_length_mm(course))
                                 : on_mm;
}

/// Which piece a tack lies in; where two overlap, the one whose ends are further.
std::size_t piece_of(const DrawnSeam& drawn, double centre_mm) {
  std::size_t best = 0;
  double most_mm = -std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < drawn.pieces.size(); ++i) {
    const double on_mm = own_station_mm(drawn.pieces[i], centre_mm);
    const double length_mm = geom::path_length_mm(*drawn.pieces[i].seam->path);
    const double inside_mm = std::min(on_mm, length_mm - on_mm);
    if (inside_mm <= most_mm) continue;
    most_mm = inside_mm;
    best = i;
  }
  return best;
}

/// Each piece gets the tacks that lie in it, in stations of its own path.
void share_out(const DrawnSeam& drawn, const plan::PlannedTacks& all, plan::Plan& plan) {
  std::vector<plan::PlannedTacks> own(drawn.pieces.size(), all);
  for (std::size_t i = 0; i < own.size(); ++i) {
    own[i].seam = drawn.pieces[i].planned->id;
    own[i].plan.tacks.clear();
  }
  for (tack::Tack tack : all.plan.tacks) {
    const double centre_mm = 0.5 * (tack.from_mm + tack.to_mm);
    const std::size_t piece = piece_of(drawn, centre_mm);
    const double on_mm = own_station_mm(drawn.pieces[piece], centre_mm) - centre_mm;
    tack.from_mm += on_mm;
    tack.to_mm += on_mm;
    own[piece].plan.tacks.push_back(tack);
  }
  plan.tacks.insert(plan.tacks.end(), own.begin(), own.end());
}

/// The stage in which both members are there first: then the tacks are made.
const StageWork& fitting_stage(const std::vector<StageWork>& stages, const joint::Joint& joint) {
  for (const StageWork& stage : stages) {
    if (stage.has(joint.member_1) && stage.has(joint.member_2)) return stage;
  }
  return stages.front();
}

LaidTacks lay(const Inputs& inputs,
              const std::vector<StageWork>& stages,
              const DrawnSeam& drawn,
              plan::Plan& plan) {
  const joint::Joint& joint = *drawn.joint->joint;
  LaidTacks laid{drawn.joint, tack_seam(inputs, drawn), {}};
  plan::PlannedTacks planned;
  planned.clear_of_ends_mm = inputs.library.tack_rules.clear_of_ends_mm.value;
  planned.preheat_c = drawn.joint->heat.preheat_c;
  const StageWork& stage = fitting_stage(stages, joint);
  if (stage.stage != nullptr) planned.stage = stage.stage->id;
  const bool in_segments = drawn.pieces.size() > 1;
  const auto tacks = tacks_of(laid.seam, inputs.library.tack_rules, in_segments);
  if (tacks) {
    planned.plan = laid.plan = *tacks;
  } else {
    planned.refused = tacks.error().text;
    laid.plan.findings = {
        {base::Severity::warning, tacks.error().code, tacks.error().text, {}, {}}};
  }
  share_out(drawn, planned, plan);
  return laid;
}

/// One tack where two should be is enough beside those of the joint's other side.
bool other_side_holds(const std::vector<LaidTacks>& laid, const LaidTacks& one) {
  return std::any_of(laid.begin(), laid.end(), [&](const LaidTacks& other) {
    return &other != &one && other.joint == one.joint && !other.plan.tacks.empty();
  });
}

/// What the tack plans tell, the same of several seams once, at the first's joint.
class TackFindings {
 public:
  explicit TackFindings(const Inputs& inputs) : inputs_(inputs) {}

  void add(const DrawnSeam& drawn, const base::Finding& finding) {
    auto same = std::find_if(
        all_.begin(), all_.end(), [&](const OfSeams& known) { return known.finding == finding; });
    if (same == all_.end()) same = all_.insert(same, {finding, drawn.joint->joint->id, {}});
    same->seams.push_back(drawn.id);
  }

  void tell(plan::Plan& plan) const {
    for (const OfSeams& one : all_) {
      base::Finding finding = one.finding;
      finding.text = (one.seams.size() == 1 ? "seam " : "seams ") + base::listed(one.seams) + ": " +
                     finding.text;
      finding.place = place_of(inputs_.weldment, "joint/" + one.joint);
      plan.findings.push_back(std::move(finding));
    }
  }

 private:
  struct OfSeams {
    base::Finding finding;
    std::string joint;
    std::vector<std::string> seams;
  };

  const Inputs& inputs_;
  std::vector<OfSeams> all_;
};

}  // namespace

void assemble_tacks(const Inputs& inputs,
                    const std::vector<StageWork>& stages,
                    const std::vector<JointWork>& joints,
                    plan::Plan& plan) {
  const std::vector<DrawnSeam> drawn = seams_to_tack(joints, plan);
  std::vector<LaidTacks> laid;
  for (const DrawnSeam& seam : drawn) laid.push_back(lay(inputs, stages, seam, plan));
  TackFindings findings(inputs);
  for (std::size_t i = 0; i < drawn.size(); ++i) {
    const bool enough = other_side_holds(laid, laid[i]);
    for (const base::Finding& finding : laid[i].plan.findings) {
      if (finding.code != count_few || !enough) findings.add(drawn[i], finding);
    }
  }
  findings.tell(plan);
  if (plan.cell) assemble_carried(inputs, stages, laid, plan);
}

}  // namespace seamturn::planner::detail

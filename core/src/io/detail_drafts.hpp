// SPDX-License-Identifier: MIT
// What the files say, before names are resolved and seams are laid on their members.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "detail_attribute_reader.hpp"
#include "seamturn/cell/cell.hpp"
#include "seamturn/joint/weldment.hpp"
#include "seamturn/planner/inputs.hpp"

namespace seamturn::io::detail {

/// One `use`.
struct Use {
  std::string file;
  Spot spot;
};

struct SeamDraft {
  joint::Seam seam;                ///< path and length
  std::optional<geom::Vec3> face;  ///< as stated
  Spot spot;
  Spot asked_spot;  ///< of what says how much is welded
};

struct JointDraft {
  joint::Joint joint;
  std::vector<SeamDraft> seams;
  std::optional<double> throat_mm;       ///< fillets sized by throat
  std::optional<base::Angle> dihedral;   ///< fillets, as stated
  std::optional<double> penetration_mm;  ///< grooves; absent: full
  std::string key;                       ///< "joint/J1"
  bool is_sound = false;                 ///< every value of it could be read
};

struct WeldmentDraft {
  joint::Weldment weldment;  ///< without joints
  std::vector<JointDraft> joints;
  std::vector<Use> libraries;
  std::optional<Use> cell;
  std::set<std::string> unsound_members;
};

/// Keeps where an element and its attributes stand under "kind/id"; the attributes of `part` count
/// as its own. False: something had that key before, and that is reported.
bool keep_unique(AttributeReader& reader,
                 std::string_view key,
                 joint::Places& places,
                 const Element& part = {});
/// Same, and finish of the element.
bool finish_unique(AttributeReader& reader,
                   std::string_view kind,
                   std::string_view id,
                   joint::Places& places);

void read_weldment(FileContext& context, WeldmentDraft& draft);
/// Nothing when the element's values could not all be read.
void read_member(FileContext& context, const Element& element, WeldmentDraft& draft);
void read_setup(FileContext& context, const Element& element, WeldmentDraft& draft);
void read_stage(FileContext& context, const Element& element, WeldmentDraft& draft);
void read_lifting(FileContext& context, const Element& element, WeldmentDraft& draft);
void read_datum(FileContext& context, const Element& element, WeldmentDraft& draft);
void read_tacking(FileContext& context, const Element& element, WeldmentDraft& draft);
void read_balance(FileContext& context, const Element& element, WeldmentDraft& draft);
void read_hand_order(FileContext& context, const Element& element, WeldmentDraft& draft);
void read_joint_balance(FileContext& context,
                        const Element& joint_element,
                        joint::Joint& joint,
                        joint::Places& places);
/// Elements that have no limit and so no attribute.
struct OpenElements {
  bool c = false;
  bool mn = false;
};
[[nodiscard]] material::Composition read_composition(AttributeReader& reader,
                                                     OpenElements open = {});
/// Into an empty draft.
void read_joint(FileContext& context,
                const Element& element,
                JointDraft& draft,
                joint::Places& places);
/// Preparation, cap or cover, and what is gouged.
/// Returns the element read; null when the joint has none.
Element read_preparation(FileContext& context,
                         const Element& joint_element,
                         JointDraft& draft,
                         joint::Places& places);
void read_cap(FileContext& context,
              const Element& joint_element,
              JointDraft& draft,
              joint::Places& places);
void read_stated_heat(AttributeReader& reader, joint::StatedHeat& heat);
void read_gouge(FileContext& context,
                const Element& joint_element,
                JointDraft& draft,
                joint::Places& places);
void read_seams(FileContext& context,
                const Element& joint_element,
                JointDraft& draft,
                joint::Places& places);

/// How much of a seam is welded: the `welded` of an element, if it has one.
struct WeldedDraft {
  joint::WeldLength asked;
  Spot spot;
};
[[nodiscard]] std::optional<WeldedDraft> find_welded(FileContext& context,
                                                     const Element& element,
                                                     const std::string& key,
                                                     joint::Places& places);

void read_library(FileContext& context, planner::Library& library);
void read_steel(FileContext& context, const Element& element, planner::Library& library);
void read_fit_up(FileContext& context, const Element& element, planner::Library& library);
void read_preparation_range(FileContext& context,
                            const Element& element,
                            planner::Library& library);
void read_gouging(FileContext& context, const Element& element, planner::Library& library);
void read_heating(FileContext& context, const Element& element, planner::Library& library);
void read_priorities(FileContext& context, const Element& element, planner::Library& library);
void read_layer_stops(FileContext& context, const Element& element, planner::Library& library);
void read_long_seams(FileContext& context, const Element& element, planner::Library& library);
void read_tacks(FileContext& context, const Element& element, planner::Library& library);
void read_rates(FileContext& context, const Element& element, planner::Library& library);
[[nodiscard]] cell::Cell read_cell(FileContext& context);

/// Words of positions and roles in the order of their enumerations.
[[nodiscard]] std::span<const std::string_view> position_words();
[[nodiscard]] std::span<const std::string_view> role_words();

/// Resolves ids of steels, wires, gases, members and `after`; `has_libraries` false: those of the
/// libraries are left alone, for one of them could not be read.
void check_references(const WeldmentDraft& draft,
                      const planner::Library& library,
                      bool has_libraries,
                      Report& report);
/// Sides, stages and twins that orders by hand and balance name.
void check_order_references(const WeldmentDraft& draft, Report& report);
/// Thicknesses of the two members of a joint.
struct Plates {
  double thinner_mm = 0.0;
  double thicker_mm = 0.0;
};
/// Lays the stretches on the seams of a joint whose legs and faces are known.
void build_lengths(const JointDraft& draft,
                   const Plates& plates,
                   joint::Joint& joint,
                   Report& report);
/// Takes the joints out of the draft that were read without an error, and lays them on their
/// members: thickness, legs and faces.
[[nodiscard]] std::vector<joint::Joint> build_joints(WeldmentDraft& draft, Report& report);

}  // namespace seamturn::io::detail

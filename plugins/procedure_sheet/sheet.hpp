// SPDX-License-Identifier: MIT
// One procedure of a plan as a sheet. ISO 15609-1 lists what a welding procedure specification
// states; what the plan does not decide stands here all the same, as open.
#pragma once

#include <string>
#include <string_view>

#include "plan_reader/plan_reader.hpp"

namespace seamturn::procedure_sheet {

/// Said of every item the plan does not decide.
inline constexpr const char* open_text = "to be filled in by the welding coordinator";

/// What the parts of a sheet look at: the procedure, and the joint and seam that stand for all.
struct Subject {
  const plan_reader::PlanTree& plan;
  pugi::xml_node procedure;
  pugi::xml_node joint;
  pugi::xml_node seam;
  pugi::xml_node wire;
  pugi::xml_node gas;  ///< null when the plan names none
};

/// The sheet of a procedure id as XML (docs/schemas/sheet.xsd).
[[nodiscard]] std::string sheet_xml(const plan_reader::PlanTree& plan, const std::string& id);

// The parts, in the order of the sheet.
void put_status(pugi::xml_node sheet, const Subject& subject);
void put_identification(pugi::xml_node sheet, const Subject& subject);
void put_scope(pugi::xml_node sheet, const Subject& subject);
void put_parent_metal(pugi::xml_node sheet, const Subject& subject);
void put_preparation(pugi::xml_node sheet, const Subject& subject);
void put_sizes(pugi::xml_node sheet, const Subject& subject);
void put_process(pugi::xml_node sheet, const Subject& subject);
void put_consumables(pugi::xml_node sheet, const Subject& subject);
void put_passes(pugi::xml_node sheet, const Subject& subject);
void put_fit_up(pugi::xml_node sheet, const Subject& subject);
void put_tacks(pugi::xml_node sheet, const Subject& subject);
void put_heat(pugi::xml_node sheet, const Subject& subject);
void put_inspection(pugi::xml_node sheet, const Subject& subject);
void put_cautions(pugi::xml_node sheet, const Subject& subject);

/// A station of a planned seam in whole mm from where the seam is begun on the drawing: those of a
/// segment count on from its beginning there, round a closed seam anew.
[[nodiscard]] std::string drawn_station(pugi::xml_node seam, double station_mm);

/// <item name value/>: a decided item; an empty value makes it open.
void put_item(pugi::xml_node parent, const char* name, std::string_view value);
/// <item name open/>.
void put_open(pugi::xml_node parent, const char* name);

}  // namespace seamturn::procedure_sheet

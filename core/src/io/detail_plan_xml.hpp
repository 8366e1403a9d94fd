// SPDX-License-Identifier: MIT
// plan.xml part by part. Attribute names wear their units; docs/schemas/plan.xsd explains each.
#pragma once

#include <optional>
#include <pugixml.hpp>
#include <string_view>

#include "seamturn/plan/plan.hpp"

namespace seamturn::io::detail {

/// One attribute each. Numbers as the shortest text that reads back. Pre: finite.
void put_text(pugi::xml_node node, const char* name, std::string_view value);
void put_number(pugi::xml_node node, const char* name, double value);
void put_count(pugi::xml_node node, const char* name, long long value);
void put_flag(pugi::xml_node node, const char* name, bool value);  ///< "true", "false"
/// Nothing is written when there is nothing.
void put_text_if(pugi::xml_node node, const char* name, std::string_view value);
void put_number_if(pugi::xml_node node, const char* name, const std::optional<double>& value);
/// Id of a stage; nothing where the file names none.
void put_stage_if(pugi::xml_node node, const plan::Plan& plan, std::size_t index);

/// A child with x_mm y_mm z_mm, or with x y z.
pugi::xml_node put_place(pugi::xml_node parent, const char* name, const geom::Vec3& point);
pugi::xml_node put_direction(pugi::xml_node parent, const char* name, const geom::Vec3& direction);
/// A child with the origin and the x and z axes of a frame.
void put_pose(pugi::xml_node parent, const char* name, const geom::Pose& pose);
void put_caution(pugi::xml_node parent, const procedure::Caution& caution);
void put_composition(pugi::xml_node parent, const char* name, const material::Composition& content);

void put_head(pugi::xml_node root, const plan::Plan& plan);
void put_notices(pugi::xml_node root, const plan::Plan& plan);
void put_steels(pugi::xml_node root, const plan::Plan& plan);
void put_members(pugi::xml_node root, const plan::Plan& plan);
void put_setups(pugi::xml_node root, const plan::Plan& plan);
void put_build(pugi::xml_node root, const plan::Plan& plan);
void put_cell(pugi::xml_node root, const plan::Plan& plan);
void put_consumables(pugi::xml_node root, const plan::Plan& plan);
void put_joints(pugi::xml_node root, const plan::Plan& plan);
void put_seam(pugi::xml_node parent,
              const plan::Plan& plan,
              const joint::Joint& joint,
              const plan::PlannedSeam& seam);
/// Tacks of a seam; nothing where it has none.
void put_tacks(pugi::xml_node seam, const plan::Plan& plan, const std::string& id);
void put_procedures(pugi::xml_node root, const plan::Plan& plan);
void put_stances(pugi::xml_node root, const plan::Plan& plan);
/// Of each turn what every axis holds on its way.
void put_turns(pugi::xml_node root, const plan::Plan& plan);
void put_timeline(pugi::xml_node root, const plan::Plan& plan);
void put_estimate(pugi::xml_node root, const plan::Plan& plan);
void put_totals(pugi::xml_node root, const plan::Plan& plan);
/// Rules on the size of a joint's welds; the throat that counts of a seam.
void put_heat(pugi::xml_node joint, const plan::PlannedJoint& planned);
void put_weld_size(pugi::xml_node joint, const plan::PlannedSize& size);
void put_counted_throat(pugi::xml_node seam, const plan::PlannedThroat& counted);
/// Band and gap table of a seam.
void put_fit_up(pugi::xml_node seam, const plan::PlannedFitUp& fit_up);

}  // namespace seamturn::io::detail

// SPDX-License-Identifier: MIT
// Set-ups, stages, operations, lifting points.
#include <array>
#include <span>

#include "detail_drafts.hpp"
#include "detail_utf8.hpp"

namespace seamturn::io::detail {

namespace {

using joint::OperationKind;

constexpr std::array<std::string_view, 2> place_words = {"start", "end"};
constexpr std::array<std::string_view, 4> axis_words = {"tilt", "rotate", "turn", "roll"};
constexpr int most_people = 50;

joint::SetupSolid read_solid(FileContext& context,
                             const Element& element,
                             const std::string& key,
                             joint::Places& places) {
  AttributeReader reader(context, element);
  joint::SetupSolid solid;
  solid.kind = element.name();
  solid.mass_kg = reader.quantity("mass", ranges::mass_or_none);
  solid.centre = reader.point("centre");
  if (reader.has("size")) {
    const auto size = reader.three_quantities("size", ranges::size);
    solid.size_mm = geom::Vec3(size[0], size[1], size[2]);
  }
  reader.finish(key, places);
  check_children(context, element, {});
  return solid;
}

joint::Clamp read_clamp(FileContext& context,
                        const Element& element,
                        const std::string& setup,
                        joint::Places& places) {
  AttributeReader reader(context, element);
  joint::Clamp clamp;
  clamp.id = reader.id("id");
  clamp.at = reader.point("at");
  clamp.radius_mm = reader.quantity("radius", ranges::size);
  finish_unique(reader, "clamp", setup + "/" + clamp.id, places);
  check_children(context, element, {});
  return clamp;
}

/// What every operation says.
void read_work(AttributeReader& reader, joint::Operation& operation) {
  operation.time_s = reader.quantity("time", ranges::time);
  operation.people = reader.has("people") ? reader.count("people", 1, most_people) : 1;
  operation.note = reader.find_text("note");
  for (const std::string_view axis : axis_words) {
    const MarkedName name(axis);
    if (!reader.has(name)) continue;
    operation.axes.push_back({std::string(axis), reader.angle(name, ranges::turn)});
  }
  const bool level = reader.find_yes("level");
  if (level && !operation.axes.empty()) {
    reader.refuse("level", "read.operation.stance", "the axes it is to stand at are stated");
  }
  operation.level = operation.axes.empty() && (level || operation.kind == OperationKind::fit);
}

void read_fit(FileContext& context,
              const Element& element,
              joint::Stage& stage,
              joint::Places& places) {
  AttributeReader reader(context, element);
  joint::Operation operation;
  operation.kind = OperationKind::fit;
  operation.place = joint::OperationPlace::start;
  operation.id = "fit " + stage.id;
  operation.members = reader.ids("members");
  read_work(reader, operation);
  const auto fits = joint::fitted_members(stage);
  if (!fits.empty()) operation.id += " " + std::to_string(1 + stage.operations.size());
  reader.finish("operation/" + operation.id, places);
  check_children(context, element, {});
  stage.operations.push_back(std::move(operation));
}

void read_operation(FileContext& context,
                    const Element& element,
                    joint::Stage& stage,
                    joint::Places& places) {
  AttributeReader reader(context, element);
  joint::Operation operation;
  operation.id = reader.id("id");
  operation.kind =
      static_cast<OperationKind>(1 + reader.word("kind", joint::operation_names().subspan(1)));
  operation.members = reader.find_ids("members");
  operation.joints = reader.find_ids("joints");
  operation.after = reader.find_ids("after");
  operation.before = reader.find_ids("before");
  const auto place = reader.find_word("at", place_words);
  const bool tied = !operation.after.empty() || !operation.before.empty();
  if (place && tied) {
    reader.refuse("at", "read.operation.place", "after or before already says where it stands");
  }
  if (tied) {
    operation.place = joint::OperationPlace::between;
  } else {
    operation.place = place == 0U ? joint::OperationPlace::start : joint::OperationPlace::end;
  }
  read_work(reader, operation);
  const bool first = finish_unique(reader, "operation", operation.id, places);
  check_children(context, element, {});
  if (first) stage.operations.push_back(std::move(operation));
}

/// Slings of no length and two in one place are no lifting.
void check_points(FileContext& context, const Element& element, const joint::Lifting& lifting) {
  constexpr std::size_t most = 12;
  constexpr double apart_mm = 1.0;
  std::vector<geom::Vec3> places = {lifting.hook};
  std::string wrong;
  for (const joint::LiftPoint& point : lifting.points) {
    for (const geom::Vec3& other : places) {
      if ((point.at - other).norm() < apart_mm) wrong = point.id;
    }
    places.push_back(point.at);
  }
  if (wrong.empty() && lifting.points.size() <= most) return;
  context.report.error(
      context.spot(element),
      "read.lifting.points",
      wrong.empty() ? std::to_string(lifting.points.size()) +
                          " lifting points found; expected at most 12; split the lifting"
                    : "lifting point " + in_quotes(wrong) +
                          " lies where another point or the hook is; expected every one at a place "
                          "of its own; correct at=");
}

}  // namespace

void read_setup(FileContext& context, const Element& element, WeldmentDraft& draft) {
  AttributeReader reader(context, element);
  joint::Places& places = draft.weldment.places;
  joint::Setup setup;
  setup.id = reader.id("id");
  setup.X_DJ.translation = reader.point("part-at");
  setup.turned = reader.find_angle("turned", ranges::turn);
  const base::Angle roll = reader.find_angle("roll", ranges::turn);
  const base::Angle pitch = reader.find_angle("pitch", ranges::turn);
  // About the part's own axes, so they stand right of the turn of the faceplate, which is put in
  // when the cell is known.
  setup.X_DJ.rotation = geom::rotation_about(geom::Vec3::UnitX(), roll) *
                        geom::rotation_about(geom::Vec3::UnitY(), pitch);
  setup.hides = reader.find_ids("hides");
  setup.hang_s = reader.find_quantity("hang", ranges::time);
  if (reader.has("hang-people")) setup.hang_people = reader.count("hang-people", 1, most_people);
  setup.lifting = reader.find_id("lifting");
  setup.lifting_off = reader.find_id("lifting-off");
  const std::string key = "setup/" + setup.id;
  const bool first = finish_unique(reader, "setup", setup.id, places);
  constexpr std::array<std::string_view, 3> known = {"fixture", "riser", "clamp"};
  check_children(context, element, known);
  for (const Element& child : element.children()) {
    const std::string_view name = child.name();
    if (name == "clamp") setup.clamps.push_back(read_clamp(context, child, setup.id, places));
    if (name != "fixture" && name != "riser") continue;
    const std::string solid_key = key + "/solid" + std::to_string(setup.solids.size());
    setup.solids.push_back(read_solid(context, child, solid_key, places));
  }
  if (first) draft.weldment.setups.push_back(std::move(setup));
}

void read_lifting(FileContext& context, const Element& element, WeldmentDraft& draft) {
  AttributeReader reader(context, element);
  joint::Places& places = draft.weldment.places;
  joint::Lifting lifting;
  lifting.id = reader.id("id");
  lifting.hook = reader.point("hook");
  const bool first = finish_unique(reader, "lifting", lifting.id, places);
  constexpr std::array<std::string_view, 1> known = {"point"};
  check_children(context, element, known);
  for (const Element& child : element.children("point")) {
    AttributeReader point(context, child);
    lifting.points.push_back({point.id("id"), point.point("at")});
    const std::string& point_id = lifting.points.back().id;
    finish_unique(point, "point", lifting.id + "/" + point_id, places);
  }
  check_points(context, element, lifting);
  if (lifting.points.empty()) {
    context.report.error(context.spot(element),
                         "read.element.missing",
                         "the lifting has no point; expected at least one <point id=\"...\" "
                         "at=\"x y z mm\"/>; add it");
  }
  if (first) draft.weldment.liftings.push_back(std::move(lifting));
}

void read_stage(FileContext& context, const Element& element, WeldmentDraft& draft) {
  AttributeReader reader(context, element);
  joint::Places& places = draft.weldment.places;
  joint::Stage stage;
  stage.id = reader.id("id");
  const bool away = reader.find_yes("away");
  stage.setup = reader.find_id("setup");
  if (away == !stage.setup.empty()) {
    reader.error("read.stage.setup",
                 away ? "a stage away from the cell hangs in no set-up; expected away=\"yes\" or "
                        "setup=\"...\", not both; delete one of them"
                      : "the stage names no set-up; expected setup=\"...\", or away=\"yes\" where "
                        "the part leaves the cell; add one of them");
  }
  const bool first = finish_unique(reader, "stage", stage.id, places);
  constexpr std::array<std::string_view, 2> known = {"fit", "operation"};
  check_children(context, element, known);
  for (const Element& child : element.children("fit")) {
    read_fit(context, child, stage, places);
  }
  for (const Element& child : element.children("operation")) {
    read_operation(context, child, stage, places);
  }
  if (first) draft.weldment.stages.push_back(std::move(stage));
}

}  // namespace seamturn::io::detail

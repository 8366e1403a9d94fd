// SPDX-License-Identifier: MIT
#include <array>
#include <cmath>

#include "detail_drafts.hpp"
#include "detail_utf8.hpp"

namespace seamturn::io::detail {

namespace {

using geom::Mat3;
using geom::Pose;
using geom::Vec3;

Mat3 frame(const Vec3& x, const Vec3& y, const Vec3& z) {
  Mat3 axes;
  axes << x, y, z;
  return axes;
}

/// A plate's own frame has its thickness along z. Standing, its first size runs along the other
/// horizontal axis, its second along z; `at` stays its least corner.
Pose plate_pose(std::optional<std::size_t> stand, double thickness_mm, const Vec3& at) {
  const Vec3 x = Vec3::UnitX();
  const Vec3 y = Vec3::UnitY();
  const Vec3 z = Vec3::UnitZ();
  if (!stand || *stand == 2) return Pose{Mat3::Identity(), at};
  if (*stand == 0) return Pose{frame(y, z, x), at};
  // x, z, -y is right-handed, so the plate's origin is at its far side.
  return Pose{frame(x, z, -y), at + thickness_mm * y};
}

joint::Plate read_plate(AttributeReader& reader, Pose& pose) {
  constexpr std::array<std::string_view, 3> stands = {"x", "y", "z"};
  joint::Plate plate;
  plate.thickness_mm = reader.quantity("thickness", ranges::size);
  const auto [length_mm, width_mm] = reader.two_quantities("size", ranges::size);
  plate.length_mm = length_mm;
  plate.width_mm = width_mm;
  const Vec3 at = reader.point("at");
  pose = plate_pose(reader.find_word("stand", stands), plate.thickness_mm, at);
  return plate;
}

Pose along_pose(AttributeReader& reader) {
  Pose pose;
  pose.translation = reader.point("at");
  const Vec3 along = reader.find_direction("along").value_or(Vec3::UnitZ());
  if (along.hasNaN()) return pose;
  const bool upright = along.isApprox(Vec3::UnitZ());
  const Vec3 x = upright ? Vec3::UnitX() : geom::any_normal_to(along);
  pose.rotation = frame(x, along.cross(x), along);
  return pose;
}

joint::Tube read_tube(AttributeReader& reader, Pose& pose) {
  joint::Tube tube;
  tube.outer_diameter_mm = reader.quantity("outer", ranges::size);
  tube.wall_mm = reader.quantity("wall", ranges::size);
  tube.length_mm = reader.quantity("length", ranges::size);
  if (tube.wall_mm > tube.outer_diameter_mm / 2.0) {
    reader.error("wall",
                 "read.tube.wall",
                 "the wall is thicker than half the outside diameter; expected at most half of it "
                 "(then it is a solid bar); correct wall= or outer=");
  }
  pose = along_pose(reader);
  return tube;
}

joint::Ring read_ring(AttributeReader& reader, Pose& pose) {
  joint::Ring ring;
  ring.outer_diameter_mm = reader.quantity("outer", ranges::size);
  ring.inner_diameter_mm = reader.quantity("inner", ranges::size_or_none);
  ring.thickness_mm = reader.quantity("thickness", ranges::size);
  if (ring.inner_diameter_mm >= ring.outer_diameter_mm) {
    reader.error(
        "inner",
        "read.ring.inner",
        "the inside diameter is not smaller than the outside; expected inner= below outer=; "
        "correct one of them");
  }
  pose = along_pose(reader);
  return ring;
}

}  // namespace

material::Composition read_composition(AttributeReader& reader) {
  material::Composition composition;
  composition.c = reader.quantity("c", ranges::carbon);
  composition.mn = reader.quantity("mn", ranges::element);
  struct Element {
    std::string_view name;
    double material::Composition::*content;
  };
  using C = material::Composition;
  constexpr Element others[] = {{"si", &C::si},
                                {"p", &C::p},
                                {"s", &C::s},
                                {"cr", &C::cr},
                                {"mo", &C::mo},
                                {"v", &C::v},
                                {"ni", &C::ni},
                                {"cu", &C::cu},
                                {"nb", &C::nb},
                                {"ti", &C::ti},
                                {"al", &C::al},
                                {"b", &C::b},
                                {"n", &C::n}};
  for (const Element& element : others) {
    composition.*element.content =
        reader.find_quantity(element.name, ranges::element).value_or(0.0);
  }
  return composition;
}

void read_member(FileContext& context, const pugi::xml_node& element, WeldmentDraft& draft) {
  const std::size_t errors_before = context.report.error_count();
  AttributeReader reader(context, element);
  joint::Member member;
  member.id = reader.id("id");
  member.steel = reader.id("steel");
  const std::string_view kind = element.name();
  if (kind == "plate") member.shape = read_plate(reader, member.X_JM);
  if (kind == "tube") member.shape = read_tube(reader, member.X_JM);
  if (kind == "ring") member.shape = read_ring(reader, member.X_JM);
  const Pose swing{geom::rotation_about(Vec3::UnitZ(), reader.find_angle("swing", ranges::turn)),
                   Vec3::Zero()};
  member.X_JM = swing * member.X_JM;

  constexpr std::array<std::string_view, 1> known = {"analysis"};
  check_children(context, element, known);
  const std::string key = "member/" + member.id;
  if (const auto analysis = only_child(context, element, "analysis", Need::may_be_absent)) {
    AttributeReader analysis_reader(context, analysis);
    member.analysis = read_composition(analysis_reader);
    analysis_reader.finish(key + "/analysis", draft.weldment.places);
    check_children(context, analysis, {});
  }
  const std::optional<Spot> first = draft.weldment.places.find_spot(key);
  check_unique(reader, key, first);
  reader.finish(key, draft.weldment.places);
  if (context.report.error_count() > errors_before) draft.unsound_members.insert(member.id);
  if (!first && !member.id.empty()) draft.weldment.members.push_back(std::move(member));
}

}  // namespace seamturn::io::detail

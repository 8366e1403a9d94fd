// SPDX-License-Identifier: MIT
#include <algorithm>
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

/// Centre of the first end, axis, and across it the direction of the first size.
Pose bar_pose(AttributeReader& reader) {
  Pose pose = along_pose(reader);
  const std::optional<Vec3> across = reader.find_direction("across");
  if (!across || across->hasNaN()) return pose;
  const Vec3 z = pose.rotation.col(2);
  const Vec3 x = *across - across->dot(z) * z;
  constexpr double nearly_along = 0.017;  // one degree
  if (x.norm() < nearly_along) {
    reader.error("across",
                 "read.bar.across",
                 "the direction points along the bar; expected one across it, that of its first "
                 "size; correct it");
    return pose;
  }
  pose.rotation = frame(geom::unit(x), z.cross(geom::unit(x)), z);
  return pose;
}

joint::Bar read_bar(AttributeReader& reader, Pose& pose) {
  constexpr std::array<std::string_view, 4> shapes = {"round", "square", "flat", "hexagon"};
  joint::Bar bar;
  bar.shape = static_cast<joint::BarShape>(reader.word("shape", shapes));
  if (bar.shape == joint::BarShape::flat) {
    const auto [width_mm, height_mm] = reader.two_quantities("size", ranges::size);
    bar.width_mm = width_mm;
    bar.height_mm = height_mm;
  } else {
    bar.width_mm = bar.height_mm = reader.quantity("size", ranges::size);
  }
  bar.length_mm = reader.quantity("length", ranges::size);
  pose = bar_pose(reader);
  return bar;
}

joint::Forging read_forging(FileContext& context,
                            const Element& element,
                            AttributeReader& reader,
                            Pose& pose) {
  joint::Forging forging;
  forging.bore_mm = reader.find_quantity("bore", ranges::size_or_none).value_or(0.0);
  pose = along_pose(reader);
  for (const Element& child : element.children("step")) {
    AttributeReader step_reader(context, child);
    joint::ForgingStep step;
    step.length_mm = step_reader.quantity("length", ranges::size);
    step.start_diameter_mm = step_reader.quantity("diameter", ranges::size);
    step.end_diameter_mm =
        step_reader.find_quantity("end-diameter", ranges::size).value_or(step.start_diameter_mm);
    const bool ends_thinner = step.end_diameter_mm < step.start_diameter_mm;
    if (std::min(step.start_diameter_mm, step.end_diameter_mm) <= forging.bore_mm) {
      step_reader.error(ends_thinner ? "end-diameter" : "diameter",
                        "read.forging.bore",
                        "the step is no thicker than the bore; expected a diameter above bore=; "
                        "correct one of them");
    }
    step_reader.finish();
    check_children(context, child, {});
    forging.steps.push_back(step);
  }
  if (forging.steps.empty()) {
    reader.error("read.element.missing",
                 "the forging has no step; expected at least one <step length=\"...\" "
                 "diameter=\"...\"/>; add it");
  }
  return forging;
}

}  // namespace

material::Composition read_composition(AttributeReader& reader, OpenElements open) {
  material::Composition composition;
  const auto limit_of = [&](MarkedName name, bool is_open, const Range& range) {
    if (!is_open) return reader.quantity(name, range);
    reader.refuse(name, "read.steel.open", "open= says that it has no limit");
    return 0.0;
  };
  const auto trace = [&](MarkedName name) {
    return reader.find_quantity(name, ranges::element).value_or(0.0);
  };
  // In the order of certificates and tables.
  composition.c = limit_of("c", open.c, ranges::carbon);
  composition.si = trace("si");
  composition.mn = limit_of("mn", open.mn, ranges::element);
  composition.p = trace("p");
  composition.s = trace("s");
  composition.cr = trace("cr");
  composition.mo = trace("mo");
  composition.ni = trace("ni");
  composition.cu = trace("cu");
  composition.v = trace("v");
  composition.nb = trace("nb");
  composition.ti = trace("ti");
  composition.al = trace("al");
  composition.b = trace("b");
  composition.n = trace("n");
  return composition;
}

void read_member(FileContext& context, const Element& element, WeldmentDraft& draft) {
  const std::size_t errors_before = context.report.error_count();
  AttributeReader reader(context, element);
  joint::Member member;
  member.id = reader.id("id");
  member.steel = reader.id("steel");
  const std::string_view kind = element.name();
  if (kind == "plate" || kind == "ring") {
    constexpr std::array<std::string_view, 3> classes = {"Z15", "Z25", "Z35"};
    const std::optional<std::size_t> ordered = reader.find_word("z-quality", classes);
    if (ordered) member.z_quality = classes.at(*ordered);
  }
  if (kind == "plate") member.shape = read_plate(reader, member.X_JM);
  if (kind == "tube") member.shape = read_tube(reader, member.X_JM);
  if (kind == "ring") member.shape = read_ring(reader, member.X_JM);
  if (kind == "bar") member.shape = read_bar(reader, member.X_JM);
  if (kind == "forging") member.shape = read_forging(context, element, reader, member.X_JM);
  const Pose swing{geom::rotation_about(Vec3::UnitZ(), reader.find_angle("swing", ranges::turn)),
                   Vec3::Zero()};
  member.X_JM = swing * member.X_JM;

  constexpr std::array<std::string_view, 2> known = {"analysis", "step"};
  check_children(context, element, std::span(known).first(kind == "forging" ? 2 : 1));
  if (const auto analysis = only_child(context, element, "analysis", Need::may_be_absent)) {
    AttributeReader analysis_reader(context, analysis);
    member.analysis = read_composition(analysis_reader);
    analysis_reader.finish("member/" + member.id + "/analysis", draft.weldment.places);
    check_children(context, analysis, {});
  }
  const bool first = finish_unique(reader, "member", member.id, draft.weldment.places);
  if (context.report.error_count() > errors_before) draft.unsound_members.insert(member.id);
  if (first && !member.id.empty()) draft.weldment.members.push_back(std::move(member));
}

}  // namespace seamturn::io::detail

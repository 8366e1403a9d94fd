// SPDX-License-Identifier: MIT
// Laws every section obeys, on random preparations.
#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "oracle.hpp"
#include "seamturn/base/random.hpp"
#include "seamturn/section/weld_section.hpp"
#include "section/random_section.hpp"
#include "section/shoelace.hpp"

namespace seamturn::tests {

using base::Angle;
using base::Random;
using joint::Cap;
using joint::Fillet;
using section::SectionParams;
using section::weld_section;
using section::WeldSection;

namespace {

constexpr int cases = 400;
constexpr double cap_chords = 32.0;

/// A fillet, then three grooves.
SectionParams random_params(Random& random, int i) {
  return i % 4 == 0 ? random_fillet(random) : random_groove(random);
}

joint::GrooveSide scaled_side(joint::GrooveSide side, double k) {
  side.depth_mm *= k;
  side.radius_mm *= k;
  side.lower_depth_mm *= k;
  return side;
}

struct Scaler {
  double k;
  joint::Preparation operator()(const Fillet& f) const {
    return Fillet{k * f.leg_1_mm, k * f.leg_2_mm, k * f.bulge_mm, k * f.gap_mm, k * f.reach_mm};
  }
  joint::Preparation operator()(joint::Groove groove) const {
    groove.gap_mm *= k;
    groove.root_face_mm *= k;
    groove.side_1 = scaled_side(groove.side_1, k);
    groove.side_2 = scaled_side(groove.side_2, k);
    return groove;
  }
  joint::Preparation operator()(const joint::Plug& p) const {
    return joint::Plug{k * p.width_mm, k * p.length_mm, k * p.fill_mm};
  }
};

SectionParams scaled(const SectionParams& params, double k) {
  SectionParams big = params;
  big.preparation = std::visit(Scaler{k}, params.preparation);
  big.thickness_mm *= k;
  big.depth_mm *= k;
  big.cap = Cap{k * params.cap.height_mm, k * params.cap.toe_lap_mm};
  return big;
}

double area_of(const SectionParams& params) {
  const auto section = weld_section(params);
  REQUIRE(section.has_value());
  return section->area_mm2;
}

template <class Law>
void for_random_sections(const char* name, const Law& law) {
  const std::uint64_t seed = base::named_seed(20261125, name);
  Random random(seed);
  for (int i = 0; i < cases; ++i) {
    const SectionParams params = random_params(random, i);
    const auto section = weld_section(params);
    INFO(std::string(name),
         " seed ",
         seed,
         " case ",
         i,
         " ",
         std::string(joint::preparation_name(params.preparation)),
         " t ",
         params.thickness_mm,
         " depth ",
         params.depth_mm);
    REQUIRE(section.has_value());
    law(params, *section, random);
  }
}

}  // namespace

TEST_SUITE("section/profile_laws") {
  TEST_CASE("for any section, law: the outline runs anticlockwise round the integrated area") {
    for_random_sections("shoelace", [](const SectionParams&, const WeldSection& s, Random&) {
      // 32 chords of a parabola miss 1/32^2 of its area: a closed form.
      const double chord_error = s.cap_area_mm2 / (cap_chords * cap_chords);
      // A bulge's 32 chords miss at most twice that share of the segment.
      const double bulge_error = 2.0 * std::abs(s.bulge_area_mm2) / (cap_chords * cap_chords);
      const double got = shoelace_mm2(s.outline);
      CHECK(std::abs(got - (s.area_mm2 - chord_error)) <= bulge_error + 1e-11 * s.area_mm2);
      CHECK(s.outline.size() >= 3);
      for (std::size_t i = 0; i < s.outline.size(); ++i) {
        const section::Point& a = s.outline[i];
        const section::Point& b = s.outline[(i + 1) % s.outline.size()];
        CHECK(std::hypot(a.x_mm - b.x_mm, a.y_mm - b.y_mm) > 0.0);
      }
    });
  }

  TEST_CASE("for any section, law: twice the size is four times the area") {
    for_random_sections("scale", [](const SectionParams& p, const WeldSection& s, Random& random) {
      const double k = random.between(0.3, 4.0);
      CHECK(area_of(scaled(p, k)) == doctest::Approx(k * k * s.area_mm2).epsilon(1e-11));
    });
  }

  TEST_CASE("for any section, law: height of an area and area below a height undo each other") {
    for_random_sections("inverse", [](const SectionParams&, const WeldSection& s, Random& random) {
      const double profile_mm2 = s.area_mm2 - s.cap_area_mm2 - s.bulge_area_mm2 - s.behind_area_mm2;
      CHECK(section::area_below_mm2(s, s.height_mm) == doctest::Approx(profile_mm2).epsilon(1e-11));
      CHECK(section::area_below_mm2(s, 0.0) == 0.0);
      CHECK(section::height_of_area_mm(s, 0.0) == 0.0);
      const double part_mm2 = random.unit() * profile_mm2;
      const double y_mm = section::height_of_area_mm(s, part_mm2);
      CHECK(y_mm >= 0.0);
      CHECK(y_mm <= s.height_mm);
      CHECK(section::area_below_mm2(s, y_mm) ==
            doctest::Approx(part_mm2).epsilon(1e-9).scale(profile_mm2));
    });
  }

  TEST_CASE("for any section, law: slices sum up to the area below, whatever the walls do") {
    for_random_sections("slices", [](const SectionParams&, const WeldSection& s, Random& random) {
      const double top_mm = random.unit() * s.height_mm;
      constexpr int strips = 4000;
      double sum_mm2 = 0.0;
      for (int i = 0; i < strips; ++i) {
        sum_mm2 += section::width_at_mm(s, top_mm * (i + 0.5) / strips) * top_mm / strips;
      }
      CHECK(section::area_below_mm2(s, top_mm) ==
            doctest::Approx(sum_mm2).epsilon(2e-6).scale(s.area_mm2));
    });
  }

  TEST_CASE("for any groove, law: more gap, angle, depth of bevel or cap is more metal") {
    for_random_sections("rises", [](const SectionParams& p, const WeldSection& s, Random&) {
      SectionParams more = p;
      if (auto* fillet = std::get_if<Fillet>(&more.preparation)) {
        fillet->leg_2_mm += 0.1;
        CHECK(area_of(more) > s.area_mm2);
        return;
      }
      auto& groove = std::get<joint::Groove>(more.preparation);
      groove.gap_mm += 0.1;
      CHECK(area_of(more) > s.area_mm2);
      more = p;
      more.cap.height_mm += 0.1;
      CHECK(area_of(more) > s.area_mm2);
      more = p;
      auto& wider = std::get<joint::Groove>(more.preparation);
      wider.side_1.angle = wider.side_1.angle + Angle::deg(1.0);
      wider.side_2.angle = wider.side_2.angle + Angle::deg(1.0);
      if (wider.form != joint::GrooveForm::square) CHECK(area_of(more) > s.area_mm2);
    });
  }

  TEST_CASE("for any V, law: it is two single bevels of half its angle and half its gap") {
    for_random_sections("halves", [](const SectionParams& p, const WeldSection& s, Random&) {
      const auto* v = std::get_if<joint::Groove>(&p.preparation);
      if (v == nullptr || v->form != joint::GrooveForm::v) return;
      joint::Groove bevel = *v;
      bevel.form = joint::GrooveForm::bevel;
      bevel.gap_mm = 0.5 * v->gap_mm;
      for (joint::GrooveSide* side : {&bevel.side_1, &bevel.side_2}) {
        if (side->first_face) return;  // unequal faces are no two equal bevels
        side->angle = side->angle / 2.0;
      }
      SectionParams half = p;
      half.preparation = bevel;
      half.cap = Cap{};
      CHECK(2.0 * area_of(half) == doctest::Approx(s.area_mm2 - s.cap_area_mm2).epsilon(1e-11));
    });
  }

  TEST_CASE("for any fillet, law: exchanging the legs mirrors the section") {
    for_random_sections("mirror", [](const SectionParams& p, const WeldSection& s, Random&) {
      const auto* fillet = std::get_if<Fillet>(&p.preparation);
      // Metal in the gap lies under the second member only: no mirror there.
      if (fillet == nullptr || fillet->reach_mm > 0.0) return;
      SectionParams other = p;
      Fillet swapped = *fillet;
      std::swap(swapped.leg_1_mm, swapped.leg_2_mm);
      other.preparation = swapped;
      const auto mirrored = weld_section(other);
      REQUIRE(mirrored.has_value());
      CHECK(mirrored->area_mm2 == doctest::Approx(s.area_mm2).epsilon(1e-12));
      CHECK(mirrored->throat_mm == doctest::Approx(s.throat_mm).epsilon(1e-12));
      const section::Point a = section::centroid(s);
      const section::Point b = section::centroid(*mirrored);
      CHECK(a.x_mm == doctest::Approx(-b.x_mm).epsilon(1e-9).scale(s.opening_mm));
      CHECK(a.y_mm == doctest::Approx(b.y_mm).epsilon(1e-12));
      if (fillet->bulge_mm != 0.0 || fillet->gap_mm > 0.0) return;
      // Triangle by two sides and the angle between them, and by base and height.
      const double sine = std::sin(p.between_plates.rad());
      CHECK(s.area_mm2 ==
            doctest::Approx(0.5 * fillet->leg_1_mm * fillet->leg_2_mm * sine).epsilon(1e-11));
      CHECK(s.throat_mm * s.opening_mm == doctest::Approx(2.0 * s.area_mm2).epsilon(1e-11));
    });
  }

  TEST_CASE("for any section, law: the picture lies over the root and under the cap") {
    for_random_sections("picture", [](const SectionParams&, const WeldSection& s, Random&) {
      const auto by_y = [](const section::Point& a, const section::Point& b) {
        return a.y_mm < b.y_mm;
      };
      if (s.bulge_mm > 0.0 || s.behind_area_mm2 > 0.0) return;  // beyond the triangle
      const auto lowest = std::min_element(s.outline.begin(), s.outline.end(), by_y);
      const auto highest = std::max_element(s.outline.begin(), s.outline.end(), by_y);
      CHECK(lowest->y_mm >= 0.0);
      CHECK(highest->y_mm ==
            doctest::Approx(s.height_mm + (s.cap_area_mm2 > 0.0 ? s.cap_height_mm : 0.0))
                .epsilon(1e-12));
    });
  }

  TEST_CASE("given the card, the keys are those of the command line") {
    const char* const names[] = {
        "preparation", "thickness",   "depth",     "gap",         "root-face",    "angle",
        "angle-2",     "first-face",  "depth-1",   "depth-2",     "radius",       "radius-2",
        "lower-depth", "lower-angle", "leg",       "leg-1",       "leg-2",        "throat",
        "bulge",       "reach",       "width",     "length",      "fill",         "cap-height",
        "toe-lap",     "cover",       "cover-leg", "gouge-depth", "gouge-radius", "gouge-flank"};
    const base::FigureCard& card = section::section_card();
    CHECK(card.name == "section");
    CHECK(card.unit == "mm2");
    CHECK_FALSE(card.sources.empty());
    REQUIRE(card.keys.size() == std::size(names));
    for (std::size_t i = 0; i < std::size(names); ++i) CHECK(card.keys[i].name == names[i]);
  }
}

}  // namespace seamturn::tests

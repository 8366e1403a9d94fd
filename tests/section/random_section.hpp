// SPDX-License-Identifier: MIT
// Sound sections of every preparation, made at random for the laws of the section and pass rooms.
#pragma once

#include "seamturn/base/random.hpp"
#include "seamturn/section/weld_section.hpp"

namespace seamturn::tests {

inline joint::GrooveSide random_side(base::Random& random, joint::GrooveForm form, double cut_mm) {
  using base::Angle;
  joint::GrooveSide side;
  const bool both_lean = form == joint::GrooveForm::v || form == joint::GrooveForm::compound_v;
  side.angle = Angle::deg(both_lean ? random.between(5.0, 120.0) : random.between(5.0, 60.0));
  if (form == joint::GrooveForm::v && random.below(3) == 0) {
    side.first_face = random.between(0.3, 0.7) * side.angle;  // each face below 90 deg
  }
  if (form == joint::GrooveForm::u || form == joint::GrooveForm::j) {
    side.angle = Angle::deg(random.between(2.0, 30.0));
    side.radius_mm = random.between(0.2, 0.95) * cut_mm;
  }
  if (form == joint::GrooveForm::compound_v) {
    side.lower_depth_mm = random.between(0.1, 0.9) * cut_mm;
    side.lower_angle = Angle::deg(random.between(20.0, 90.0));
  }
  return side;
}

/// A groove of any form, single or double, full or partial, with or without cap.
inline section::SectionParams random_groove(base::Random& random) {
  using joint::GrooveForm;
  section::SectionParams params;
  params.thickness_mm = random.between(5.0, 60.0);
  joint::Groove groove;
  groove.form = static_cast<GrooveForm>(random.below(6));
  groove.is_double = groove.form != GrooveForm::compound_v && random.below(2) == 0;
  groove.gap_mm = random.below(3) == 0 ? 0.0 : random.between(0.5, 6.0);
  if (groove.form == GrooveForm::square) groove.gap_mm += 0.5;
  const bool square = groove.form == GrooveForm::square;
  groove.root_face_mm =
      square || random.below(3) == 0 ? 0.0 : random.between(0.1, 0.9) * params.thickness_mm;
  const double cut_mm = params.thickness_mm - groove.root_face_mm;
  const double share = random.between(0.2, 0.8);
  const double first_mm = groove.is_double ? share * cut_mm : cut_mm;
  if (!square) groove.side_1 = random_side(random, groove.form, first_mm);
  if (groove.is_double) {
    if (!square) groove.side_2 = random_side(random, groove.form, cut_mm - first_mm);
    groove.side_1.depth_mm = first_mm;
    params.side = 1 + static_cast<int>(random.below(2));
  }
  if (random.below(3) == 0 && !square) {
    const double own_mm = params.side == 2 ? cut_mm - first_mm : first_mm;
    params.depth_mm = own_mm + random.unit() * groove.root_face_mm;
  }
  if (random.below(2) == 0) {
    params.cap = joint::Cap{random.between(0.5, 4.0), random.between(0.0, 3.0)};
  }
  params.preparation = groove;
  return params;
}

inline section::SectionParams random_fillet(base::Random& random) {
  section::SectionParams params;
  joint::Fillet fillet;
  fillet.leg_1_mm = random.between(2.0, 20.0);
  fillet.leg_2_mm =
      random.below(2) == 0 ? fillet.leg_1_mm : fillet.leg_1_mm * random.between(0.6, 1.7);
  const double shorter_mm = std::min(fillet.leg_1_mm, fillet.leg_2_mm);
  if (random.below(3) == 0) fillet.bulge_mm = random.between(-0.2, 0.25) * shorter_mm;
  if (random.below(4) == 0) {
    fillet.gap_mm = random.between(0.1, 3.0);
    fillet.reach_mm = random.below(2) == 0 ? 0.0 : random.between(0.1, 4.0);
  }
  params.preparation = fillet;
  params.between_plates = base::Angle::deg(random.between(60.0, 135.0));
  return params;
}

}  // namespace seamturn::tests

// SPDX-License-Identifier: MIT
#include "seamturn/shrinkage/cut_section.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "seamturn/base/error.hpp"
#include "seamturn/joint/bounds.hpp"
#include "seamturn/joint/inside.hpp"

namespace seamturn::shrinkage {

namespace {

using geom::Vec3;

constexpr int cells = 128;         // along each side of a rectangle
constexpr int parts = 8;           // of a cell at the border of the metal
constexpr double touch_mm = 1e-9;  // an end face this near lies in the plane

/// The plane with its own axes: side and up.
struct Frame {
  Vec3 point, across, side, up;
};

/// Rectangle in the plane, from its point.
struct Rectangle {
  double side_low = std::numeric_limits<double>::infinity();
  double side_high = -std::numeric_limits<double>::infinity();
  double up_low = std::numeric_limits<double>::infinity();
  double up_high = -std::numeric_limits<double>::infinity();

  void take(const Frame& frame, const Vec3& p_J) {
    const double side = frame.side.dot(p_J - frame.point);
    const double up = frame.up.dot(p_J - frame.point);
    side_low = std::min(side_low, side), side_high = std::max(side_high, side);
    up_low = std::min(up_low, up), up_high = std::max(up_high, up);
  }
  [[nodiscard]] bool empty() const { return !(side_high > side_low && up_high > up_low); }
};

Vec3 corner(const joint::Box& box, int which) {
  return {(which & 1) != 0 ? box.high.x() : box.low.x(),
          (which & 2) != 0 ? box.high.y() : box.low.y(),
          (which & 4) != 0 ? box.high.z() : box.low.z()};
}

/// Where the plane meets the twelve edges of the member's box.
Rectangle bounds_of(const joint::Member& member, const Frame& frame) {
  const joint::Box box = joint::box_of(member.shape);
  Rectangle rectangle;
  for (int a = 0; a < 8; ++a) {
    for (const int bit : {1, 2, 4}) {
      if ((a & bit) != 0) continue;
      const Vec3 from = member.X_JM.point(corner(box, a));
      const Vec3 to = member.X_JM.point(corner(box, a | bit));
      const double d0 = frame.across.dot(from - frame.point);
      const double d1 = frame.across.dot(to - frame.point);
      if (std::abs(d0) <= touch_mm) rectangle.take(frame, from);
      if (std::abs(d1) <= touch_mm) rectangle.take(frame, to);
      if (d0 * d1 < 0.0) rectangle.take(frame, from + (to - from) * (d0 / (d0 - d1)));
    }
  }
  return rectangle;
}

/// Sums about height 0.
struct Moments {
  double area = 0.0;
  double first = 0.0;
  double second = 0.0;
};

bool overlap(const Rectangle& a, const Rectangle& b) {
  constexpr double apart_mm = 1e-6;  // parts that only touch share no metal
  return std::min(a.side_high, b.side_high) - std::max(a.side_low, b.side_low) > apart_mm &&
         std::min(a.up_high, b.up_high) - std::max(a.up_low, b.up_low) > apart_mm;
}

/// A member with the rectangle of its cut.
struct CutMember {
  const joint::Member* member;
  Rectangle rectangle;
};

/// Whether a place of the plane belongs to a member and to none of the earlier ones.
class Metal {
 public:
  Metal(const CutMember& here, const std::vector<CutMember>& earlier, const Frame& frame)
      : member_(here.member), frame_(frame) {
    for (const CutMember& other : earlier) {
      if (overlap(here.rectangle, other.rectangle)) shared_.push_back(other.member);
    }
  }
  [[nodiscard]] bool at(double side, double up) const {
    const Vec3 p = frame_.point + up * frame_.up + side * frame_.side;
    const auto holds = [&p](const joint::Member* m) { return joint::is_inside(*m, p); };
    return holds(member_) && std::none_of(shared_.begin(), shared_.end(), holds);
  }

 private:
  const joint::Member* member_;
  std::vector<const joint::Member*> shared_;
  const Frame& frame_;
};

/// The cells of a rectangle, full where their middle is metal.
class Grid {
 public:
  Grid(const Rectangle& r, const Metal& metal)
      : wide_((r.side_high - r.side_low) / cells),
        high_((r.up_high - r.up_low) / cells),
        corner_side_(r.side_low),
        corner_up_(r.up_low),
        full_(static_cast<std::size_t>(cells) * cells) {
    for (int row = 0; row < cells; ++row) {
      for (int column = 0; column < cells; ++column) {
        full_[index(row, column)] = metal.at(side_at(column + 0.5), up_at(row + 0.5));
      }
    }
  }

  void add_to(Moments& sum, const Metal& metal) const {
    for (int row = 0; row < cells; ++row) {
      for (int column = 0; column < cells; ++column) {
        if (at_border(row, column)) {
          add_parts(row, column, metal, sum);
        } else if (full_[index(row, column)]) {
          add_cell(wide_ * high_, up_at(row + 0.5), high_, sum);
        }
      }
    }
  }

 private:
  static std::size_t index(int row, int column) {
    return static_cast<std::size_t>(row) * cells + static_cast<std::size_t>(column);
  }
  [[nodiscard]] double side_at(double column) const { return corner_side_ + column * wide_; }
  [[nodiscard]] double up_at(double row) const { return corner_up_ + row * high_; }

  /// A cell with a neighbour of another kind; round the grid there is no metal.
  [[nodiscard]] bool at_border(int row, int column) const {
    const bool full = full_[index(row, column)];
    const bool rim = row == 0 || column == 0 || row == cells - 1 || column == cells - 1;
    if (rim) return true;
    return full_[index(row - 1, column)] != full || full_[index(row + 1, column)] != full ||
           full_[index(row, column - 1)] != full || full_[index(row, column + 1)] != full;
  }
  void add_parts(int row, int column, const Metal& metal, Moments& sum) const {
    for (int i = 0; i < parts; ++i) {
      const double up = up_at(row + (i + 0.5) / parts);
      for (int k = 0; k < parts; ++k) {
        if (!metal.at(side_at(column + (k + 0.5) / parts), up)) continue;
        add_cell(wide_ * high_ / (parts * parts), up, high_ / parts, sum);
      }
    }
  }
  static void add_cell(double area, double up, double high, Moments& sum) {
    sum.area += area;
    sum.first += area * up;
    sum.second += area * (up * up + high * high / 12.0);
  }

  double wide_, high_, corner_side_, corner_up_;
  std::vector<bool> full_;
};

}  // namespace

base::Outcome<CutSection> cut_section(const std::vector<const joint::Member*>& members,
                                      const Cut& cut) {
  constexpr double square = 1e-9;
  SEAMTURN_REQUIRE(cut.point.allFinite(), cut.point.x(), cut.point.y(), cut.point.z());
  SEAMTURN_REQUIRE(std::abs(cut.across.norm() - 1.0) <= square, cut.across.norm());
  SEAMTURN_REQUIRE(std::abs(cut.up.norm() - 1.0) <= square, cut.up.norm());
  SEAMTURN_REQUIRE(std::abs(cut.up.dot(cut.across)) <= square, cut.up.dot(cut.across));
  const Frame frame{cut.point, cut.across, cut.up.cross(cut.across), cut.up};
  Moments sum;
  std::vector<CutMember> cut_members;
  for (const joint::Member* member : members) {
    SEAMTURN_REQUIRE(member != nullptr, members.size());
    const CutMember here{member, bounds_of(*member, frame)};
    if (here.rectangle.empty()) continue;
    const Metal metal(here, cut_members, frame);
    Grid(here.rectangle, metal).add_to(sum, metal);
    cut_members.push_back(here);
  }
  if (!(sum.area > 0.0)) {
    return base::Refusal{"shrinkage.section.empty",
                         "the plane across the face cuts no metal of the parts assembled; move its "
                         "point to where the parts are"};
  }
  CutSection out;
  out.area_mm2 = sum.area;
  out.centroid_mm = sum.first / sum.area;
  out.second_moment_mm4 = sum.second - sum.first * out.centroid_mm;
  return out;
}

}  // namespace seamturn::shrinkage

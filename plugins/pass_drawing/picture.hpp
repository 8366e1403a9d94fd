// SPDX-License-Identifier: MIT
// The section itself: plates, weld, beads, torch, gravity, scale, and the words in it.
#pragma once

#include "pass_drawing/drawing.hpp"
#include "pass_drawing/labels.hpp"

namespace seamturn::pass_drawing {

class Picture {
 public:
  Picture(pugi::xml_node svg, const Subject& subject, double top);
  /// Everything; the lower edge of the box.
  double draw();

 private:
  void fit(double top);
  [[nodiscard]] Box window() const;
  void include_plate_edges(Box& box, double reach) const;
  void put_plates();
  void put_other_side();
  void put_weld();
  void put_torches();
  void put_numbers();
  void put_gravity();
  void put_scale();
  void reserve_weld();
  void put_dimensions();
  void put_fillet_dimensions();
  void put_thickness();
  void put_dimension(Point from, Point to, Point aside, const std::string& words);
  [[nodiscard]] Point tail_of(const PassData& pass, double long_px) const;
  [[nodiscard]] const BeadShape* outer_bead(int layer) const;
  [[nodiscard]] Point wall_of(const BeadShape& bead) const;
  void put_layer_names();
  void put_plate_names();
  [[nodiscard]] double number_radius() const;

  pugi::xml_node svg_;
  const Subject& subject_;
  FillMap map_;
  Polygon other_;
  std::vector<BeadShape> beads_;
  UpDirection up_;
  View view_;
  Box panel_;
  Labels labels_;
};

}  // namespace seamturn::pass_drawing

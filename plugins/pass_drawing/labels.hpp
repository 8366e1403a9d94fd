// SPDX-License-Identifier: MIT
// Room for words in a picture: nothing is written over anything else.
#pragma once

#include <optional>

#include "pass_drawing/geometry.hpp"
#include "svg/svg.hpp"

namespace seamturn::pass_drawing {

class Labels {
 public:
  explicit Labels(const Box& panel) : panel_(panel) {}
  void take(const Box& box) { taken_.push_back(box); }
  void take(const Polygon& shape) { shapes_.push_back(shape); }
  /// Writes words inside a region of the page, as near as can be to a point; where, if anywhere.
  std::optional<Box> write(pugi::xml_node parent,
                           const std::string& words,
                           double letter_size,
                           const Polygon& region,
                           Point wanted);

 private:
  [[nodiscard]] bool is_free(const Box& box, const Polygon& region) const;

  Box panel_;
  std::vector<Box> taken_;
  std::vector<Polygon> shapes_;
};

}  // namespace seamturn::pass_drawing

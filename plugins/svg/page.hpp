// SPDX-License-Identifier: MIT
// A picture as one document.
#pragma once

#include <string>

#include "plan_reader/plan_reader.hpp"

namespace seamturn::svg {

/// A page with its own white paper, so that it reads on a dark screen as in print.
class Page {
 public:
  Page(double width_px, const std::string& title);
  /// Everything is put into it, top to bottom.
  [[nodiscard]] pugi::xml_node root() const { return root_; }
  /// The document, cut off below.
  [[nodiscard]] std::string text(double height_px);

 private:
  double width_px_;
  pugi::xml_document document_;
  pugi::xml_node root_;
  pugi::xml_attribute height_;
  pugi::xml_attribute view_box_;
};

}  // namespace seamturn::svg

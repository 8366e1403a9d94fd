// SPDX-License-Identifier: MIT
#include "svg/page.hpp"

namespace seamturn::svg {

using plan_reader::put;
using plan_reader::rounded;

Page::Page(double width_px, const std::string& title) : width_px_(width_px) {
  pugi::xml_node declaration = document_.append_child(pugi::node_declaration);
  put(declaration, "version", "1.0");
  put(declaration, "encoding", "UTF-8");
  root_ = document_.append_child("svg");
  put(root_, "xmlns", "http://www.w3.org/2000/svg");
  put(root_, "version", "1.1");
  put(root_, "width", rounded(width_px, 0));
  height_ = root_.append_attribute("height");
  view_box_ = root_.append_attribute("viewBox");
  put(root_, "font-family", "sans-serif");
  root_.append_child("title").text().set(title.c_str());
  pugi::xml_node paper = root_.append_child("rect");
  put(paper, "width", "100%");
  put(paper, "height", "100%");
  put(paper, "fill", "#ffffff");
}

std::string Page::text(double height_px) {
  const std::string height = rounded(height_px, 0);
  height_.set_value(height.c_str());
  view_box_.set_value(("0 0 " + rounded(width_px_, 0) + " " + height).c_str());
  return plan_reader::document_text(document_);
}

}  // namespace seamturn::svg

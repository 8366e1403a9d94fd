// SPDX-License-Identifier: MIT
#include "turn_chart/svg.hpp"

#include <algorithm>

namespace seamturn::turn_chart {

using plan_reader::put;
using plan_reader::rounded;

pugi::xml_node put_group(pugi::xml_node parent, const char* class_name) {
  pugi::xml_node node = parent.append_child("g");
  put(node, "class", class_name);
  return node;
}

pugi::xml_node put_bar(
    pugi::xml_node parent, double x, double y, double width, double height, const char* fill) {
  pugi::xml_node node = parent.append_child("rect");
  put(node, "x", rounded(x, 1));
  put(node, "y", rounded(y, 1));
  put(node, "width", rounded(width, 1));
  put(node, "height", rounded(height, 1));
  if (fill != nullptr) put(node, "fill", fill);
  return node;
}

void put_rule(
    pugi::xml_node parent, double x1, double y1, double x2, double y2, const char* colour) {
  pugi::xml_node node = parent.append_child("line");
  put(node, "x1", rounded(x1, 2));
  put(node, "y1", rounded(y1, 1));
  put(node, "x2", rounded(x2, 2));
  put(node, "y2", rounded(y2, 1));
  put(node, "stroke", colour);
  put(node, "stroke-width", "0.6");
}

pugi::xml_node put_words(pugi::xml_node parent,
                         double x,
                         double y,
                         const std::string& words,
                         double size,
                         const char* anchor) {
  pugi::xml_node node = parent.append_child("text");
  put(node, "x", rounded(x, 1));
  put(node, "y", rounded(y, 1));
  put(node, "font-size", rounded(size, 1));
  if (std::string(anchor) != "start") put(node, "text-anchor", anchor);
  node.text().set(words.c_str());
  return node;
}

double words_width(const std::string& words, double size) {
  // Letters, not bytes: a byte that goes on a letter does not count.
  const auto letters = std::count_if(words.begin(), words.end(), [](char byte) {
    return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U;
  });
  return 0.62 * size * static_cast<double>(letters);
}

}  // namespace seamturn::turn_chart

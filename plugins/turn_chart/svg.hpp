// SPDX-License-Identifier: MIT
// The few elements of plain SVG 1.1 a chart needs: presentation attributes only.
#pragma once

#include <string>

#include "plan_reader/plan_reader.hpp"

namespace seamturn::turn_chart {

pugi::xml_node put_group(pugi::xml_node parent, const char* class_name);
pugi::xml_node put_bar(
    pugi::xml_node parent, double x, double y, double width, double height, const char* fill);
void put_rule(
    pugi::xml_node parent, double x1, double y1, double x2, double y2, const char* colour);
pugi::xml_node put_words(pugi::xml_node parent,
                         double x,
                         double y,
                         const std::string& words,
                         double size,
                         const char* anchor = "start");
/// About how wide a line of text is: 0.62 of its size a letter.
[[nodiscard]] double words_width(const std::string& words, double size);

}  // namespace seamturn::turn_chart

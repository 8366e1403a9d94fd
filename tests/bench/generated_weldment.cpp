// SPDX-License-Identifier: MIT
#include "bench/generated_weldment.hpp"

#include <fstream>

#include "seamturn/base/number_text.hpp"

namespace seamturn::tests {

namespace {

constexpr int rows = 8;
constexpr double pitch_mm = 200.0;
constexpr double half_plate_mm = 10.0;
constexpr double rib_mm = 15.0;
constexpr double rib_length_mm = 150.0;
constexpr double rib_height_mm = 80.0;
constexpr double clear_mm = 5.0;  ///< of the rib's ends
constexpr const char* analysis =
    "    <analysis c=\"0.16\" si=\"0.31\" mn=\"1.46\" p=\"0.013\" s=\"0.004\" cr=\"0.05\" "
    "mo=\"0.01\" ni=\"0.05\" cu=\"0.04\" nb=\"0.02\"/>\n";

std::string point(double x, double y, double z) {
  const auto text = [](double value) { return base::shortest_text(value); };
  return text(x) + " " + text(y) + " " + text(z) + " mm";
}

struct Rib {
  int number;
  double x_mm, y_mm;
  bool across;  ///< stands along y
  bool below;   ///< on the lower side of the plate
};

std::string member_of(const Rib& rib) {
  const double z_mm = rib.below ? -half_plate_mm - rib_height_mm : half_plate_mm;
  const double along = rib_length_mm / 2.0;
  const double over = rib_mm / 2.0;
  const std::string at = rib.across ? point(rib.x_mm - over, rib.y_mm - along, z_mm)
                                    : point(rib.x_mm - along, rib.y_mm - over, z_mm);
  return "  <plate id=\"rib_" + std::to_string(rib.number) +
         "\" steel=\"S355J2\" thickness=\"15 mm\" size=\"150 x 80 mm\" at=\"" + at + "\" stand=\"" +
         (rib.across ? "x" : "y") + "\">\n" + analysis + "  </plate>\n";
}

std::string joint_of(const Rib& rib) {
  const double z_mm = rib.below ? -half_plate_mm : half_plate_mm;
  const double along = rib_length_mm / 2.0 - clear_mm;
  const double over = rib_mm / 2.0;
  const auto line = [&](double side, double from) {
    const auto end = [&](double at) {
      return rib.across ? point(rib.x_mm + side, rib.y_mm + at, z_mm)
                        : point(rib.x_mm + at, rib.y_mm + side, z_mm);
    };
    return "    <line from=\"" + end(from) + "\" to=\"" + end(-from) + "\"/>\n";
  };
  return "  <joint id=\"J" + std::to_string(rib.number) + "\" type=\"tee\" members=\"base rib_" +
         std::to_string(rib.number) + "\" quality=\"C\">\n    <fillet throat=\"8 mm\"/>\n" +
         line(over, -along) + line(-over, along) + "  </joint>\n";
}

}  // namespace

std::string generated_weldment(int seams) {
  const int ribs = seams / 2;
  const int above = (ribs + 1) / 2;
  const int columns = (above + rows - 1) / rows;
  const double width_mm = rows * pitch_mm;
  std::string members;
  std::string joints;
  for (int k = 0; k < ribs; ++k) {
    const int place = k < above ? k : k - above;
    const int column = place / rows;
    const int row = place % rows;
    const Rib rib{k + 1,
                  (column + 0.5) * pitch_mm,
                  (row + 0.5) * pitch_mm - width_mm / 2.0,
                  (column + row) % 2 == 1,
                  k >= above};
    members += member_of(rib);
    joints += joint_of(rib);
  }
  return "<weldment xmlns=\"urn:seamturn:weldment:1\" schema=\"1.0\" title=\"Generated plate of " +
         std::to_string(seams) +
         " seams\" revision=\"A\" author=\"bench\" date=\"2026-11-26\" invented=\"yes\" "
         "wire=\"G3Si1-1.2\" ambient=\"15 degC\">\n"
         "  <use library=\"library/standards.xml\"/>\n  <use library=\"library/shop.xml\"/>\n"
         "  <use cell=\"cells/headstock.xml\"/>\n"
         "  <plate id=\"base\" steel=\"S355J2\" thickness=\"20 mm\" size=\"" +
         base::shortest_text(columns * pitch_mm) + " x " + base::shortest_text(width_mm) +
         " mm\" at=\"" + point(0.0, -width_mm / 2.0, -half_plate_mm) + "\" z-quality=\"Z25\">\n" +
         analysis + "  </plate>\n" + members +
         "  <setup id=\"between_centres\" part-at=\"740 0 0 mm\">\n"
         "    <fixture mass=\"180 kg\" centre=\"350 0 0 mm\" size=\"700 x 300 x 300 mm\"/>\n"
         "  </setup>\n" +
         joints + "  <batch parts=\"1\"/>\n</weldment>\n";
}

std::filesystem::path write_generated_weldment(int seams,
                                               const std::filesystem::path& joints,
                                               const std::filesystem::path& folder) {
  namespace fs = std::filesystem;
  fs::create_directories(folder);
  for (const char* name : {"library", "cells"}) {
    if (!fs::exists(folder / name)) fs::create_directory_symlink(joints / name, folder / name);
  }
  const fs::path file = folder / ("generated_" + std::to_string(seams) + ".xml");
  std::ofstream(file, std::ios::binary) << generated_weldment(seams);
  return file;
}

}  // namespace seamturn::tests

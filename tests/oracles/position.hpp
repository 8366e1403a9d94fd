// SPDX-License-Identifier: MIT
// Welds and the positions they lie in.
#pragma once

#include "oracle.hpp"
#include "seamturn/process/weld_position.hpp"

namespace seamturn::tests::oracles {

using process::WeldFamily;
using process::WeldPosition;

struct PositionRow {
  int number;
  WeldFamily family;
  double axis[3];
  double normal[3];
  double slope_deg;
  double bank_size_deg;  ///< without sign; `none` where the axis stands upright
  WeldPosition iso;
  const char* aws;
};
inline constexpr double none = -1.0;

// computed: by hand from the production ranges of ISO 6947 tables 1 and 2 and the AWS D1.1 diagrams
// as remembered (docs/methods/position.md). The ranges are not confirmed in the documents, so these
// rows show that the classifier follows the ranges, not that the ranges are right. Directions carry
// four decimals: slope and bank agree within 0.01 degree.
inline constexpr PositionRow position_rows[] = {
    {1, WeldFamily::groove, {1.0, 0.0, 0.0}, {0.0, 0.0, 1.0}, 0.0, 0.0, WeldPosition::pa, "1G"},
    {2,
     WeldFamily::groove,
     {0.9848, 0.0, 0.1736},
     {-0.1632, 0.3420, 0.9254},
     10.0,
     20.0,
     WeldPosition::pa,
     "1G"},
    {3, WeldFamily::groove, {1.0, 0.0, 0.0}, {0.0, 1.0, 0.0}, 0.0, 90.0, WeldPosition::pc, "2G"},
    {4,
     WeldFamily::groove,
     {0.9962, 0.0, 0.0872},
     {-0.0714, 0.5736, 0.8160},
     5.0,
     35.0,
     WeldPosition::pc,
     "2G"},
    {5,
     WeldFamily::groove,
     {1.0, 0.0, 0.0},
     {0.0, 0.9903, -0.1392},
     0.0,
     98.0,
     WeldPosition::pc,
     "2G"},
    {6,
     WeldFamily::groove,
     {1.0, 0.0, 0.0},
     {0.0, 0.9659, -0.2588},
     0.0,
     105.0,
     WeldPosition::pe,
     "4G"},
    {7, WeldFamily::groove, {1.0, 0.0, 0.0}, {0.0, 0.0, -1.0}, 0.0, 180.0, WeldPosition::pe, "4G"},
    {8,
     WeldFamily::groove,
     {0.5, 0.0, 0.8660},
     {0.8660, 0.0, -0.5},
     60.0,
     180.0,
     WeldPosition::pe,
     "4G"},
    {9, WeldFamily::groove, {0.0, 0.0, 1.0}, {-1.0, 0.0, 0.0}, 90.0, none, WeldPosition::pf, "3G"},
    {10,
     WeldFamily::groove,
     {0.0, 0.0, -1.0},
     {-1.0, 0.0, 0.0},
     -90.0,
     none,
     WeldPosition::pg,
     "3G"},
    {11,
     WeldFamily::groove,
     {0.9063, 0.0, 0.4226},
     {-0.3971, 0.3420, 0.8517},
     25.0,
     20.0,
     WeldPosition::pf,
     "3G"},
    {12,
     WeldFamily::groove,
     {-0.9063, 0.0, -0.4226},
     {-0.3971, 0.3420, 0.8517},
     -25.0,
     20.0,
     WeldPosition::pg,
     "3G"},
    {13,
     WeldFamily::groove,
     {0.7660, 0.0, 0.6428},
     {0.3214, 0.8660, -0.3830},
     40.0,
     120.0,
     WeldPosition::pe,
     "4G"},
    {14,
     WeldFamily::groove,
     {0.0872, 0.0, 0.9962},
     {0.9811, 0.1736, -0.0858},
     85.0,
     170.0,
     WeldPosition::pf,
     "3G"},
    {15, WeldFamily::fillet, {1.0, 0.0, 0.0}, {0.0, 0.0, 1.0}, 0.0, 0.0, WeldPosition::pa, "1F"},
    {16,
     WeldFamily::fillet,
     {0.9848, 0.0, 0.1736},
     {-0.1574, 0.4226, 0.8925},
     10.0,
     25.0,
     WeldPosition::pa,
     "1F"},
    {17,
     WeldFamily::fillet,
     {1.0, 0.0, 0.0},
     {0.0, 0.7071, 0.7071},
     0.0,
     45.0,
     WeldPosition::pb,
     "2F"},
    {18,
     WeldFamily::fillet,
     {1.0, 0.0, 0.0},
     {0.0, 0.7880, 0.6157},
     0.0,
     52.0,
     WeldPosition::pb,
     "2F"},
    {19,
     WeldFamily::fillet,
     {1.0, 0.0, 0.0},
     {0.0, 0.8660, 0.5},
     0.0,
     60.0,
     WeldPosition::pc,
     "4F"},
    {20, WeldFamily::fillet, {1.0, 0.0, 0.0}, {0.0, 1.0, 0.0}, 0.0, 90.0, WeldPosition::pc, "4F"},
    {21,
     WeldFamily::fillet,
     {1.0, 0.0, 0.0},
     {0.0, 0.7071, -0.7071},
     0.0,
     135.0,
     WeldPosition::pd,
     "4F"},
    {22,
     WeldFamily::fillet,
     {1.0, 0.0, 0.0},
     {0.0, 0.5, -0.8660},
     0.0,
     150.0,
     WeldPosition::pe,
     "4F"},
    {23, WeldFamily::fillet, {1.0, 0.0, 0.0}, {0.0, 0.0, -1.0}, 0.0, 180.0, WeldPosition::pe, "4F"},
    {24,
     WeldFamily::fillet,
     {0.0, 0.0, 1.0},
     {-0.7071, 0.7071, 0.0},
     90.0,
     none,
     WeldPosition::pf,
     "3F"},
    {25,
     WeldFamily::fillet,
     {0.0, 0.0, -1.0},
     {-0.7071, 0.7071, 0.0},
     -90.0,
     none,
     WeldPosition::pg,
     "3F"},
    {26,
     WeldFamily::fillet,
     {0.8660, 0.0, 0.5},
     {-0.3536, 0.7071, 0.6124},
     30.0,
     45.0,
     WeldPosition::pf,
     "3F"},
    {27,
     WeldFamily::fillet,
     {0.8660, 0.0, 0.5},
     {-0.1710, 0.9397, 0.2962},
     30.0,
     70.0,
     WeldPosition::pf,
     "4F"},
    {28,
     WeldFamily::fillet,
     {0.7071, 0.0, 0.7071},
     {0.5, 0.7071, -0.5},
     45.0,
     135.0,
     WeldPosition::pd,
     "4F"},
    {29,
     WeldFamily::fillet,
     {-0.9397, 0.0, -0.3420},
     {-0.2418, 0.7071, 0.6645},
     -20.0,
     45.0,
     WeldPosition::pg,
     "3F"},
    {30,
     WeldFamily::fillet,
     {-0.1392, 0.0, -0.9903},
     {0.9305, 0.3420, -0.1308},
     -82.0,
     160.0,
     WeldPosition::pg,
     "3F"},
};

/// A decision published in the terms of the AWS diagrams: inclination of the axis and rotation of
/// the face (0 = face down).
struct PublishedPosition {
  double inclination_deg;
  double face_rotation_deg;
  const char* aws;
  WeldPosition uphill;
  WeldPosition downhill;
  const char* source;
};
// published: the AWS letter or position of a groove; ISO codes follow from 1G = PA, 3G = PF or PG.
inline constexpr PublishedPosition published_grooves[] = {
    {10.0, 200.0, "1G", WeldPosition::pa, WeldPosition::pa, "FORUM-3G, worked reading"},
    {25.0, 200.0, "3G", WeldPosition::pf, WeldPosition::pg, "FORUM-3G, worked reading"},
    {85.0, 350.0, "3G", WeldPosition::pf, WeldPosition::pg, "AWS D3.6, notes of figure 5.1, row E"},
    {40.0, 85.0, "3G", WeldPosition::pf, WeldPosition::pg, "AWS D3.6, notes of figure 5.1, row D"},
};

/// A place on a border, or just beside one: slope, bank, codes for fillet and groove.
struct BorderRow {
  double slope_deg;
  double bank_deg;
  WeldPosition fillet;
  WeldPosition groove;
  const char* fillet_aws;
  const char* groove_aws;
};
// computed: from the same remembered ranges; a border belongs to the easier row (our decision).
inline constexpr BorderRow border_rows[] = {
    {15, 30, WeldPosition::pa, WeldPosition::pa, "1F", "1G"},
    {0, 45, WeldPosition::pb, WeldPosition::pc, "2F", "2G"},
    {0, 55, WeldPosition::pb, WeldPosition::pc, "2F", "2G"},
    {0, 56, WeldPosition::pc, WeldPosition::pc, "4F", "2G"},
    {0, 100, WeldPosition::pc, WeldPosition::pc, "4F", "2G"},
    {0, 101, WeldPosition::pd, WeldPosition::pe, "4F", "4G"},
    {0, 145, WeldPosition::pd, WeldPosition::pe, "4F", "4G"},
    {0, 145.001, WeldPosition::pe, WeldPosition::pe, "4F", "4G"},
    {16, 0, WeldPosition::pf, WeldPosition::pf, "3F", "3G"},
    {15.001, 0, WeldPosition::pf, WeldPosition::pf, "3F", "3G"},
    {0, 30.001, WeldPosition::pb, WeldPosition::pc, "2F", "2G"},
    {80, 100, WeldPosition::pf, WeldPosition::pf, "4F", "3G"},
    {80, 101, WeldPosition::pd, WeldPosition::pe, "4F", "4G"},
    {80.001, 101, WeldPosition::pf, WeldPosition::pf, "3F", "3G"},
    {81, 150, WeldPosition::pf, WeldPosition::pf, "3F", "3G"},
    {22, 36, WeldPosition::pf, WeldPosition::pf, "3F", "3G"},
};

}  // namespace seamturn::tests::oracles

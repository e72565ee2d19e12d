// DXF in: points, strings and surfaces from drawings, exactly or not at all.
#include "formats/dxf_read.h"

#include <gtest/gtest.h>

#include <cmath>

#include "formats/dxf_write.h"
#include "refusal_text.h"
#include "shared_data.h"
#include "unit/formats/text_file.h"

namespace squaredig::formats {
namespace {

using squaredig::testing::refusal_text;
using squaredig::testing::text_file;

// "0 POINT 8 GL" and so on: words become lines, a section of entities round them.
std::string lines_of(const std::string& words) {
  std::string text;
  for (const char c : words) text += c == ' ' ? '\n' : c;
  return text + "\n";
}
std::string drawing(const std::string& entities, const std::string& units = "6") {
  return lines_of("0 SECTION 2 HEADER 9 $DWGCODEPAGE 3 ANSI_1252 9 $INSUNITS 70 " + units +
                  " 0 ENDSEC 0 SECTION 2 ENTITIES " + entities + " 0 ENDSEC 0 EOF");
}
SourceFile file_of(const std::string& entities, const std::string& units = "6") {
  return text_file(drawing(entities, units), "d.dxf");
}
std::string point_faults(const std::string& entities, const std::string& units = "6") {
  return refusal_text([&] { read_dxf_points(file_of(entities, units)); });
}
std::string string_faults(const std::string& entities) {
  return refusal_text([&] { read_dxf_strings(file_of(entities), Heights::Needed); });
}
std::string surface_faults(const std::string& entities) {
  return refusal_text([&] { read_dxf_surface(file_of(entities)); });
}

TEST(DxfRead, PointsWithTheirLayersAsCodesAndTextsAsLabels) {
  SourceFile source = file_of(
      "0 POINT 8 GL 10 715830.25 20 734697.6 30 62.35 0 TEXT 8 NAMES 10 715830.25 20 734697.6 1 "
      "G1%%d\\U+00E9^^J 0 POINT 8 TREE 10 1 20 2 30 3 0 POINT 8 GL 10 4 20 5 30 6 0 ARC 8 GL 10 1");
  const auto all = read_dxf_points(source);
  ASSERT_EQ(all.points.size(), 3U);
  EXPECT_EQ(all.points.points[0].at, grid_position(715830.25, 734697.6, 62.35));
  EXPECT_EQ(all.points.label(0), "G1\u00B0\u00E9^^J");
  EXPECT_EQ(all.points.label(1), "");
  EXPECT_EQ(all.points.code(1), "TREE");
  EXPECT_EQ(all.points.points[1].line, 40U);
  EXPECT_EQ(all.cautions, (std::vector<std::string>{"d.dxf: not used: 1 \"ARC\""}));
  source.codes = {"GL"};
  const auto ground = read_dxf_points(source);
  EXPECT_EQ(ground.points.size(), 2U);
  EXPECT_EQ(ground.record.read, 3U);
  EXPECT_EQ(ground.record.set_aside,
            (std::vector<SetAside>{{40, "code \"TREE\" is not asked for"}}));
  source.codes = {};
  source.layer = "TREE";
  EXPECT_EQ(read_dxf_points(source).record.read, 1U);
  source.layer = "KERB";
  EXPECT_EQ(refusal_text([&] { read_dxf_points(source); }),
            "d.dxf:1:1: layers \"GL\", \"TREE\"; a layer \"KERB\"; correct the layer's name in the "
            "job\n");
}

TEST(DxfRead, ANumberIsWhollyANumberOrAFault_dxf_read_2) {
  EXPECT_EQ(point_faults("0 POINT 8 P 10 1,5 20 abc 30 1e400 0 POINT 8 P 10 0x10 20 nan 30 3"),
            "d.dxf:24:1: \"1,5\" as group 10 of POINT; a number with a decimal point; "
            "correct it or export it again\n"
            "d.dxf:26:1: \"abc\" as group 20 of POINT; a number with a decimal point; "
            "correct it or export it again\n"
            "d.dxf:28:1: \"1e400\" as group 30 of POINT; a number with a decimal point; "
            "correct it or export it again\n"
            "d.dxf:34:1: \"0x10\" as group 10 of POINT; a number with a decimal point; "
            "correct it or export it again\n"
            "d.dxf:36:1: \"nan\" as group 20 of POINT; a number with a decimal point; "
            "correct it or export it again\n");
}

TEST(DxfRead, TheUnitOfTheDrawing) {
  const std::string point = "0 POINT 8 P 10 10 20 20 30 30";
  const auto feet = read_dxf_points(file_of(point, "2"));
  EXPECT_EQ(feet.points.points[0].at, grid_position(10 * 0.3048, 20 * 0.3048, 30 * 0.3048));
  EXPECT_EQ(feet.assumed,
            (std::vector<std::string>{"d.dxf: lengths are taken in ft, as $INSUNITS 2 says"}));
  EXPECT_EQ(read_dxf_points(file_of(point, "21")).points.points[0].at.height.in_metres(),
            30 * (1200.0 / 3937.0));
  EXPECT_TRUE(read_dxf_points(file_of(point, "6")).assumed.empty());
  EXPECT_EQ(read_dxf_points(file_of(point, "0")).assumed,
            (std::vector<std::string>{"d.dxf: the file has no units; its lengths are taken in m"}));
  EXPECT_EQ(point_faults(point, "4"),
            "d.dxf:12:1: $INSUNITS 4, which no survey is in; 6 (metre), 2 (foot), 21 (US survey "
            "foot) or 0 (none); correct it, or state the unit in the job: { file = \"...\", units "
            "= \"m\" }\n");
  SourceFile meant = file_of(point, "4");
  meant.unit = LengthUnit::Metre;
  EXPECT_EQ(read_dxf_points(meant).points.points[0].at, grid_position(10, 20, 30));
  EXPECT_EQ(read_dxf_points(meant).cautions,
            (std::vector<std::string>{"d.dxf: lengths are taken in m as the job states, although "
                                      "$INSUNITS 4 stands in the file"}));
  SourceFile stated = file_of(point, "6");
  stated.unit = LengthUnit::UsSurveyFoot;
  EXPECT_EQ(refusal_text([&] { read_dxf_points(stated); }),
            "d.dxf:12:1: lengths in m; us-ft as the job states; correct units in the job, or the "
            "file\n");
}

TEST(DxfRead, APointWithoutHeightIsRefusedWhereHeightsAreNeeded) {
  EXPECT_EQ(point_faults("0 POINT 8 P 10 10 20 20"),
            "d.dxf:20:1: a point without height; easting, northing and height; export the points "
            "with their heights\n");
  PointsWanted wanted;
  wanted.heights = Heights::Optional;
  EXPECT_FALSE(
      read_dxf_points(file_of("0 POINT 8 P 10 10 20 20"), wanted).points.points[0].has_height);
  EXPECT_EQ(read_dxf_points(file_of("0 POINT 8 P 10 1 20 2 30 0 0 POINT 8 P 10 3 20 4 30 0 0 "
                                    "POINT 8 P 10 5 20 6 30 0"))
                .cautions,
            (std::vector<std::string>{"d.dxf: every height is 0"}));
}

TEST(DxfRead, FilesThatAreCutOffOrNoDrawings) {
  const auto faults = [](const std::string& bytes) {
    return refusal_text([&] { read_dxf_points(text_file(bytes, "d.dxf")); });
  };
  const std::string good = drawing("0 POINT 8 P 10 1 20 2 30 3");
  for (std::size_t size = 0; size < good.size() - 4; ++size)
    EXPECT_NE(faults(good.substr(0, size)), "") << size;
  EXPECT_EQ(faults(good), "");
  EXPECT_EQ(faults("AC\x1a"),
            "d.dxf:1:1: the group code \"AC?\"; a whole number; export the "
            "drawing again as DXF in text form\n");
  EXPECT_EQ(faults(std::string("AC\x1a\0 ", 5)),
            "d.dxf:1:1: a zero byte: a binary drawing; a drawing in text form; export the drawing "
            "again as DXF in text form\n");
  EXPECT_NE(faults(std::string("0\nSEC\0TION\n", 11)).find("a zero byte: a binary drawing"),
            std::string::npos);
  EXPECT_NE(faults(std::string(70000, '7')).find("a line of more than 64 KiB"), std::string::npos);
  EXPECT_EQ(point_faults("0 VERTEX 10 1"),
            "d.dxf:20:1: \"VERTEX\" outside a POLYLINE; the entity it belongs to; export it "
            "again\n");
  EXPECT_EQ(point_faults("0 POINT 8 P 10 1 10 2 20 2 30 3"),
            "d.dxf:26:1: group 10 of POINT twice; each group once; export it again\n");
}

TEST(DxfRead, BlocksAndPaperSpaceAreNoPartOfTheGround) {
  const std::string bytes = lines_of(
      "0 SECTION 2 BLOCKS 0 BLOCK 2 B 0 POINT 8 P 10 1 20 1 30 1 0 ENDBLK 0 ENDSEC 0 SECTION 2 "
      "ENTITIES 0 POINT 8 P 67 1 10 2 20 2 30 2 0 POINT 8 P 10 3 20 3 30 3 0 INSERT 8 P 66 1 2 B "
      "10 9 20 9 0 ATTRIB 8 P 1 x 0 SEQEND 0 ENDSEC 0 EOF");
  const auto read = read_dxf_points(text_file(bytes, "d.dxf"));
  ASSERT_EQ(read.points.size(), 1U);
  EXPECT_EQ(read.points.points[0].at, grid_position(3, 3, 3));
  EXPECT_EQ(read.cautions,
            (std::vector<std::string>{"d.dxf: not used: 1 \"INSERT\", 1 \"POINT in paper space\"; "
                                      "what lies in blocks is not read"}));
}

// A drawing whose survey lies in blocks alone is never an empty one: it is refused by what it has.
TEST(DxfRead, ASurveyInBlocksAloneIsRefusedInWords) {
  const std::string bytes = lines_of(
      "0 SECTION 2 BLOCKS 0 BLOCK 2 B 0 POINT 8 P 10 1 20 1 30 1 0 LINE 8 P 10 1 20 1 30 1 11 2 21 "
      "2 31 2 0 ENDBLK 0 ENDSEC 0 SECTION 2 ENTITIES 0 INSERT 8 P 2 B 10 9 20 9 30 9 0 INSERT 8 P "
      "66 1 2 B 10 8 20 8 30 8 0 ATTRIB 8 P 1 62.5 0 SEQEND 0 MTEXT 8 P 1 G1 0 ENDSEC 0 EOF");
  const SourceFile source = text_file(bytes, "d.dxf");
  const std::string instead = "; explode its blocks, as what lies in them is not read\n";
  EXPECT_EQ(refusal_text([&] { read_dxf_points(source); }),
            "d.dxf:1:1: no POINT, but 2 \"INSERT\", 1 \"MTEXT\"; points as POINT" + instead);
  EXPECT_EQ(refusal_text([&] { read_dxf_strings(source, Heights::Needed); }),
            "d.dxf:1:1: no LINE and no polyline, but 2 \"INSERT\", 1 \"MTEXT\"; strings as LINE, "
            "POLYLINE or LWPOLYLINE" +
                instead);
  EXPECT_EQ(refusal_text([&] { read_dxf_surface(source); }),
            "d.dxf:1:1: no 3DFACE and no polyface, but 2 \"INSERT\", 1 \"MTEXT\"; a surface of "
            "triangles as 3DFACE" +
                instead);
}

TEST(DxfRead, LinesAndPolylinesAreStrings_string_intake_1) {
  const auto file = read_dxf_strings(
      file_of("0 LINE 8 KERB 10 0 20 0 30 1 11 5 21 0 31 2 0 POLYLINE 8 TOP 70 8 0 VERTEX 10 0 20 "
              "0 30 1 70 32 0 VERTEX 10 5 20 0 30 2 70 32 0 SEQEND 0 POLYLINE 8 KERB 70 1 10 0 20 "
              "0 30 7 0 VERTEX 10 0 20 0 30 9 0 VERTEX 10 5 20 0 0 VERTEX 10 5 20 5 0 SEQEND 0 "
              "LWPOLYLINE 8 C 90 2 70 0 38 12.5 10 1 20 2 10 3 20 4"),
      Heights::Needed);
  ASSERT_EQ(file.strings.size(), 4U);
  EXPECT_EQ(file.strings[0].name, "KERB 1");
  EXPECT_EQ(file.strings[0].vertices[1].at, grid_position(5, 0, 2));
  EXPECT_EQ(file.strings[1].name, "TOP");
  EXPECT_EQ(file.strings[1].vertices[1].at, grid_position(5, 0, 2));
  EXPECT_EQ(file.strings[2].name, "KERB 2");  // flat: the height is the whole polyline's
  ASSERT_EQ(file.strings[2].vertices.size(), 4U);
  EXPECT_EQ(file.strings[2].vertices[0].at, grid_position(0, 0, 7));
  EXPECT_EQ(file.strings[2].vertices[3].at, file.strings[2].vertices[0].at);
  EXPECT_EQ(file.strings[3].vertices[1].at, grid_position(3, 4, 12.5));
  EXPECT_EQ(file.record.read, 9U);
}

TEST(DxfRead, StringsThatCannotBe) {
  EXPECT_EQ(string_faults("0 LWPOLYLINE 8 C 90 2 38 1 10 1 20 2 42 0.5 10 3 20 4"),
            "d.dxf:28:1: a curved LWPOLYLINE on layer \"C\"; straight segments; turn curves into "
            "short segments and export it again\n");
  EXPECT_EQ(string_faults("0 LWPOLYLINE 8 C 90 2 38 1 230 -1 10 1 20 2 10 3 20 4"),
            "d.dxf:20:1: LWPOLYLINE in a tilted plane on layer \"C\"; the plane of easting and "
            "northing; export it as a polyline in space\n");
  EXPECT_EQ(string_faults("0 LWPOLYLINE 8 C 90 3 38 1 10 1 20 2 10 3 20 4"),
            "d.dxf:20:1: 2 vertices in an LWPOLYLINE; as many as its group 90 counts; export it "
            "again\n");
  EXPECT_EQ(string_faults("0 LWPOLYLINE 8 C 90 2 10 1 20 2 10 3 20 4").substr(0, 53),
            "d.dxf:26:1: a vertex without height, of string \"C\"; e");
  EXPECT_EQ(string_faults("0 POLYLINE 8 C 70 4 0 VERTEX 10 1 20 1 0 SEQEND"),
            "d.dxf:20:1: a curved POLYLINE on layer \"C\"; straight segments; turn curves into "
            "short segments and export it again\n");
  EXPECT_EQ(string_faults("0 POLYLINE 8 C 70 8 0 VERTEX 10 1 20 1 30 1 0 SEQEND"),
            "d.dxf:20:1: string \"C\" has a single vertex; two vertices or more; add the others or "
            "take it out\n");
  EXPECT_EQ(string_faults("0 POLYLINE 8 C 70 8 0 VERTEX 10 1 20 1 30 1 0 POINT 8 C"),
            "d.dxf:34:1: \"POINT\" in a POLYLINE; SEQEND; export it again\n");
  EXPECT_EQ(string_faults("0 POINT 8 C 10 1 20 1 30 1"),
            "d.dxf:1:1: no LINE and no polyline, but 1 \"POINT\"; strings as LINE, POLYLINE or "
            "LWPOLYLINE; export "
            "them as these\n");
}

TEST(DxfRead, FacesShareTheirCorners) {
  const auto file = read_dxf_surface(file_of(
      "0 3DFACE 8 TIN 10 0 20 0 30 1 11 10 21 0 31 1 12 10 22 10 32 2 13 10 23 10 33 2 0 3DFACE 8 "
      "TIN 10 0 20 0 30 1 11 10 21 10 31 2 12 0 22 10 32 2 0 3DFACE 8 TIN 10 0 20 0 30 1 11 0 21 "
      "0 31 1 12 5 22 5 32 1 13 5 23 5 33 1"));
  EXPECT_EQ(file.mesh.vertices.size(), 4U);
  EXPECT_EQ(file.mesh.faces, (std::vector<std::array<std::int32_t, 3>>{{0, 1, 2}, {0, 2, 3}}));
  EXPECT_EQ(file.record.read, 3U);
  EXPECT_EQ(file.record.used, 2U);
  EXPECT_EQ(file.record.set_aside,
            (std::vector<SetAside>{{70, "the face has no area: two corners at most"}}));
}

TEST(DxfRead, FacesOfFourCornersInOnePlaneOnly) {
  const auto quad = [](const std::string& last) {
    return "0 3DFACE 8 T 10 0 20 0 30 1 11 10 21 0 31 2 12 10 22 10 32 3 " + last;
  };
  const auto file = read_dxf_surface(file_of(quad("13 0 23 10 33 2")));
  EXPECT_EQ(file.mesh.faces.size(), 2U);
  EXPECT_EQ(file.cautions, (std::vector<std::string>{
                               "d.dxf: 1 faces of four corners in one plane are taken as two "
                               "triangles each"}));
  EXPECT_EQ(read_dxf_surface(file_of(quad("13 0 23 10 33 2.001"))).mesh.faces.size(), 2U);
  EXPECT_EQ(surface_faults(quad("13 0 23 10 33 2.0012")),
            "d.dxf:20:1: a face of four corners, the last 1.2 mm out of plane; triangles: either "
            "diagonal could be meant; export the surface as triangles\n");
  EXPECT_EQ(surface_faults(quad("13 9 23 1 33 2")),
            "d.dxf:20:1: a face of four corners that is folded in plan; triangles; export the "
            "surface as triangles\n");
  EXPECT_EQ(surface_faults(quad("13 0 23 10")),
            "d.dxf:20:1: a 3DFACE whose corner 4 is not whole; easting, northing and height of "
            "each corner; export it again\n");
}

TEST(DxfRead, PolyfaceMeshes) {
  const std::string corners =
      "0 POLYLINE 8 PF 70 64 0 VERTEX 70 192 10 0 20 0 30 1 0 VERTEX 70 192 10 10 20 0 30 2 0 "
      "VERTEX 70 192 10 10 20 10 30 3 ";
  const auto file = read_dxf_surface(
      file_of(corners + "0 VERTEX 70 128 10 0 20 0 30 0 71 1 72 2 73 -3 0 SEQEND"));
  EXPECT_EQ(file.mesh.vertices.size(), 3U);
  EXPECT_EQ(file.mesh.faces, (std::vector<std::array<std::int32_t, 3>>{{0, 1, 2}}));
  EXPECT_EQ(surface_faults(corners + "0 VERTEX 70 128 71 1 72 2 73 4 0 SEQEND"),
            "d.dxf:56:1: vertex 4 of a polyface of 3; the number of one of its vertices; export it "
            "again\n");
  EXPECT_EQ(surface_faults(corners + "0 VERTEX 70 128 71 1 72 2 0 SEQEND"),
            "d.dxf:56:1: a face of 2 corners; three or four; export it again\n");
  EXPECT_EQ(surface_faults("0 POLYLINE 8 PF 70 16 0 SEQEND"),
            "d.dxf:20:1: a mesh of rows and columns; 3DFACE or polyface; export the surface as "
            "3DFACE\n");
  EXPECT_EQ(surface_faults("0 POINT 8 P 10 1 20 1 30 1"),
            "d.dxf:1:1: no 3DFACE and no polyface, but 1 \"POINT\"; a surface of triangles as "
            "3DFACE; export them "
            "as these\n");
}

TEST(DxfRead, TextInTheDrawingsCodePage) {
  const auto with_layer = [](const std::string& layer, const std::string& page) {
    return refusal_text([&] {
      SourceFile source = text_file(lines_of("0 SECTION 2 HEADER 9 $DWGCODEPAGE 3 " + page +
                                             " 0 ENDSEC 0 SECTION 2 ENTITIES 0 POINT 8 " + layer +
                                             " 10 1 20 2 30 3 0 ENDSEC 0 EOF"),
                                    "d.dxf");
      source.codes = {"S\u00FC\u20AC"};
      EXPECT_EQ(read_dxf_points(source).points.size(), 1U);
    });
  };
  EXPECT_EQ(with_layer("S\u00FC\u20AC", "ANSI_1252"), "");
  EXPECT_EQ(with_layer("S\xFC\x80", "ansi_1252"), "");
  EXPECT_EQ(with_layer("S\\U+00FC\\U+20AC", "ANSI_1251"), "");
  EXPECT_EQ(with_layer("S\xFC", "ANSI_1251"),
            "d.dxf:18:1: text that is not UTF-8, in the code page \"ANSI_1251\"; UTF-8 or "
            "ANSI_1252; export the drawing in one of these\n");
}

TEST(DxfRead, WhatWasWrittenIsReadBack_dxf_read_1) {
  DxfText text;
  text.layer("GL", DxfColour::Green).layer("KERB", DxfColour::Red);
  const GridPosition a = grid_position(715830.1234567, 734697.6, 62.3512345);
  const GridPosition b = grid_position(715831, 734698.1 / 3, 62);
  const GridPosition c = grid_position(715832, 734699, 1.0 / 3);
  text.point("GL", a.at, a.height).text("GL", a.at, "x %%d \u00E9 ^", Length::metres(0.5));
  text.polyline("KERB", {a, b, c}, DxfRing::Closed).triangle("KERB", {a, b, c});
  const SourceFile source = text_file(text.take(), "w.dxf");
  const auto points = read_dxf_points(source);
  ASSERT_EQ(points.points.size(), 1U);
  EXPECT_EQ(points.points.points[0].at, a);
  EXPECT_EQ(points.points.label(0), "x %%d \u00E9 ^");
  const auto strings = read_dxf_strings(source, Heights::Needed);
  ASSERT_EQ(strings.strings.size(), 1U);
  EXPECT_EQ(strings.strings[0].vertices[1].at, b);
  EXPECT_EQ(strings.strings[0].vertices.size(), 4U);
  EXPECT_EQ(read_dxf_surface(source).mesh.vertices, (std::vector<GridPosition>{a, b, c}));
}

// Drawings beside the project, with what is known of them.
SourceFile shared(const std::string& name) {
  SourceFile source;
  source.path = squaredig::testing::shared_data("dxf/" + name).string();
  source.name = name;
  return source;
}

TEST(RealDxf, TheSurfaceOfTheLandXmlItWasMadeFrom) {
  SQUAREDIG_NEEDS_SHARED_DATA("dxf/design_lowest_Y10_3dface.dxf");
  const auto surface = read_dxf_surface(shared("design_lowest_Y10_3dface.dxf"));
  EXPECT_EQ(surface.record.read, 589U);
  EXPECT_EQ(surface.mesh.faces.size(), 589U);
  double twice = 0;
  for (const auto& face : surface.mesh.faces) {
    const auto at = [&](std::size_t i) {
      return surface.mesh.vertices[static_cast<std::size_t>(face[i])].at;
    };
    const auto de = [&](std::size_t i) { return (at(i).easting - at(0).easting).in_metres(); };
    const auto dn = [&](std::size_t i) { return (at(i).northing - at(0).northing).in_metres(); };
    twice += std::abs(de(1) * dn(2) - de(2) * dn(1));
  }
  EXPECT_NEAR(twice / 2, 283.821, 0.001);
  EXPECT_EQ(
      read_dxf_strings(shared("design_lowest_Y10_3dface.dxf"), Heights::Needed).strings.size(),
      17U);
}

TEST(RealDxf, TheMixOfEntitiesInFeet) {
  SQUAREDIG_NEEDS_SHARED_DATA("dxf/hand_r12_entity_mix.dxf");
  const auto points = read_dxf_points(shared("hand_r12_entity_mix.dxf"));
  ASSERT_EQ(points.points.size(), 1U);
  EXPECT_EQ(points.points.points[0].at,
            grid_position(321000.123 * 0.3048, 5812000.456 * 0.3048, 10.5 * 0.3048));
  const auto strings = read_dxf_strings(shared("hand_r12_entity_mix.dxf"), Heights::Needed);
  EXPECT_EQ(strings.strings.size(), 2U);
  EXPECT_EQ(refusal_text([] { read_dxf_surface(shared("hand_r12_entity_mix.dxf")); }).substr(0, 74),
            "hand_r12_entity_mix.dxf:48:1: a face of four corners, the last 914.4 mm ou");
}

TEST(RealDxf, ContoursAtTheirLevels) {
  SQUAREDIG_NEEDS_SHARED_DATA("dxf/contours_pre_runout_DEM.dxf");
  SourceFile source = shared("contours_pre_runout_DEM.dxf");
  source.unit = LengthUnit::Metre;  // its header says inches, as the writing program's template did
  const auto contours = read_dxf_strings(source, Heights::Needed);
  EXPECT_EQ(contours.strings.size(), 51U);
  for (const auto& string : contours.strings)
    EXPECT_EQ(std::fmod(string.vertices[0].at.height.in_metres(), 10), 0) << string.name;
}

}  // namespace
}  // namespace squaredig::formats

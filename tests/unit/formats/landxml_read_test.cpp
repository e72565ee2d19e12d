#include "formats/landxml_read.h"

#include <gtest/gtest.h>

#include "formats/input_file.h"
#include "refusal_text.h"
#include "unit/formats/text_file.h"

namespace squaredig::formats {
namespace {

using squaredig::testing::refusal_text;
using squaredig::testing::text_file;

constexpr const char* kMetres = "<Units><Metric linearUnit=\"meter\"/></Units>";
constexpr const char* kPoints =
    "<Pnts><P id=\"5\">10 20 1</P><P id=\"7\">10 30 2</P><P id=\"012\">20 30 3</P>"
    "<P id=\"40\">20 20 4</P></Pnts>";

std::string document(const std::string& inside, const std::string& space = "-1.2") {
  return "<LandXML xmlns=\"http://www.landxml.org/schema/LandXML" + space + "\">" + inside +
         "</LandXML>";
}

std::string surface(const std::string& inside, const std::string& name = "ground") {
  return "<Surfaces><Surface name=\"" + name + "\">" + inside + "</Surface></Surfaces>";
}

std::string definition(const std::string& faces, const std::string& attributes = "") {
  return "<Definition surfType=\"TIN\" " + attributes + ">" + kPoints + "<Faces>" + faces +
         "</Faces></Definition>";
}

SurfaceFile read(const std::string& bytes) {
  return read_landxml_surface(text_file(bytes, "g.xml"));
}

std::string faults(const std::string& bytes) {
  return refusal_text([&] { read(bytes); });
}

TEST(LandXmlSurface, IdsWithGapsNorthingFirst_landxml_2) {
  const std::string bytes =
      document(kMetres + surface(definition("<F n=\"0 2 0\" b=\"1\">5 7 12</F><F>5 +12 0040</F>")));
  const SurfaceFile ground = read(bytes);
  EXPECT_EQ(ground.mesh.name, "ground");
  ASSERT_EQ(ground.mesh.vertices.size(), 4U);
  EXPECT_EQ(ground.mesh.vertices[1], grid_position(30, 10, 2));
  EXPECT_EQ(ground.mesh.faces, (std::vector<std::array<std::int32_t, 3>>{{0, 1, 2}, {0, 2, 3}}));
  EXPECT_EQ(ground.record.file, "g.xml");
  EXPECT_EQ(ground.record.sha256, sha256_of(bytes));
  EXPECT_EQ(ground.record.read, 2U);
  EXPECT_EQ(ground.record.used, 2U);
  EXPECT_TRUE(ground.cautions.empty());
  EXPECT_TRUE(ground.assumed.empty());
}

TEST(LandXmlSurface, InvisibleAndFlatFacesAreSetAside) {
  const auto ground = read(
      document(kMetres + surface(definition("<F>5 7 12</F><F i=\"1\">5 12 40</F>\n<F>5 5 7</F>"))));
  EXPECT_EQ(ground.mesh.faces.size(), 1U);
  EXPECT_EQ(ground.record.read, 3U);
  EXPECT_EQ(ground.record.used, 1U);
  EXPECT_EQ(ground.record.set_aside,
            (std::vector<SetAside>{{1, "the face is marked invisible"},
                                   {2, "the face names a point twice and has no area"}}));
}

TEST(LandXmlSurface, UnitsMayComeLastAndInFeet) {
  const auto ground = read(document(surface(definition("<F>5 7 12</F>")) +
                                    "<Units><Imperial linearUnit=\"USSurveyFoot\"/></Units>"));
  EXPECT_EQ(ground.mesh.vertices[0].at.easting.in_metres(), 20 * (1200.0 / 3937.0));
  EXPECT_EQ(ground.mesh.vertices[0].height.in_metres(), 1200.0 / 3937.0);
  const auto foot = read(document(surface(definition("<F>5 7 12</F>")) +
                                  "<Units><Imperial linearUnit=\"foot\"/></Units>"));
  EXPECT_EQ(foot.mesh.vertices[0].at.easting.in_metres(), 20 * 0.3048);
  const auto mm = read(document(surface(definition("<F>5 7 12</F>")) +
                                "<Units><Metric linearUnit=\"millimeter\"/></Units>"));
  EXPECT_EQ(mm.mesh.vertices[0].at.easting.in_metres(), 20 * 0.001);
}

TEST(LandXmlSurface, UnitsMissingOddOrAtOdds) {
  SourceFile feet = text_file(document(surface(definition("<F>5 7 12</F>"))), "g.xml");
  EXPECT_EQ(read_landxml_surface(feet).assumed,
            (std::vector<std::string>{"g.xml: the file has no units; its lengths are taken in m"}));
  feet.unit = LengthUnit::Foot;  // stated by the job: nothing is assumed
  EXPECT_TRUE(read_landxml_surface(feet).assumed.empty());
  EXPECT_EQ(read_landxml_surface(feet).mesh.vertices[0].at.easting.in_metres(), 20 * 0.3048);
  SourceFile metres = text_file(document(kMetres + surface(definition("<F>5 7 12</F>"))), "m.xml");
  metres.unit = LengthUnit::Foot;
  EXPECT_EQ(refusal_text([&] { read_landxml_surface(metres); }),
            "m.xml:1:93: lengths in m; ft as the job states; correct units in the job, or the "
            "file\n");
  const std::string area = surface(definition("<F>5 7 12</F>"));
  EXPECT_EQ(
      read(document("<Units><Metric linearUnit=\"metre\" elevationUnit=\"feet\"/></Units>" + area))
          .cautions,
      (std::vector<std::string>{"g.xml: linearUnit \"metre\" is taken as meter",
                                "g.xml: elevationUnit \"feet\" is said of attributes alone: "
                                "heights of points are in meter"}));
  EXPECT_EQ(
      faults(document("<Units><Metric linearUnit=\"furlong\"/></Units>" + area)),
      "g.xml:1:95: linearUnit \"furlong\"; meter, foot, USSurveyFoot or another linear unit of "
      "LandXML 1.2; correct the units of the file\n");
}

TEST(LandXmlSurface, AnotherCoordinateSystemIsRefusedOrOnALocalGridTold) {
  const auto with_code = [](const std::string& code) {
    return document(kMetres + std::string("<CoordinateSystem epsgCode=\"") + code + "\"/>" +
                    surface(definition("<F>5 7 12</F>")));
  };
  SourceFile source = text_file(with_code("3875"), "g.xml");
  EXPECT_TRUE(read_landxml_surface(source).cautions.empty());
  source.grid = GridWanted{2157};
  EXPECT_EQ(
      refusal_text([&] { read_landxml_surface(source); }),
      "g.xml:1:136: coordinate system \"3875\"; EPSG:2157 as the job states; convert the file, "
      "or correct crs in the job\n");
  source.grid = GridWanted{0};
  EXPECT_EQ(read_landxml_surface(source).cautions,
            (std::vector<std::string>{"g.xml: the file states the coordinate system \"3875\"; on a "
                                      "local grid it is taken as it stands"}));
  for (const char* same : {"2157", "EPSG:2157", " 2157 ", ""}) {
    source = text_file(with_code(same), "g.xml");
    source.grid = GridWanted{2157};
    EXPECT_TRUE(read_landxml_surface(source).cautions.empty()) << same;
  }
}

TEST(LandXmlSurface, SeveralSurfacesNeedAName) {
  const SourceFile source =
      text_file(document(kMetres + surface(definition("<F>5 7 12</F>")) +
                         surface(definition("<F>5 7 12</F><F>5 12 40</F>"), "rock")),
                "g.xml");
  EXPECT_EQ(refusal_text([&] { read_landxml_surface(source); }),
            "g.xml:1:356: several surfaces: \"ground\", \"rock\"; one surface, or the name of one; "
            "name it in the job: { file = \"...\", name = \"...\" }\n");
  EXPECT_EQ(read_landxml_surface(source, "rock").mesh.faces.size(), 2U);
  EXPECT_EQ(refusal_text([&] { read_landxml_surface(source, "sand"); }),
            "g.xml:1:1: surfaces \"ground\", \"rock\"; a surface \"sand\"; correct the name\n");
}

TEST(LandXmlSurface, EveryFaultAtOnce) {
  EXPECT_EQ(
      faults(document(std::string(kMetres) +
                      surface("<Definition surfType=\"TIN\"><Pnts>\n"
                              "<P>1 2 3</P>\n<P id=\"x\">1 2 3</P>\n<P id=\"1\">1 2</P>\n"
                              "<P id=\"2\">1,5 2 3</P>\n<P id=\"3\">1 2 NaN</P>\n"
                              "<P id=\"4\">1 2 <a/>3</P>\n</Pnts><Faces>\n"
                              "<F>1 2</F>\n<F>1 2 3 4</F>\n<F>1 -2 3</F>\n</Faces></Definition>"))),
      "g.xml:2:3: a P without id; an id; export the file again\n"
      "g.xml:3:10: the id \"x\" of a P; a whole number of at most 18 digits; export the file "
      "again\n"
      "g.xml:4:10: 2 numbers in P 1; northing, easting and elevation; correct it\n"
      "g.xml:5:10: \"1,5\" in P 2 is not a number; numbers with a decimal point, blanks "
      "between; correct it\n"
      "g.xml:6:10: \"NaN\" in P 3 is not a number; numbers with a decimal point, blanks "
      "between; correct it\n"
      "g.xml:7:17: an element \"a\" inside P; numbers alone; take it out\n"
      "g.xml:9:3: face 1 with \"1 2\"; three ids of points, blanks between; export the surface "
      "again "
      "as "
      "triangles\n"
      "g.xml:10:3: face 2 with \"1 2 3 4\"; three ids of points, blanks between; export the "
      "surface "
      "again as triangles\n"
      "g.xml:11:3: face 3 with \"1 -2 3\"; three ids of points, blanks between; export the surface "
      "again "
      "as triangles\n");
}

TEST(LandXmlSurface, DoubledAndMissingIds) {
  EXPECT_EQ(
      faults(document(kMetres + surface("<Definition surfType=\"TIN\"><Pnts>\n"
                                        "<P id=\"1\">1 2 3</P>\n<P id=\"2\">4 5 6</P>\n"
                                        "<P id=\"01\">7 8 9</P>\n</Pnts><Faces>\n"
                                        "<F>1 2 9</F>\n<F i=\"1\">1 2 8</F></Faces>"
                                        "</Definition>"))),
      "g.xml:4:11: the id 1 of a P again; each id once, and it stands in line 2; export the file "
      "again\n"
      "g.xml:6:3: a face names point 9, which is not there; the id of a P of its surface; export "
      "the file again\n"
      "g.xml:7:9: a face names point 8, which is not there; the id of a P of its surface; "
      "export the file again\n");
}

TEST(LandXmlSurface, OtherKindsOfDocument) {
  EXPECT_EQ(
      faults(document(std::string(kMetres))),
      "g.xml:1:1: no surface; a triangulated surface; export the surface with its triangles\n");
  EXPECT_EQ(faults(document(kMetres + surface(""))),
            "g.xml:1:135: surface \"ground\" has no triangle; a triangulated surface; export the "
            "surface with its triangles\n");
  EXPECT_EQ(
      faults(document(kMetres + surface("<Definition surfType=\"grid\"><Faces><F>1 2 3 4</F>"
                                        "</Faces></Definition>"))),
      "g.xml:1:163: surface \"ground\" is a grid; a triangulated surface, surfType TIN; export it "
      "as TIN\n");
  EXPECT_EQ(
      faults("<gml/>"),
      "g.xml:1:5: a document of \"gml\"; a LandXML document; export the file as LandXML 1.2\n");
  EXPECT_EQ(faults(""), "g.xml:1:1: an empty file; a LandXML document; export it again\n");
  EXPECT_EQ(faults("<!DOCTYPE LandXML [<!ENTITY a \"b\">]><LandXML/>"),
            "g.xml:1:19: a DOCTYPE; a document without one: nothing of it is followed; take the "
            "DOCTYPE out\n");
  EXPECT_EQ(faults(document(kMetres + std::string("<Surfaces>"))).substr(0, 26),
            "g.xml:1:123: an XML elemen");
}

TEST(LandXmlSurface, NestingIsLimited) {
  std::string deep;
  for (int i = 0; i < 20000; ++i) deep += "<a>";
  EXPECT_EQ(
      faults(document(deep)),
      "g.xml:1:251: elements nested more than 64 deep; a LandXML document; export it again\n");
}

TEST(LandXmlSurface, StatedSizesThatDifferAreTold) {
  EXPECT_TRUE(read(document(kMetres + surface(definition("<F>5 7 12</F><F>5 12 40</F>",
                                                         "area2DSurf=\"100\" elevMin=\"1\" "
                                                         "elevMax=\"4\""))))
                  .cautions.empty());
  EXPECT_EQ(
      read(document(kMetres +
                    surface(definition("<F>5 7 12</F>", "area2DSurf=\"100\" elevMax=\"9\""))))
          .cautions,
      (std::vector<std::string>{
          "g.xml: surface \"ground\": the file states a plan area of 100.000, its triangles have "
          "50.000",
          "g.xml: surface \"ground\": the file states a highest height of 9.000, its triangles "
          "have 4.000"}));
  // 100 square feet of triangles are 0.0022957 acres (43 560 square feet each)
  EXPECT_TRUE(
      read(document("<Units><Imperial linearUnit=\"foot\" areaUnit=\"acre\"/></Units>" +
                    surface(definition("<F>5 7 12</F><F>5 12 40</F>", "area2DSurf=\"0.0022957\""))))
          .cautions.empty());
}

TEST(LandXmlSurface, NamespacesPrefixesEncodingsAndPieces) {
  const auto plain =
      read("<LandXML>" + (kMetres + surface(definition("<F>5 7 12</F>"))) + "</LandXML>");
  EXPECT_EQ(plain.cautions,
            (std::vector<std::string>{"g.xml: no namespace; elements are read by their names"}));
  const auto latin = read("<?xml version=\"1.0\" encoding=\"ISO-8859-1\"?>" +
                          document(kMetres + surface(definition("<F>5 7 12</F>"),
                                                     "S\xFC"
                                                     "d"),
                                   "-1.1"));
  EXPECT_EQ(latin.mesh.name,
            "S\xC3\xBC"
            "d");
  EXPECT_TRUE(latin.cautions.empty());
  const auto prefixed = read(
      "<lx:LandXML xmlns:lx=\"http://www.landxml.org/schema/LandXML-1.2\" xmlns:o=\"urn:other\">"
      "<lx:Units><lx:Metric linearUnit=\"meter\"/></lx:Units><lx:Surface name=\"a &amp; b\">"
      "<lx:Definition surfType=\"TIN\"><lx:Pnts><lx:P id=\"1\">1<!-- x --> "
      "2\n\t<![CDATA[3]]></lx:P>"
      "<lx:P id=\"2\">4 5 1e1</lx:P><lx:P id=\"3\">+4. 9 &#54;</lx:P><o:P id=\"1\">0 0 "
      "0</o:P></lx:Pnts>"
      "<lx:Faces><lx:F>1 2 3</lx:F></lx:Faces></lx:Definition></lx:Surface></lx:LandXML>");
  EXPECT_EQ(prefixed.mesh.name, "a & b");
  ASSERT_EQ(prefixed.mesh.vertices.size(), 3U);
  EXPECT_EQ(prefixed.mesh.vertices[0], grid_position(2, 1, 3));
  EXPECT_EQ(prefixed.mesh.vertices[2], grid_position(9, 4, 6));
}

TEST(LandXmlPoints, CgPointsDataPointsAndReferences) {
  const std::string bytes = document(
      kMetres +
      std::string("<CoordinateSystem epsgCode=\"28355\"/><CgPoints name=\"pegs\">"
                  "<CgPoint name=\"P1\" code=\"PEG\">10 20 30</CgPoint><CgPoints>\n"
                  "<CgPoint name=\"P2\" code=\"X\" pntRef=\"P1\"/></CgPoints></CgPoints>"
                  "<Parcels><CgPoint pntRef=\"P1\"/></Parcels>") +
      surface("<SourceData><DataPoints code=\"GL\"><PntList3D>1 2 3 4 5 6</PntList3D></DataPoints>"
              "</SourceData>"));
  const auto file = read_landxml_points(text_file(bytes, "p.xml"));
  ASSERT_EQ(file.points.size(), 4U);
  EXPECT_EQ(file.points.label(1), "P2");
  EXPECT_EQ(file.points.code(1), "X");
  EXPECT_EQ(file.points.points[1].at, grid_position(20, 10, 30));
  EXPECT_EQ(file.points.points[1].line, 2U);
  EXPECT_EQ(file.points.label(3), "");
  EXPECT_EQ(file.points.code(3), "GL");
  EXPECT_EQ(file.points.points[3].at, grid_position(5, 4, 6));
  SourceFile elsewhere = text_file(bytes, "p.xml");
  elsewhere.grid = GridWanted{28354};
  EXPECT_NE(refusal_text([&] {
              read_landxml_points(elsewhere);
            }).find("coordinate system \"28355\"; EPSG:28354 as the job states;"),
            std::string::npos);
  EXPECT_EQ(file.record.read, 4U);
  SourceFile coded = text_file(bytes, "p.xml");
  coded.codes = {"GL", "PEG"};
  const auto chosen = read_landxml_points(coded);
  EXPECT_EQ(chosen.points.size(), 3U);
  EXPECT_EQ(chosen.record.set_aside, (std::vector<SetAside>{{2, "code \"X\" is not asked for"}}));
}

TEST(LandXmlPoints, Faults) {
  const auto points_faults = [](const std::string& inside, Heights heights) {
    return refusal_text([&] {
      PointsWanted wanted;
      wanted.heights = heights;
      read_landxml_points(text_file(document(kMetres + inside), "p.xml"), wanted);
    });
  };
  const std::string flat = "<CgPoints><CgPoint name=\"P1\">10 20</CgPoint></CgPoints>";
  EXPECT_EQ(points_faults(flat, Heights::Optional), "");
  EXPECT_EQ(
      points_faults(flat, Heights::Needed),
      "p.xml:1:131: 2 numbers in CgPoint \"P1\"; northing, easting and elevation; correct it\n");
  EXPECT_EQ(
      points_faults("<CgPoints><CgPoint name=\"P1\" pntRef=\"none\"/></CgPoints>", Heights::Needed),
      "p.xml:1:145: a reference to the point \"none\"; a CgPoint of that name with coordinates; "
      "export the file again\n");
  EXPECT_EQ(
      points_faults("", Heights::Needed),
      "p.xml:1:1: neither CgPoints nor DataPoints; points; export the points, or name the file "
      "as a surface\n");
}

TEST(LandXmlBreaklines, ListsOfPoints) {
  const auto file = read_landxml_breaklines(
      text_file(
          document(kMetres +
                   surface("<SourceData><Breaklines><Breakline name=\"kerb\" brkType=\"wall\">"
                           "<PntList3D>1 2 3\n4 5 6 7 8 9</PntList3D></Breakline>"
                           "<Breakline><PntList3D>1 2 3 4 5 6</PntList3D></Breakline>"
                           "</Breaklines></SourceData>")),
          "b.xml"),
      Heights::Needed);
  ASSERT_EQ(file.strings.size(), 2U);
  EXPECT_EQ(file.strings[0].name, "kerb");
  EXPECT_EQ(file.strings[0].vertices[2].at, grid_position(8, 7, 9));
  EXPECT_EQ(file.strings[1].name, "breakline 2");
  EXPECT_EQ(file.record.read, 5U);
  EXPECT_EQ(file.cautions,
            (std::vector<std::string>{
                "b.xml: breakline \"kerb\" of type \"wall\" is taken as a plain one"}));
}

TEST(LandXmlBreaklines, WrongCounts) {
  const auto list_faults = [](const std::string& list) {
    return refusal_text([&] {
      read_landxml_breaklines(
          text_file(document(kMetres + surface("<SourceData><Breaklines>\n<Breakline name=\"k\">" +
                                               list + "</Breakline></Breaklines></SourceData>")),
                    "b.xml"),
          Heights::Needed);
    });
  };
  EXPECT_EQ(
      list_faults("<PntList3D>1 2 3 4</PntList3D>"),
      "b.xml:2:31: 4 numbers in breakline \"k\"; northing, easting and elevation of each point; "
      "correct it\n");
  EXPECT_EQ(
      list_faults("<PntList3D>1 2 3</PntList3D>"),
      "b.xml:2:31: breakline \"k\" has a single vertex; two vertices or more; add the others or "
      "take it out\n");
  EXPECT_EQ(
      list_faults("<PntList2D>1 2 3</PntList2D>"),
      "b.xml:2:31: 3 numbers in breakline \"k\"; pairs of northing and easting; correct it\n");
  EXPECT_EQ(list_faults("<PntList2D>1 2 3 4</PntList2D>"),
            "b.xml:2:31: breakline \"k\" has no heights; PntList3D; export it with heights\n");
}

}  // namespace
}  // namespace squaredig::formats

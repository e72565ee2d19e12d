// One-defect variants of a LandXML document, and the error and entity-bomb documents of the libxml2
// test suite (MIT). Each file's verdict as a surface, as breaklines and as points stands here: the
// beginning of the line it is refused with, or what it is taken as.
#include <gtest/gtest.h>

#include <array>
#include <filesystem>
#include <set>

#include "formats/landxml_read.h"
#include "refusal_text.h"
#include "shared_data.h"

namespace squaredig::formats {
namespace {

struct Verdict {
  const char* file = "";
  const char* surface = "";  // empty: taken
  const char* strings = "";
  const char* points = "";
};

constexpr const char* kDoctype = ":2:19: a DOCTYPE;";

// In the order of INDEX.csv.
constexpr std::array<Verdict, 81> kVerdicts = {{
    {"base.xml", ""},
    {"dup_p_id.xml", ":17:105: the id 3 of a P again;"},
    {"p_id_missing.xml", ":17:98: a P without id;"},
    {"p_id_0.xml", ":18:56: a face names point 4, which is not there;"},
    {"p_id_a4.xml", ":17:106: the id \"A4\" of a P;"},
    {"face_refs_missing_point.xml", ":18:56: a face names point 99, which is not there;"},
    {"face_2_verts.xml", ":18:56: face 2 with \"1 3\";"},
    {"face_4_verts_in_tin.xml", ":18:56: face 2 with \"1 2 3 4\";"},
    {"face_negative_id.xml", ":18:56: face 2 with \"1 -3 4\";"},
    {"face_degenerate_1_1_2.xml", ""},
    {"face_decimal.xml", ":18:56: face 2 with \"1 3.0 4\";"},
    {"face_comma_sep.xml", ":18:56: face 2 with \"1,3,4\";"},
    {"face_empty.xml", ":18:56: face 2 with \"\";"},
    {"i_2.xml", ""},
    {"n_1.xml", ""},
    {"b_0.xml", ""},
    {"b_9.xml", ""},
    {"unknown_attr_on_f.xml", ""},
    {"decimal_comma.xml", ":17:105: \"5000,5\" in P 4 is not a number;"},
    {"p_2_coords.xml", ":17:105: 2 numbers in P 4;"},
    {"p_4_coords.xml", ":17:105: 4 numbers in P 4;"},
    {"p_empty.xml", ":17:105: 0 numbers in P 4;"},
    {"p_nan.xml", ":17:105: \"NaN\" in P 4 is not a number;"},
    {"p_inf.xml", ":17:105: \"INF\" in P 4 is not a number;"},
    {"p_1e3_sign.xml", ""},
    {"p_newline_tab_separated.xml", ""},
    {"p_entity_comment_inside.xml", ""},
    {"p_cdata.xml", ""},
    {"p_nested_element.xml", ":17:119: an element \"Feature\" inside P;"},
    {"no_units.xml", ""},
    {"two_units.xml", ""},
    {"units_with_metric_imperial.xml", ":3:307: linearUnit \"foot\" after \"meter\" in line 3;",
     ":3:307: linearUnit \"foot\" after \"meter\" in line 3;",
     ":3:307: linearUnit \"foot\" after \"meter\" in line 3;"},
    {"linearunit_metre.xml", ""},
    {"linearunit_meter.xml", ""},
    // feet in a system that counts in metres
    {"linearunit_feet.xml", ":3:189: lengths in ft; m of 28355;",
     ":3:189: lengths in ft; m of 28355;", ":3:189: lengths in ft; m of 28355;"},
    {"elevationunit_feet_metric_linear.xml", ""},
    {"no_namespace.xml", ""},
    {"prefixed_namespace.xml", ""},
    {"1_1_namespace.xml", ""},
    {"no_date_time.xml", ""},
    {"breakline_1_point.xml", "", ":13:72: breakline \"top\" has a single vertex;"},
    {"pntlist3d_7_values.xml", "", ":13:72: 7 numbers in breakline \"top\";"},
    {"pntlist2d_odd.xml", ""},
    {"2_definitions.xml", ":19:46: a second definition of surface \"ground\";"},
    {"2_faces_blocks.xml", ""},
    {"dup_surface_name.xml", ":20:70: several surfaces: \"ground\", \"ground\";"},
    {"dup_cgpoint_name.xml", ""},
    {"pntref_dangling.xml", "", "", ":8:35: a reference to the point \"zz\";"},
    {"definition_before_sourcedata.xml", ""},
    {"surftype_tin.xml", ""},
    {"survey_before_surfaces_any_order.xml", ""},
    {"utf_8_bom.xml", ""},
    {"utf_16.xml", ""},
    {"latin1_decl_byte.xml", ""},
    {"utf8_decl_latin1_byte.xml",
     ":11:39: characters that are not in the encoding which the file names;",
     ":11:39: characters that are not in the encoding which the file names;",
     ":11:39: characters that are not in the encoding which the file names;"},
    {"windows_1252_decl.xml", ""},
    {"leading_blank_line.xml", ":2:6: text that is not XML;", ":2:6: text that is not XML;",
     ":2:6: text that is not XML;"},
    {"edgetrim_missing.xml", ""},
    {"boundary_type_hole.xml", ""},
    {"foreign_ns_elem_in_surface.xml", ""},
    {"epsgcode_epsg_28355.xml", ""},
    {"xxe_file_entity.xml", kDoctype, kDoctype, kDoctype},
    {"xxe_parameter_entity.xml", kDoctype, kDoctype, kDoctype},
    {"billion_laughs_in_p.xml", kDoctype, kDoctype, kDoctype},
    {"internal_entity_harmless.xml", kDoctype, kDoctype, kDoctype},
    {"deep_nesting_20000_feature.xml", ":20:562: elements nested more than 64 deep;",
     ":20:562: elements nested more than 64 deep;", ":20:562: elements nested more than 64 deep;"},
    {"truncated_mid_face.xml", ":18:60: an XML document that ends too early;",
     ":18:60: an XML document that ends too early;",
     ":18:60: an XML document that ends too early;"},
    {"truncated_inside_tag.xml", ":18:13: text that is not XML;", ":18:13: text that is not XML;",
     ":18:13: text that is not XML;"},
    {"huge_attribute_300kb.xml", ""},
    {"nul_byte_in_text.xml",
     ":17:113: characters that are not in the encoding which the file names;",
     ":17:113: characters that are not in the encoding which the file names;",
     ":17:113: characters that are not in the encoding which the file names;"},
    {"element_name_case_p.xml", ":18:56: a face names point 4, which is not there;"},
    {"p_with_40_digits.xml", ""},
    {"p_e_n_swapped_range.xml", ""},
    {"p_overflow_1e999.xml", ":17:105: \"1e999\" in P 4 is not a number;"},
    {"id_20_digits.xml", ":17:124: the id \"99999999999999999999\" of a P;"},
    {"ids_not_contiguous.xml", ""},
    {"ids_leading_zeros.xml", ""},
    {"two_surfaces_same_ids_different_coords.xml", ":21:21: several surfaces: \"ground\", \"g2\";"},
    {"empty_file.xml", ":1:1: an empty file;", ":1:1: an empty file;", ":1:1: an empty file;"},
    {"only_bom.xml", ":1:1: text that is not XML;", ":1:1: text that is not XML;",
     ":1:1: text that is not XML;"},
    {"wrong_root_gml.xml", ":2:137: a document of \"gmlx\";", ":2:137: a document of \"gmlx\";",
     ":2:137: a document of \"gmlx\";"},
}};

SourceFile shared(const std::string& file) {
  SourceFile source;
  source.path = squaredig::testing::shared_data("malformed/" + file).string();
  source.name = std::filesystem::path(file).filename().string();
  return source;
}

std::string as_surface(const SourceFile& source) {
  return squaredig::testing::refusal_text([&] { read_landxml_surface(source); });
}

std::string as_strings(const SourceFile& source) {
  return squaredig::testing::refusal_text(
      [&] { read_landxml_breaklines(source, Heights::Needed); });
}

std::string as_points(const SourceFile& source) {
  return squaredig::testing::refusal_text([&] { read_landxml_points(source); });
}

void expect_verdict(const std::string& lines, const SourceFile& source, const std::string& said) {
  if (said.empty())
    EXPECT_EQ(lines, "") << source.name;
  else
    EXPECT_EQ(lines.substr(0, source.name.size() + said.size()), source.name + said);
}

TEST(MalformedLandXml, EveryVariantGetsItsVerdict) {
  SQUAREDIG_NEEDS_SHARED_DATA("malformed/landxml/variants");
  for (const Verdict& verdict : kVerdicts) {
    const SourceFile source = shared(std::string("landxml/variants/") + verdict.file);
    expect_verdict(as_surface(source), source, verdict.surface);
    expect_verdict(as_strings(source), source, verdict.strings);
    expect_verdict(as_points(source), source, verdict.points);
  }
}

// What is taken has the points and faces of the document without the defect, but for these.
TEST(MalformedLandXml, WhatIsTakenIsTheSameSurface) {
  SQUAREDIG_NEEDS_SHARED_DATA("malformed/landxml/variants");
  const std::set<std::string> other = {"2_faces_blocks.xml",        // one face more
                                       "i_2.xml",                   // its face is kept, and told
                                       "p_1e3_sign.xml",            // another height, .5
                                       "p_e_n_swapped_range.xml"};  // for the control to tell
  const auto base = read_landxml_surface(shared("landxml/variants/base.xml")).mesh;
  ASSERT_EQ(base.faces.size(), 1U);
  for (const Verdict& verdict : kVerdicts) {
    if (*verdict.surface != 0) continue;
    const auto mesh =
        read_landxml_surface(shared(std::string("landxml/variants/") + verdict.file)).mesh;
    const bool same = mesh.vertices == base.vertices && mesh.faces == base.faces;
    EXPECT_NE(same, other.contains(verdict.file)) << verdict.file;
  }
}

TEST(MalformedLandXml, TheTableIsWhole) {
  SQUAREDIG_NEEDS_SHARED_DATA("malformed/landxml/variants");
  std::set<std::string> files;
  for (const auto& entry : std::filesystem::directory_iterator(
           squaredig::testing::shared_data("malformed/landxml/variants")))
    if (entry.path().extension() == ".xml") files.insert(entry.path().filename().string());
  for (const Verdict& verdict : kVerdicts) EXPECT_EQ(files.erase(verdict.file), 1U) << verdict.file;
  EXPECT_TRUE(files.empty()) << *files.begin();
}

TEST(MalformedLandXml, AGovernmentSampleWithADanglingFaceIsRefused) {
  SQUAREDIG_NEEDS_SHARED_DATA("malformed/landxml/j_landxml_sample.xml");
  const SourceFile source = shared("landxml/j_landxml_sample.xml");
  expect_verdict(as_surface(source), source, ":276:13: a face names point 673, which is not there");
  PointsWanted plan;
  plan.heights = Heights::Optional;
  EXPECT_EQ(read_landxml_points(source, plan).points.size(), 3U);
}

TEST(MalformedLandXml, NoErrorOrEntityDocumentIsTaken) {
  SQUAREDIG_NEEDS_SHARED_DATA("malformed/xml");
  std::size_t files = 0;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(
           squaredig::testing::shared_data("malformed/xml"))) {
    if (!entry.is_regular_file()) continue;
    ++files;
    const SourceFile source{entry.path().string(), entry.path().filename().string()};
    const std::string lines = as_surface(source);
    EXPECT_EQ(lines.rfind(source.name + ":", 0), 0U) << source.name;
    EXPECT_EQ(as_points(source), lines);
  }
  EXPECT_EQ(files, 77U);
}

}  // namespace
}  // namespace squaredig::formats

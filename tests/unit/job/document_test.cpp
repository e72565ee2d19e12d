#include "job/document.h"

#include <gtest/gtest.h>

#include "job/table_reader.h"

namespace squaredig::job {
namespace {

std::string first_fault(const std::string& text) {
  try {
    parse_document(text, "job.toml");
    return "no fault";
  } catch (const Refusal& refusal) {
    return refusal.problems().at(0).text();
  }
}

TEST(Document, KeepsTheOrderOfTheFile_document_1) {
  const Node root =
      parse_document("[z]\nb = 1\na = [3, 1, 2]\n[a]\n[[z.y]]\n[[z.y]]\nq = 'x'\n", "f");
  ASSERT_EQ(root.items.size(), 2U);
  EXPECT_EQ(root.items[0].key, "z");
  const Node& z = root.items[0];
  ASSERT_EQ(z.items.size(), 3U);
  EXPECT_EQ(z.items[0].path, "z.b");
  EXPECT_EQ(z.items[1].items[0].number, 3);
  EXPECT_EQ(z.items[1].items[2].path, "z.a[3]");
  EXPECT_EQ(z.items[2].items[1].items[0].path, "z.y[2].q");
  EXPECT_EQ(z.items[2].items[1].items[0].place, (Place{"f", 7, 5}));
  EXPECT_EQ(z.items[2].items[1].items[0].key_place, (Place{"f", 7, 1}));
}

TEST(Document, ReadsEveryKindOfValue) {
  const Node root = parse_document(
      "a = 'x'\nb = 2\nc = 2.0\nd = true\ne = 2026-03-02\nf = 10:30:00\ng = [1]\nh = {}\ni = nan\n",
      "f");
  const std::pair<Node::Kind, const char*> expected[] = {{Node::Kind::Text, "\"x\""},
                                                         {Node::Kind::Number, "2"},
                                                         {Node::Kind::Number, "2"},
                                                         {Node::Kind::Truth, "true"},
                                                         {Node::Kind::Date, "a date"},
                                                         {Node::Kind::Moment, "a time"},
                                                         {Node::Kind::List, "a list of 1 value"},
                                                         {Node::Kind::Table, "a table of 0 keys"},
                                                         {Node::Kind::Number, "nan"}};
  ASSERT_EQ(root.items.size(), std::size(expected));
  for (std::size_t i = 0; i < root.items.size(); ++i) {
    EXPECT_EQ(root.items[i].kind, expected[i].first) << root.items[i].key;
    EXPECT_EQ(root.items[i].described(), expected[i].second) << root.items[i].key;
  }
  EXPECT_TRUE(root.items[1].whole);
  EXPECT_FALSE(root.items[2].whole);
}

TEST(Document, CountsCharactersNotBytes) {
  const Node root = parse_document("a = { \"\xC3\xA9\" = 1, b = 2 }\n", "f");
  EXPECT_EQ(root.items[0].items[1].key_place.column, 16);
}

TEST(Document, TakesLettersOfAnyKindInQuotesAndComments) {
  const Node root =
      parse_document("# \xC3\x9F \"\na = '\xC3\xA9\"#'  # ' \xE2\x80\x9C\nb = \"\\\"[\"\n", "f");
  EXPECT_EQ(root.items.at(0).text, "\xC3\xA9\"#");
  EXPECT_EQ(root.items.at(1).text, "\"[");
}

TEST(Document, RefusesATextTooLargeToBeAJobFile) {
  EXPECT_EQ(
      first_fault(std::string(5'000'000, '#')),
      "job.toml:1:1: a job file of 5000000 bytes; at most 4 194 304 bytes; move long lists of "
      "points into files");
}

TEST(NearestWord, FindsSlipsAndNothingElse) {
  const std::set<std::string, std::less<>> words = {"height", "width", "length", "gap", "batter"};
  EXPECT_EQ(nearest_word("hieght", words), "height");
  EXPECT_EQ(nearest_word("widht", words), "width");
  EXPECT_EQ(nearest_word("lengths", words), "length");
  EXPECT_EQ(nearest_word("gsp", words), "gap");
  EXPECT_EQ(nearest_word("cover", words), std::nullopt);
  EXPECT_EQ(nearest_word(std::string(100, 'h'), words), std::nullopt);
}

}  // namespace
}  // namespace squaredig::job

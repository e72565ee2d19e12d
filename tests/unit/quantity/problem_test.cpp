#include "quantity/problem.h"

#include <gtest/gtest.h>

namespace squaredig {
namespace {

TEST(Problem, IsOneLineWhateverTheInputHolds_problem_1) {
  std::string nasty = "label\n\r\t\x1B[31m\x7F";
  nasty += '\0';
  Problem problem{ProblemKind::Input, {nasty + ".csv", 3, 7}, nasty, nasty, nasty};
  for (const char c : problem.text()) {
    EXPECT_GE(static_cast<unsigned char>(c), 0x20);
    EXPECT_NE(c, 0x7F);
  }
}

TEST(Problem, ReadsPlaceFoundNeededRemedy) {
  const Problem problem{ProblemKind::Input,
                        {"ground.csv", 17, 3},
                        "\"1O2.35\"",
                        "a height in metres",
                        "correct the cell"};
  EXPECT_EQ(problem.text(), "ground.csv:17:3: \"1O2.35\"; a height in metres; correct the cell");
}

TEST(Problem, RefuseCarriesOneInputProblem) {
  try {
    refuse({"job.toml", 4, 2}, "a", "b", "c");
    FAIL() << "nothing was thrown";
  } catch (const Refusal& refusal) {
    ASSERT_EQ(refusal.problems().size(), 1U);
    EXPECT_EQ(refusal.problems()[0].kind, ProblemKind::Input);
    EXPECT_EQ(refusal.problems()[0].place, (Place{"job.toml", 4, 2}));
  }
}

TEST(Quoted, CutsLongTextBetweenCharacters) {
  EXPECT_EQ(quoted("FL12"), "\"FL12\"");
  EXPECT_EQ(quoted("a\nb"), "\"a?b\"");
  std::string umlauts;
  for (int i = 0; i < 60; ++i) umlauts += "\xC3\xA4";
  for (const auto& text : {umlauts, "x" + umlauts}) {
    const std::string cut = squaredig::quoted(text);
    EXPECT_LE(cut.size(), 85U);
    ASSERT_TRUE(cut.ends_with("...\""));
    const std::string kept = cut.substr(1, cut.size() - 5);
    EXPECT_TRUE(text.starts_with(kept));
    EXPECT_EQ(static_cast<unsigned char>(kept.back()), 0xA4) << "cut inside a character";
  }
}

}  // namespace
}  // namespace squaredig

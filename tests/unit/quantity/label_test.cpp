#include "quantity/label.h"

#include <gtest/gtest.h>

namespace squaredig {
namespace {

TEST(Label, APlainNumberIsNoFormula_label_1) {
  for (const char* plain : {"-5", "+5.25", "A1", "", " =1", "1-2", "P=1"})
    EXPECT_FALSE(spreadsheet_would_run(plain)) << plain;
  for (const char* formula : {"=1+1", "+A1", "-A1", "@SUM(A1)", "\t=1", "\r=1", "\n=1", "-1+1"})
    EXPECT_TRUE(spreadsheet_would_run(formula)) << formula;
}

}  // namespace
}  // namespace squaredig

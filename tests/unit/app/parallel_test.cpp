#include "app/parallel.h"

#include <gtest/gtest.h>

#include <chrono>
#include <stdexcept>
#include <thread>

namespace squaredig::app {
namespace {

formats::FilePieces numbered_pieces(int count) {
  formats::FilePieces pieces;
  for (int i = 0; i < count; ++i)
    pieces.push_back([i] {
      if (i % 7 == 0) std::this_thread::sleep_for(std::chrono::milliseconds(1));
      return std::to_string(i) + ";";
    });
  return pieces;
}

TEST(Parallel, PiecesAreTakenInOrderByAnyNumberOfThreads) {
  std::string wanted;
  for (int i = 0; i < 100; ++i) wanted += std::to_string(i) + ";";
  for (const unsigned threads : {1U, 2U, 3U, 12U}) {
    std::string taken;
    take_in_order(numbered_pieces(100), threads, [&](std::string_view text) { taken += text; });
    EXPECT_EQ(taken, wanted) << threads << " threads";
  }
  take_in_order({}, 2, [](std::string_view) { FAIL() << "nothing there is to be taken"; });
}

TEST(Parallel, AFaultOfAPieceOrOfTheTakerIsThrownOn) {
  for (const unsigned threads : {1U, 2U, 4U}) {
    auto pieces = numbered_pieces(60);
    EXPECT_THROW(take_in_order(pieces, threads,
                               [](std::string_view text) {
                                 if (text == "20;") throw std::runtime_error("the disk is full");
                               }),
                 std::runtime_error);
    pieces[30] = []() -> std::string { throw std::logic_error("no number"); };
    std::string taken;
    EXPECT_THROW(
        take_in_order(pieces, threads, [&](std::string_view text) { taken = std::string(text); }),
        std::logic_error);
    EXPECT_EQ(taken, "29;");
  }
}

}  // namespace
}  // namespace squaredig::app

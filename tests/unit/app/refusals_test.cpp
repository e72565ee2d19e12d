#include "app/refusals.h"

#include <gtest/gtest.h>

#include <atomic>
#include <stdexcept>

#include "app/parallel.h"

namespace squaredig::app {
namespace {

Problem problem(const std::string& file, ProblemKind kind = ProblemKind::Input) {
  return {kind, {file, 1, 1}, "found", "needed", "remedy"};
}

TEST(Refusals, TellsEachProblemOnceAndInOrder) {
  Refusals refusals;
  refusals.gather([] { throw Refusal(problem("a")); });
  refusals.gather([] {});
  refusals.gather([] { throw Refusal({problem("b"), problem("a")}); });
  const auto problems = problems_of([&] { refusals.throw_if_any(); });
  ASSERT_EQ(problems.size(), 2U);
  EXPECT_EQ(problems[0].place.file, "a");
  EXPECT_EQ(problems[1].place.file, "b");
}

TEST(Refusals, NothingGatheredRefusesNothing) { EXPECT_NO_THROW(Refusals().throw_if_any()); }

TEST(ExitStatus, WrongInputOutranksStorage) {
  EXPECT_EQ(status_of({problem("a", ProblemKind::Storage)}), ExitStatus::Storage);
  EXPECT_EQ(status_of({problem("a", ProblemKind::Storage), problem("b")}), ExitStatus::WrongInput);
  EXPECT_EQ(worse(ExitStatus::NeedsAPerson, ExitStatus::Done), ExitStatus::NeedsAPerson);
}

TEST(Parallel, ProblemsComeInTheOrderOfTheWorks) {
  for (unsigned threads : {0U, 1U, 2U, 7U}) {
    std::atomic<int> done = 0;
    Works works;
    for (int i = 0; i < 20; ++i)
      works.push_back([&done, i] {
        ++done;
        if (i % 3 == 0) throw Refusal(problem(std::to_string(i)));
      });
    const auto problems = run_in_parallel(works, threads);
    EXPECT_EQ(done, 20);
    ASSERT_EQ(problems.size(), 7U);
    for (std::size_t i = 0; i < problems.size(); ++i)
      EXPECT_EQ(problems[i].place.file, std::to_string(3 * i));
  }
}

TEST(Parallel, AFaultOfTheProgramIsThrownOn) {
  for (unsigned threads : {1U, 2U})
    EXPECT_THROW(run_in_parallel({[] { throw std::logic_error("x"); }, [] {}}, threads),
                 std::logic_error);
}

TEST(Parallel, NoWorkIsNoWork) { EXPECT_TRUE(run_in_parallel({}, 4).empty()); }

}  // namespace
}  // namespace squaredig::app

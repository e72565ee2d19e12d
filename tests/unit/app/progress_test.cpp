#include "app/progress.h"

#include <gtest/gtest.h>
#include <poll.h>
#include <pty.h>
#include <sys/wait.h>
#include <unistd.h>

#include <string>

namespace squaredig::app {
namespace {

// What a child writes to a terminal on its standard error while `work` goes on.
template <class Work>
std::string on_terminal(Work work) {
  int terminal = -1;
  const pid_t child = ::forkpty(&terminal, nullptr, nullptr, nullptr);
  if (child == 0) {
    work();
    ::_exit(0);
  }
  std::string text;
  char bytes[256];
  for (ssize_t n = 0; (n = ::read(terminal, bytes, sizeof bytes)) > 0;)
    text.append(bytes, static_cast<std::size_t>(n));
  ::waitpid(child, nullptr, 0);
  ::close(terminal);
  return text;
}

void work_for(std::chrono::milliseconds time, ProgressMode mode, Speech speech) {
  Progress progress(mode, speech);
  progress.step("cutting the pit");
  std::this_thread::sleep_for(time);
}

TEST(Progress, ALineOnATerminalAfterASecondWipedAtTheEnd) {
  const std::string text = on_terminal(
      [] { work_for(std::chrono::milliseconds(1300), ProgressMode::Auto, Speech::Normal); });
  EXPECT_NE(text.find("cutting the pit (1 s)"), std::string::npos) << text;
  EXPECT_TRUE(text.ends_with("\r\x1B[K")) << text;
}

TEST(Progress, ReadingTellsItsRateAndTheTimeLeft) {
  formats::ReadMeter meter;
  EXPECT_EQ(reading_words(meter, 1), "");
  meter.opened = 430000000;
  meter.read = 215000000;
  EXPECT_EQ(reading_words(meter, 2.5), "215 of 430 MB, 86 MB/s, 3 s left");
  meter.opened = 0;  // a pipe, whose size is not known
  EXPECT_EQ(reading_words(meter, 2.5), "215 MB, 86 MB/s");
  const std::string text = on_terminal([] {
    const auto half = std::make_shared<formats::ReadMeter>();
    half->opened = 2000000;
    half->read = 1000000;
    Progress progress(ProgressMode::Auto, Speech::Normal);
    progress.step("reading the field files", half);
    std::this_thread::sleep_for(std::chrono::milliseconds(1300));
  });
  EXPECT_NE(text.find("reading the field files: 1 of 2 MB, "), std::string::npos) << text;
  EXPECT_NE(text.find(" s left (1 s)"), std::string::npos) << text;
}

TEST(Progress, NothingForShortWork) {
  EXPECT_EQ(on_terminal([] {
              work_for(std::chrono::milliseconds(10), ProgressMode::Auto, Speech::Normal);
            }),
            "");
}

TEST(Progress, NothingWhenQuietOrNever) {
  EXPECT_EQ(on_terminal([] {
              Progress never(ProgressMode::Never, Speech::Normal);
              Progress quiet(ProgressMode::Auto, Speech::Quiet);
              std::this_thread::sleep_for(std::chrono::milliseconds(1100));
            }),
            "");
}

}  // namespace
}  // namespace squaredig::app

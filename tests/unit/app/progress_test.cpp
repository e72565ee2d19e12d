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

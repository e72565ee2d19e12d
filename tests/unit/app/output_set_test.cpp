#include "app/output_set.h"

#include <gtest/gtest.h>
#include <signal.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <random>

#include "quantity/problem.h"
#include "temporary_folder.h"

namespace squaredig::app {
namespace {

using namespace testing;
using Files = std::map<std::string, std::string>;

void commit(const fs::path& out, const Files& files, const std::vector<std::string>& owned = {}) {
  OutputSet set(out);
  for (const auto& [name, bytes] : files) set.add(name, bytes);
  for (const auto& name : owned) set.own(name);
  set.commit(1);
}

Problem refusal_of(const fs::path& out, const Files& files = {{"a.csv", "1"}}) {
  try {
    commit(out, files);
  } catch (const Refusal& refusal) {
    return refusal.problems().at(0);
  }
  ADD_FAILURE() << "nothing was refused";
  return {};
}

TEST(OutputSet, MakesTheFolderWithItsFiles) {
  const TemporaryFolder folder;
  commit(folder.path() / "out", {{"dig.json", "{}"}, {"cells.csv", "a,b\n"}});
  EXPECT_EQ(files_in(folder.path() / "out"), (Files{{"dig.json", "{}"}, {"cells.csv", "a,b\n"}}));
  EXPECT_EQ(files_in(folder.path()).size(), 1U) << "something was left beside the output folder";
}

TEST(OutputSet, FilesOfOtherStagesStay_output_set_2) {
  const TemporaryFolder folder;
  const fs::path out = folder.path() / "out";
  commit(out, {{"dig.json", "dig"}, {"cells.csv", "cells"}});
  commit(out, {{"base.json", "base"}});
  commit(out, {{"dig.json", "dig again"}}, {"cells.csv"});
  EXPECT_EQ(files_in(out), (Files{{"base.json", "base"}, {"dig.json", "dig again"}}));
}

TEST(OutputSet, AnOwnedFileNotWrittenAgainIsGone_output_set_3) {
  const TemporaryFolder folder;
  const fs::path out = folder.path() / "out";
  commit(out, {{"pegs.csv", "1"}, {"pegs-polar.csv", "2"}, {"notes.txt", "mine"}});
  commit(out, {{"pegs.csv", "3"}}, {"pegs.csv", "pegs-polar.csv"});
  EXPECT_EQ(files_in(out), (Files{{"notes.txt", "mine"}, {"pegs.csv", "3"}}));
}

TEST(OutputSet, WhatAKilledRunLeftIsRemoved_output_set_4) {
  const TemporaryFolder folder;
  const fs::path left = folder.path() / ".out.squaredig-filling";
  fs::create_directories(left / "deeper");
  write(left / "half.csv", "half a li");
  commit(folder.path() / "out", {{"dig.json", "{}"}});
  EXPECT_EQ(files_in(folder.path()), (Files{{"out", "(folder)"}}));
}

TEST(OutputSet, KeepsTheFoldersPermissions) {
  const TemporaryFolder folder;
  const fs::path out = folder.path() / "out";
  fs::create_directory(out);
  fs::permissions(out, fs::perms::owner_all | fs::perms::group_all);
  commit(out, {{"dig.json", "{}"}});
  EXPECT_EQ(fs::status(out).permissions(), fs::perms::owner_all | fs::perms::group_all);
}

TEST(OutputSet, FollowsALinkedOutputFolder) {
  const TemporaryFolder folder;
  fs::create_directory(folder.path() / "real");
  fs::create_directory_symlink("real", folder.path() / "out");
  commit(folder.path() / "out", {{"dig.json", "{}"}});
  EXPECT_TRUE(fs::is_symlink(folder.path() / "out"));
  EXPECT_EQ(files_in(folder.path() / "real"), (Files{{"dig.json", "{}"}}));
}

TEST(OutputSet, RefusesPlacesThatAreNotForResults) {
  const TemporaryFolder folder;
  write(folder.path() / "file", "x");
  fs::create_directories(folder.path() / "work" / "photos");
  write(folder.path() / "work" / "letter.txt", "keep");
  fs::create_directory_symlink("nowhere", folder.path() / "dangling");
  for (const char* name : {"file", "work", "dangling", "missing/out", "file/out", "/"}) {
    const Problem problem = refusal_of(folder.path() / name);
    EXPECT_EQ(problem.kind, ProblemKind::Storage) << name;
    EXPECT_FALSE(problem.found.empty() || problem.needed.empty() || problem.remedy.empty());
  }
  EXPECT_EQ(content(folder.path() / "work" / "letter.txt"), "keep");
  EXPECT_EQ(files_in(folder.path()).size(), 3U);
}

// Runs `work` in a child process and gives what waitpid says.
template <class Work>
int in_child(Work work) {
  const pid_t child = ::fork();
  if (child == 0) {
    work();
    ::_exit(0);
  }
  int status = 0;
  ::waitpid(child, &status, 0);
  return status;
}

TEST(OutputSet, AFullDiskLeavesTheEarlierResultsWhole) {
  const TemporaryFolder folder;
  const fs::path out = folder.path() / "out";
  commit(out, {{"dig.json", "first"}});
  const int status = in_child([&] {
    // a file size limit refuses the write as a full disk does
    ::signal(SIGXFSZ, SIG_IGN);
    const rlimit limit{1000, 1000};
    ::setrlimit(RLIMIT_FSIZE, &limit);
    try {
      commit(out, {{"dig.json", "second"}, {"cells.csv", std::string(5000, 'x')}});
    } catch (const Refusal& refusal) {
      ::_exit(refusal.problems().at(0).kind == ProblemKind::Storage ? 3 : 1);
    }
  });
  EXPECT_TRUE(WIFEXITED(status) && WEXITSTATUS(status) == 3);
  EXPECT_EQ(files_in(out), (Files{{"dig.json", "first"}}));
  EXPECT_EQ(files_in(folder.path()), (Files{{"out", "(folder)"}}));
}

// Tries to commit as somebody who may not; root may write anywhere, so it becomes nobody first.
int exit_of_forbidden_commit(const fs::path& out) {
  const int status = in_child([&] {
    constexpr uid_t kNobody = 65534;
    if (::geteuid() == 0 && ::setuid(kNobody) != 0) ::_exit(1);
    try {
      commit(out, {{"dig.json", "second"}});
    } catch (const Refusal& refusal) {
      ::_exit(refusal.problems().at(0).kind == ProblemKind::Storage ? 3 : 1);
    }
  });
  return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

TEST(OutputSet, AFolderThatCannotBeWrittenIsRefused) {
  const TemporaryFolder folder;
  const fs::path out = folder.path() / "out";
  commit(out, {{"dig.json", "first"}});
  using enum fs::perms;
  fs::permissions(folder.path(),
                  owner_read | owner_exec | group_read | group_exec | others_read | others_exec);
  EXPECT_EQ(exit_of_forbidden_commit(out), 3) << "a folder that can be read";
  fs::permissions(folder.path(), none);
  EXPECT_EQ(exit_of_forbidden_commit(out), 3) << "a folder that cannot be entered";
  fs::permissions(folder.path(), owner_all);
  EXPECT_EQ(files_in(out), (Files{{"dig.json", "first"}}));
}

Files generation(int number) {
  Files files;
  for (int i = 0; i < 8; ++i)
    files["file" + std::to_string(i)] = std::string(2000, static_cast<char>('a' + number % 26));
  return files;
}

// A child commits one generation after another and is killed at some moment; the folder then holds
// one generation whole, every time.
TEST(OutputSet, KilledAtAnyMomentOneWholeCommitIsSeen_output_set_1) {
  constexpr unsigned kSeed = 41;
  std::mt19937 random(kSeed);
  std::uniform_int_distribution<useconds_t> moment(0, 6000);
  const TemporaryFolder folder;
  const fs::path out = folder.path() / "out";
  commit(out, generation(0));
  write(out / "other-stage.json", "kept");
  for (int round = 0; round < 60; ++round) {
    const pid_t child = ::fork();
    if (child == 0) {
      for (int number = 1;; ++number) commit(out, generation(number));
    }
    ::usleep(moment(random));
    ::kill(child, SIGKILL);
    ::waitpid(child, nullptr, 0);
    Files seen = files_in(out);
    ASSERT_EQ(seen["other-stage.json"], "kept") << "round " << round << " seed " << kSeed;
    seen.erase("other-stage.json");
    ASSERT_EQ(seen.size(), 8U) << "round " << round << " seed " << kSeed;
    for (const auto& [name, bytes] : seen)
      ASSERT_EQ(bytes, seen["file0"]) << name << " round " << round << " seed " << kSeed;
  }
  commit(out, generation(1));
  EXPECT_EQ(files_in(folder.path()).size(), 1U) << "a killed run's folder was left";
}

TEST(OutputSet, TwoRunsAtOnceLoseNothing) {
  const TemporaryFolder folder;
  const fs::path out = folder.path() / "out";
  const pid_t child = ::fork();
  if (child == 0) {
    for (int i = 0; i < 30; ++i) commit(out, {{"pegs.json", std::to_string(i)}});
    ::_exit(0);
  }
  for (int i = 0; i < 30; ++i) commit(out, {{"dig.json", std::to_string(i)}});
  ::waitpid(child, nullptr, 0);
  EXPECT_EQ(files_in(out), (Files{{"dig.json", "29"}, {"pegs.json", "29"}}));
}

}  // namespace
}  // namespace squaredig::app

#include "app/command_line.h"

#include <gtest/gtest.h>

#include "app/stage_table.h"

namespace squaredig::app {
namespace {

Command parsed(const std::vector<std::string>& arguments) {
  return std::get<Command>(parse_command_line(arguments));
}

std::string refused(const std::vector<std::string>& arguments) {
  try {
    parse_command_line(arguments);
  } catch (const Refusal& refusal) {
    EXPECT_EQ(refusal.problems().size(), 1U);
    EXPECT_EQ(refusal.problems()[0].kind, ProblemKind::Input);
    return refusal.problems()[0].text();
  }
  ADD_FAILURE() << "nothing was refused";
  return "";
}

TEST(CommandLine, DefaultsAreTheJobsOwn) {
  const Command command = parsed({"dig", "job.toml"});
  EXPECT_EQ(command.verb, "dig");
  EXPECT_EQ(command.target, "job.toml");
  EXPECT_FALSE(command.out);
  EXPECT_EQ(command.form, ResultForm::Files);
  EXPECT_EQ(command.speech, Speech::Normal);
  EXPECT_EQ(command.progress, ProgressMode::Auto);
  EXPECT_EQ(command.threads, 0U);
}

TEST(CommandLine, ReadsEveryOptionInAnyOrder) {
  const Command command = parsed({"base", "--out", "there", "--json", "--quiet", "--progress",
                                  "never", "--threads", "2", "folder"});
  EXPECT_EQ(command.target, "folder");
  EXPECT_EQ(command.out, "there");
  EXPECT_EQ(command.form, ResultForm::FilesAndJson);
  EXPECT_EQ(command.speech, Speech::Quiet);
  EXPECT_EQ(command.progress, ProgressMode::Never);
  EXPECT_EQ(command.threads, 2U);
}

TEST(CommandLine, EveryCommandHasTheSameOptions) {
  for (const auto& name : command_names()) {
    if (name.verb == "new") continue;
    EXPECT_EQ(parsed({name.verb, "job", "--out", "o", "--threads", "3"}).threads, 3U) << name.verb;
  }
  EXPECT_EQ(parsed({"new", "somewhere"}).target, "somewhere");
}

TEST(CommandLine, RefusesWhatItDoesNotKnow) {
  EXPECT_TRUE(
      refused({"fly", "job"})
          .starts_with("command line:1:1: unknown command \"fly\"; one of new, check, run,"));
  EXPECT_TRUE(refused({}).starts_with("command line:1:1: no command; one of new, check, run,"));
  for (const std::vector<std::string>& arguments : {std::vector<std::string>{"dig"},
                                                    {"dig", "a", "b"},
                                                    {"dig", "a", "--fast"},
                                                    {"dig", "a", "--threads", "0"},
                                                    {"dig", "a", "--threads", "-1"},
                                                    {"dig", "a", "--threads", "many"},
                                                    {"dig", "a", "--threads"},
                                                    {"dig", "a", "--out"},
                                                    {"dig", "a", "--out", ""},
                                                    {"dig", ""},
                                                    {"dig", "a", "--progress", "always"},
                                                    {"--fast"},
                                                    {"dig", "a", "--out", "x", "--out", "y"},
                                                    {"new", "a", "--json"},
                                                    {"dig", "a", "ground"}})
    EXPECT_TRUE(refused(arguments).ends_with("--help")) << refused(arguments);
}

TEST(CommandLine, HelpNamesEveryCommandAndOption) {
  const std::string help = std::get<Printed>(parse_command_line({"--help"})).text;
  for (const auto& name : command_names())
    EXPECT_NE(help.find(name.help), std::string::npos) << name.verb;
  const std::string dig = std::get<Printed>(parse_command_line({"dig", "--help"})).text;
  for (const char* option : {"--out", "--json", "--quiet", "--progress", "--threads", "JOB"})
    EXPECT_NE(dig.find(option), std::string::npos) << option;
}

TEST(CommandLine, VersionIsOneLine) {
  const std::string text = std::get<Printed>(parse_command_line({"--version"})).text;
  EXPECT_TRUE(text.starts_with("squaredig ")) << text;
  EXPECT_EQ(text.find('\n'), text.size() - 1);
}

}  // namespace
}  // namespace squaredig::app

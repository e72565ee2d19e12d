#include "app/command_line.h"

#include <CLI/CLI.hpp>

#include "app/stage_table.h"
#include "app/version.h"

namespace squaredig::app {
namespace {

constexpr const char* kAbout =
    "squaredig: pegs, cut and base check of the pit of a buried modular tank.";
constexpr const char* kFooter =
    "Exit status: 0 done, and all that was checked conforms; 1 done, but something does not "
    "conform,\n"
    "is not proven or needs a person; 2 the input is wrong; 3 a file or disk could not be read or\n"
    "written.";

Problem usage_problem(std::string found, std::string needed, std::string remedy) {
  return {ProblemKind::Input,
          {"command line", 1, 1},
          std::move(found),
          std::move(needed),
          std::move(remedy)};
}

// What the options are read into: plain values, as the parser wants them.
struct Typed {
  std::string target;
  std::string out;
  std::string progress = "auto";
  bool json = false;
  bool quiet = false;
  unsigned threads = 0;
};

CLI::Validator not_empty() {
  return {[](const std::string& text) { return text.empty() ? "the name is empty" : ""; }, ""};
}

void add_options(CLI::App& sub, const CommandName& name, Typed& typed) {
  sub.add_option(name.target, typed.target, name.target_help)
      ->required()
      ->type_name("")
      ->check(not_empty());
  if (name.verb == "new") {
    sub.add_flag("--quiet", typed.quiet, "say nothing on standard error");
    return;
  }
  sub.add_option("--out", typed.out, "output folder (default: the job's own)")
      ->type_name("DIR")
      ->check(not_empty());
  sub.add_flag("--json", typed.json, "print the result object on standard output");
  sub.add_flag("--quiet", typed.quiet, "say nothing on standard error");
  sub.add_option("--progress", typed.progress, "progress line on a terminal")
      ->type_name("auto|never")
      ->check(CLI::IsMember({"auto", "never"}).description(""));
  sub.add_option("--threads", typed.threads, "threads to use (default: all)")
      ->type_name("N")
      ->check(CLI::Range(1U, 1024U).description(""));
}

Command checked(std::string verb, const Typed& typed) {
  Command command;
  command.verb = std::move(verb);
  command.target = typed.target;
  if (!typed.out.empty()) command.out = typed.out;
  command.form = typed.json ? ResultForm::FilesAndJson : ResultForm::Files;
  command.speech = typed.quiet ? Speech::Quiet : Speech::Normal;
  command.progress = typed.progress == "auto" ? ProgressMode::Auto : ProgressMode::Never;
  command.threads = typed.threads;
  return command;
}

std::string all_names() {
  std::string names;
  for (const auto& name : command_names()) names += (names.empty() ? "" : ", ") + name.verb;
  return names;
}

// What the parser found, in words of our own: it names options and words, and they are kept.
std::string words_of(const CLI::ParseError& error) {
  const std::string said = error.what(), kind = error.get_name();
  const auto colon = said.find(": ");
  if (kind == "ExtrasError" && colon != std::string::npos)
    return squaredig::quoted(said.substr(colon + 2)) + ", which has no place here";
  if (kind == "RequiredError") return "no " + said.substr(0, said.find(' '));
  if (colon == std::string::npos || !said.starts_with("--")) return "words that have no place here";
  const bool absent = kind == "ArgumentMismatch";
  return said.substr(0, colon) + (absent ? " without a value" : " with a value it does not take");
}

void check_verb(const std::vector<std::string>& arguments) {
  if (arguments.empty())
    throw Refusal(usage_problem("no command", "one of " + all_names(), "see squaredig --help"));
  const auto& first = arguments.front();
  if (first.starts_with("-")) return;  // an option: the parser knows it or not
  for (const auto& name : command_names())
    if (name.verb == first) return;
  throw Refusal(usage_problem("unknown command " + squaredig::quoted(first),
                              "one of " + all_names(), "see squaredig --help"));
}

}  // namespace

std::variant<Command, Printed> parse_command_line(const std::vector<std::string>& arguments) {
  check_verb(arguments);
  CLI::App app(kAbout, "squaredig");
  app.footer(kFooter);
  app.set_version_flag("--version", std::string("squaredig ") + kVersion, "print the version");
  app.set_help_flag("--help", "print this help");
  app.require_subcommand(1);
  Typed typed;
  for (const auto& name : command_names()) {
    CLI::App& sub = *app.add_subcommand(name.verb, name.help);
    sub.set_help_flag("--help", "print this help");
    add_options(sub, name, typed);
  }
  try {
    app.parse(std::vector<std::string>(arguments.rbegin(), arguments.rend()));
  } catch (const CLI::CallForVersion& call) {
    return Printed{std::string(call.what()) + "\n"};
  } catch (const CLI::CallForHelp&) {
    const auto chosen = app.get_subcommands();
    return Printed{chosen.empty() ? app.help() : chosen.front()->help("squaredig")};
  } catch (const CLI::ParseError& error) {
    const auto chosen = app.get_subcommands();
    const std::string verb = chosen.empty() ? "" : chosen.front()->get_name() + " ";
    throw Refusal(usage_problem(words_of(error), "a command with its options as the help has them",
                                "see squaredig " + verb + "--help"));
  }
  return checked(app.get_subcommands().front()->get_name(), typed);
}

}  // namespace squaredig::app

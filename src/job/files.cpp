#include "job/files.h"

#include <algorithm>
#include <array>
#include <filesystem>

#include "quantity/number_text.h"

namespace squaredig::job {
namespace {

constexpr const char* kFileWords =
    "a file name in quotes, or { file = \"...\", columns = \"...\", units = \"...\" }";

bool usable_path(std::string_view path) {
  constexpr std::size_t kLongest = 1000;
  const auto control = [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; };
  return !path.empty() && path.size() <= kLongest && path.back() != '/' &&
         std::none_of(path.begin(), path.end(), control);
}

std::optional<FileSpec> named(const Node& node, const std::string& words, Faults& faults) {
  if (node.kind == Node::Kind::Text && usable_path(node.text))
    return FileSpec{node.text, {}, {}, {}, {}, node.place};
  faults.wrong_value(node, words,
                     node.kind == Node::Kind::Text ? "write the path of one file"
                                                   : "write the file name in quotes");
  return std::nullopt;
}

std::vector<std::string> words_of(std::string_view list) {
  std::vector<std::string> words;
  while (true) {
    const auto end = std::min(list.find(','), list.size());
    std::string word(trimmed(list.substr(0, end)));
    for (char& c : word)
      if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    words.push_back(std::move(word));
    if (end == list.size()) return words;
    list.remove_prefix(end + 1);
  }
}

bool any_in(const std::vector<std::string>& words, std::initializer_list<const char*> wanted) {
  return std::any_of(wanted.begin(), wanted.end(), [&](const char* w) {
    return std::find(words.begin(), words.end(), w) != words.end();
  });
}

std::optional<std::string> column_fault(std::string_view list) {
  auto words = words_of(list);
  if (any_in(words, {""})) return "a name for each column, between commas";
  if (any_in(words, {"x", "y", "z"}))
    return "easting, northing and height by name: the order of x, y and z is ambiguous";
  const bool plan = any_in(words, {"easting", "e"}) && any_in(words, {"northing", "n"});
  const bool geodetic = any_in(words, {"latitude"}) && any_in(words, {"longitude"});
  if (!plan && !geodetic) return "the columns easting and northing among them";
  std::sort(words.begin(), words.end());
  if (std::adjacent_find(words.begin(), words.end()) != words.end()) return "each column once";
  return std::nullopt;
}

// The order of the columns of a file without a header.
Rule<std::string> columns() {
  const std::string words = "names of columns between commas, in the file's order";
  return {words, [=](const Node& node, Faults& faults) -> std::optional<std::string> {
            const auto fault =
                node.kind == Node::Kind::Text ? column_fault(node.text) : std::optional(words);
            if (!fault) return node.text;
            faults.wrong_value(node, *fault,
                               "write \"point,easting,northing,height,code\" or the file's order");
            return std::nullopt;
          }};
}

// Keys that only some kinds of file have a use for.
constexpr std::array<std::pair<const char*, const char*>, 3> kKeysOfKinds = {
    {{"columns", ".csv, .txt"}, {"layer", ".dxf, .gpkg"}, {"name", ".xml"}}};

// True where the path has one of the endings, separated by ", ".
bool ends_in(const std::string& path, std::string_view endings) {
  std::string ending = std::filesystem::path(path).extension().string();
  for (char& c : ending)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  const auto words = words_of(endings);
  return path.empty() || std::find(words.begin(), words.end(), ending) != words.end();
}

bool below_job_folder(const std::string& text) {
  const auto path = std::filesystem::path(text).lexically_normal();
  if (path.is_absolute() || path.empty()) return false;
  const std::string first = path.begin()->string();
  return first != "." && first != "..";
}

}  // namespace

Rule<FileUnits> file_units() {
  return one_of<FileUnits>(
      {{"m", FileUnits::Metres}, {"ft", FileUnits::Feet}, {"us-ft", FileUnits::UsSurveyFeet}});
}

Rule<FileSpec> plain_file() {
  const std::string words = "a file name in quotes";
  return {words, [=](const Node& node, Faults& faults) { return named(node, words, faults); }};
}

Rule<FileSpec> file() {
  return {kFileWords, [](const Node& node, Faults& faults) -> std::optional<FileSpec> {
            if (node.kind != Node::Kind::Table) return named(node, kFileWords, faults);
            TableReader table(node, faults);
            FileSpec spec = table.need("file", plain_file());
            spec.columns = table.may("columns", columns());
            spec.units = table.may("units", file_units());
            spec.layer = table.may("layer", text());
            spec.name = table.may("name", text());
            for (const auto& [key, endings] : kKeysOfKinds)
              if (table.has(key) && !ends_in(spec.path, endings))
                faults.add(table.place_of(key),
                           std::string(key) + " with " + squaredig::quoted(spec.path),
                           std::string("a file whose name ends in ") + endings,
                           std::string("take ") + key + " out, or name another file");
            table.finish();
            if (spec.path.empty()) return std::nullopt;
            return spec;
          }};
}

Rule<std::vector<FileSpec>> files() {
  const auto list = list_of(file());
  return {"a list of files: [\"a.csv\", ...]",
          [list](const Node& node, Faults& faults) -> std::optional<std::vector<FileSpec>> {
            auto all = list.read(node, faults);
            if (!all) return std::nullopt;
            for (std::size_t i = 0; i < all->size(); ++i)
              for (std::size_t j = 0; j < i; ++j)
                if ((*all)[i].path == (*all)[j].path)
                  faults.add((*all)[i].place,
                             node.path + " with " + squaredig::quoted((*all)[i].path) + " twice",
                             "each file once", "delete one of the two");
            return all;
          }};
}

Rule<std::string> out_folder() {
  const std::string words = "a folder below the job file's own, such as \"out\"";
  return {words, [=](const Node& node, Faults& faults) -> std::optional<std::string> {
            std::string path = node.text;
            while (path.size() > 1 && path.back() == '/') path.pop_back();
            if (node.kind == Node::Kind::Text && usable_path(path) && below_job_folder(path))
              return path;
            faults.wrong_value(node, words, "name a folder here, or give another with --out");
            return std::nullopt;
          }};
}

}  // namespace squaredig::job

// One table of the job file, read key by key. Every key asked for is known; finish() tells the
// rest.
//
// Errors: missing, wrong and unknown keys go to the faults; reading goes on with the type's own
//   empty value, so that all faults of a file come at once.
// Source: the house's own.
#pragma once

#include <set>

#include "job/rules.h"

namespace squaredig::job {

class TableReader {
 public:
  // Requires: node and faults outlive the reader.
  TableReader(const Node& node, Faults& faults);

  bool has(std::string_view key) const { return node_.find(key) != nullptr; }
  const Node* find(std::string_view key);  // makes the key known
  const Place& place() const { return node_.key_place; }
  Place place_of(std::string_view key) const;
  const std::string& path() const { return node_.path; }
  Faults& faults() { return faults_; }

  // The value of a key that may be absent.
  template <class T>
  std::optional<T> may(std::string_view key, const Rule<T>& rule) {
    const Node* value = find(key);
    return value ? rule.read(*value, faults_) : std::nullopt;
  }
  // The value of a key that is needed.
  template <class T>
  T need(std::string_view key, const Rule<T>& rule) {
    if (!find(key)) missing(key, rule.words);
    return may(key, rule).value_or(T{});
  }
  // A key that is needed only where another is given, or where the job says so.
  template <class T>
  std::optional<T> need_if(bool needed, std::string_view key, const Rule<T>& rule) {
    if (needed && !has(key)) missing(key, rule.words);
    return may(key, rule);
  }
  // Each of the tables of [[...]] or of a list of inline tables; `read` takes a TableReader.
  template <class T, class Read>
  std::vector<T> each(std::string_view key, Read read) {
    std::vector<T> all;
    for (const Node* item : tables(key)) {
      TableReader reader(*item, faults_);
      all.push_back(read(reader));
      reader.finish();
    }
    return all;
  }
  // A table inside this one, if it is there and is a table.
  const Node* table(std::string_view key);

  void missing(std::string_view key, const std::string& words);
  // Two keys that exclude each other: told at the second of them in the file.
  void exclude(std::string_view one, std::string_view other, std::string_view why);
  void finish();

 private:
  std::vector<const Node*> tables(std::string_view key);

  const Node& node_;
  Faults& faults_;
  std::set<std::string, std::less<>> known_;
};

// The word of the list nearest to the one written, where it is near enough to be a slip.
std::optional<std::string> nearest_word(std::string_view written,
                                        const std::set<std::string, std::less<>>& words);

}  // namespace squaredig::job

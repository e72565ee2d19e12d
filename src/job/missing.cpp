#include "job/job.h"

namespace squaredig::job {
namespace {

struct Table {
  const char* name;
  bool (*there)(const Job&);
};

constexpr Table kGrid{"grid", [](const Job& j) { return j.grid.has_value(); }};
constexpr Table kField{"field", [](const Job& j) { return j.field.has_value(); }};
constexpr Table kGround{"ground", [](const Job& j) { return j.ground.has_value(); }};
constexpr Table kTank{"tank", [](const Job& j) { return j.tank.has_value(); }};
constexpr Table kBedding{"bedding", [](const Job& j) { return j.bedding.has_value(); }};
constexpr Table kPegs{"pegs", [](const Job& j) { return j.pegs.has_value(); }};
constexpr Table kDig{"dig", [](const Job& j) { return j.dig.has_value(); }};
constexpr Table kBase{"base", [](const Job& j) { return j.base.has_value(); }};
constexpr Table kFill{"fill", [](const Job& j) { return j.fill.has_value(); }};

std::vector<Table> tables_for(Stage stage) {
  std::vector<Table> tables{kGrid, kGround};
  if (stage == Stage::Field) return {kGrid, kField};
  if (stage == Stage::Ground) return tables;
  tables.insert(tables.end(), {kTank, kBedding, kPegs, kDig});
  if (stage == Stage::Base) tables.push_back(kBase);
  if (stage == Stage::Fill) tables.push_back(kFill);
  return tables;
}

}  // namespace

std::vector<Problem> missing_for(Stage stage, const Job& job) {
  std::vector<Problem> problems;
  for (const Table& table : tables_for(stage)) {
    if (table.there(job)) continue;
    const std::string name = "[" + std::string(table.name) + "]";
    problems.push_back({ProblemKind::Input,
                        {job.file, 1, 1},
                        "no table " + name,
                        name + " for the " + words(stage) + " stage",
                        "add " + name + " and its keys"});
  }
  return problems;
}

}  // namespace squaredig::job

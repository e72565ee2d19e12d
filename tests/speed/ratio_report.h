// A console report that ends with ratios: how long each method took against the first of its group.
// Names are "group/method/..."; processor time of the shortest repetition counts: longer ones only
// say what else ran.
#pragma once

#include <benchmark/benchmark.h>

#include <algorithm>
#include <map>
#include <ostream>
#include <string>
#include <vector>

namespace squaredig::speed {

class RatioReport : public benchmark::ConsoleReporter {
 public:
  // The others of a group are compared with the method that bears one of these names.
  explicit RatioReport(std::vector<std::string> bases)
      : ConsoleReporter(OO_Tabular), bases_(std::move(bases)) {}

  void ReportRuns(const std::vector<Run>& runs) override {
    ConsoleReporter::ReportRuns(runs);
    for (const Run& run : runs) {
      if (run.run_type != Run::RT_Iteration) continue;
      const std::string name = run.run_name.function_name;
      const auto slash = name.rfind('/');
      const std::string group = name.substr(0, slash);
      double& best = best_[group].try_emplace(name.substr(slash + 1), 1e300).first->second;
      best = std::min(best, run.GetAdjustedCPUTime());
    }
  }

  void Finalize() override {
    for (const auto& [group, methods] : best_)
      for (const std::string& base : bases_)
        if (methods.contains(base)) tell(group, methods, base);
  }

 private:
  using Methods = std::map<std::string, double>;

  void tell(const std::string& group, const Methods& methods, const std::string& base) {
    for (const auto& [method, time] : methods)
      if (method != base)
        GetOutputStream() << group << ": " << method << " / " << base << " = "
                          << time / methods.at(base) << "\n";
  }

  std::vector<std::string> bases_;
  std::map<std::string, Methods> best_;
};

}  // namespace squaredig::speed

// A console report that ends with ratios: how long each method took against the first of its group.
// Names are "group/method/..."; processor time of the shortest repetition counts: longer ones only
// say what else ran.
#pragma once

#include <benchmark/benchmark.h>

#include <algorithm>
#include <map>
#include <string>
#include <vector>

namespace squaredig::speed {

class RatioReport : public benchmark::ConsoleReporter {
 public:
  // `base` is the method that the others of a group are compared with.
  explicit RatioReport(std::string base) : ConsoleReporter(OO_Tabular), base_(std::move(base)) {}

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
    for (const auto& [group, methods] : best_) {
      const auto base = methods.find(base_);
      if (base == methods.end()) continue;
      for (const auto& [method, time] : methods)
        if (method != base_)
          GetOutputStream() << group << ": " << method << " / " << base_ << " = "
                            << time / base->second << "\n";
    }
  }

 private:
  std::string base_;
  std::map<std::string, std::map<std::string, double>> best_;
};

}  // namespace squaredig::speed

// Fuzzer of the job file: what is read can be described.
#include "fuzz/fuzz_target.h"
#include "job/describe.h"
#include "job/job.h"

using namespace squaredig;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string text(reinterpret_cast<const char*>(data), size);
  fuzz::reading([&] {
    const job::Job read = job::read_job(text, "job.toml");
    for (const auto& line : job::described(read)) fuzz::wanted(!line.empty());
    for (const job::Stage stage : job::kStages) job::missing_for(stage, read);
  });
  return 0;
}

// Fuzzer of the job file: what is read can be described.
#include "formats/input_file.h"
#include "fuzz/fuzz_target.h"
#include "job/describe.h"
#include "job/job.h"

namespace squaredig::fuzz {

void read_input(const formats::SourceFile& file) {
  const std::string text = formats::read_whole(file);
  reading([&] {
    const job::Job read = job::read_job(text, "job.toml");
    for (const auto& line : job::described(read)) wanted(!line.empty());
    for (const job::Stage stage : job::kStages) job::missing_for(stage, read);
  });
}

}  // namespace squaredig::fuzz

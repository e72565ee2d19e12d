#include "app/new_job.h"

#include <cerrno>

#include "app/refusals.h"
#include "app/unix_file.h"
#include "job/new_job.h"

namespace squaredig::app {
namespace {

namespace fs = std::filesystem;

void make_folder(const fs::path& folder) {
  std::error_code error;
  fs::create_directories(folder, error);
  if (!error) return;
  errno = error.value();
  refuse_storage(folder, "creating the folder");
}

}  // namespace

void new_job(const fs::path& folder, const Messages& messages) {
  const auto files = job::new_job_files();
  Refusals refusals;
  std::error_code error;
  for (const auto& file : files)
    if (fs::exists(fs::symlink_status(folder / file.path, error)))
      refusals.add({{ProblemKind::Input,
                     {(folder / file.path).string(), 1, 1},
                     "a file of that name",
                     "a folder without it: nothing is overwritten",
                     "choose another folder, or move the file away"}});
  refusals.throw_if_any();
  make_folder(folder);
  for (const auto& file : files) {
    make_folder((folder / file.path).parent_path());
    Descriptor out = Descriptor::create_file(folder / file.path);
    out.write_all(file.text);
    out.close();
  }
  messages.tell("made " + std::to_string(files.size()) + " files in " + folder.string() +
                "; fill in job.toml, then run: squaredig check " + folder.string());
}

}  // namespace squaredig::app

#include "job/job.h"
#include "job/tables.h"

namespace squaredig::job {
namespace {

void note_places(const Node& node, std::map<std::string, Place>& places) {
  for (const Node& item : node.items) {
    places.emplace(item.path, item.place);
    note_places(item, places);
  }
}

}  // namespace

Place Job::place_of(std::string_view key) const {
  while (!key.empty()) {
    if (const auto found = places.find(std::string(key)); found != places.end())
      return found->second;
    const auto end = key.find_last_of(".[");
    key = key.substr(0, end == std::string_view::npos ? 0 : end);
  }
  return {file, 1, 1};
}

Job read_job(std::string_view text, std::string_view file) {
  const Node document = parse_document(text, file);
  Faults faults;
  Job job;
  job.file = file;
  TableReader root(document, faults);
  for (const auto read : {read_job_table, read_grid, read_control, read_field, read_ground,
                          read_site, read_tank, read_bedding, read_pegs, read_dig, read_progress,
                          read_laser, read_base, read_fill, read_water})
    read(root, job);
  root.finish();
  note_places(document, job.places);
  check_across(job, faults);
  faults.refuse_if_any();
  if (job.base && job.fill) job.base->settings.density_ratio = job.fill->settings.density_ratio;
  return job;
}

}  // namespace squaredig::job

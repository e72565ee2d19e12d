// The job file, found, read and checked, and the field files it names, found beside it.
#pragma once

#include <filesystem>
#include <memory>

#include "formats/source_file.h"
#include "job/job.h"
#include "quantity/result_head.h"

namespace squaredig::app {

struct ReducedField;

struct JobFolder {
  std::filesystem::path file;    // job.toml as it opens from here
  std::filesystem::path folder;  // that holds it
  std::string sha256;
  job::Job job;
  // The points of [field], once they are reduced for a stage that asks for them.
  std::shared_ptr<const ReducedField> reduced = nullptr;
  // Counts what the readers read of the field files.
  std::shared_ptr<formats::ReadMeter> meter = std::make_shared<formats::ReadMeter>();
  // With so many threads its files are read.
  unsigned threads = 1;

  // The field file as the readers want it.
  formats::SourceFile source(const job::FileSpec& spec) const;
  // The record of the job file itself, first among every result's inputs.
  InputRecord record() const;
  // Where results go: as given on the command line, else the job's own `out`.
  std::filesystem::path out(const std::optional<std::filesystem::path>& given) const;
};

// JOB is the job file or the folder that holds job.toml; its files are read by so many threads (0:
// as many as the machine has). Refuses what job::read_job refuses.
JobFolder open_job(const std::filesystem::path& target, unsigned threads = 1);

}  // namespace squaredig::app

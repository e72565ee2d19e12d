#include "app/unix_file.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <system_error>
#include <utility>

namespace squaredig::app {

void refuse_storage(const std::filesystem::path& path, std::string found, std::string needed,
                    std::string remedy) {
  throw Refusal(Problem{ProblemKind::Storage,
                        {path.string(), 1, 1},
                        std::move(found),
                        std::move(needed),
                        std::move(remedy)});
}

void refuse_storage(const std::filesystem::path& path, std::string_view failed) {
  const std::string reason = std::generic_category().message(errno);
  refuse_storage(path, std::string(failed) + " failed: " + reason,
                 "a folder that can be written, with room on the disk",
                 "free the disk or its permissions, or choose another --out; earlier results are "
                 "whole");
}

Descriptor::Descriptor(Descriptor&& other) noexcept
    : number_(std::exchange(other.number_, -1)), path_(std::move(other.path_)) {}

Descriptor::~Descriptor() {
  if (number_ >= 0) ::close(number_);
}

Descriptor Descriptor::open_folder(const std::filesystem::path& path) {
  const int number = ::open(path.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (number < 0) refuse_storage(path, "opening the folder");
  return {number, path};
}

Descriptor Descriptor::create_file(const std::filesystem::path& path) {
  const int number = ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
  if (number < 0) refuse_storage(path, "creating the file");
  return {number, path};
}

void Descriptor::write_all(std::string_view bytes) const {
  while (!bytes.empty()) {
    const ssize_t written = ::write(number_, bytes.data(), bytes.size());
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) refuse_storage(path_, "writing");
    bytes.remove_prefix(static_cast<std::size_t>(written));
  }
}

// Where this cannot be asked, or goes wrong, flush() does it and tells.
void Descriptor::begin_flush() const {
  static_cast<void>(::sync_file_range(number_, 0, 0, SYNC_FILE_RANGE_WRITE));
}

void Descriptor::flush() const {
  if (::fsync(number_) != 0) refuse_storage(path_, "flushing to the disk");
}

void Descriptor::lock() const {
  while (::flock(number_, LOCK_EX) != 0)
    if (errno != EINTR) refuse_storage(path_, "locking the folder");
}

void Descriptor::take_mode(mode_t mode) const {
  if (::fchmod(number_, mode) != 0) refuse_storage(path_, "setting the permissions");
}

void Descriptor::close() {
  if (::close(std::exchange(number_, -1)) != 0) refuse_storage(path_, "closing");
}

void link_or_copy(const std::filesystem::path& from, const std::filesystem::path& to) {
  if (::link(from.c_str(), to.c_str()) == 0) return;
  if (errno != EPERM && errno != EOPNOTSUPP && errno != EMLINK && errno != ENOSYS)
    refuse_storage(from, "linking the file");
  std::error_code error;
  std::filesystem::copy_file(from, to, error);
  if (error) {
    errno = error.value();
    refuse_storage(from, "copying the file");
  }
}

void swap_in(const std::filesystem::path& from, const std::filesystem::path& to) {
  std::error_code error;
  const bool exchange = std::filesystem::exists(to, error);
  // RENAME_NOREPLACE keeps an empty folder that appeared meanwhile from being overwritten
  const unsigned flags = exchange ? RENAME_EXCHANGE : RENAME_NOREPLACE;
  if (::renameat2(AT_FDCWD, from.c_str(), AT_FDCWD, to.c_str(), flags) == 0) return;
  if (errno != EINVAL && errno != ENOSYS) refuse_storage(to, "swapping in the results");
  if (!exchange && ::rename(from.c_str(), to.c_str()) == 0) return;
  refuse_storage(to, "this file system cannot exchange two folders in one step",
                 "a file system that can, or an output folder that does not exist yet",
                 "choose another --out, or move the earlier results away first");
}

}  // namespace squaredig::app

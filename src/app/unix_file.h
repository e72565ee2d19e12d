// A file descriptor that closes itself, and the few system calls of all-or-nothing writing, each
// refusing with the path and the system's own words.
#pragma once

#include <sys/types.h>

#include <filesystem>
#include <string>
#include <string_view>

#include "quantity/problem.h"

namespace squaredig::app {

// Throws a Refusal of kind Storage: what could not be done with the path, and errno in words.
[[noreturn]] void refuse_storage(const std::filesystem::path& path, std::string_view failed);
[[noreturn]] void refuse_storage(const std::filesystem::path& path, std::string found,
                                 std::string needed, std::string remedy);

class Descriptor {
 public:
  // Opens a folder for flock and fsync.
  static Descriptor open_folder(const std::filesystem::path& path);
  // Creates a file that must not exist yet.
  static Descriptor create_file(const std::filesystem::path& path);
  Descriptor(Descriptor&& other) noexcept;
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  Descriptor& operator=(Descriptor&&) = delete;
  ~Descriptor();

  void write_all(std::string_view bytes) const;
  // Lets the disk begin with what was written, without waiting for it.
  void begin_flush() const;
  void flush() const;  // to the disk
  void lock() const;   // waits until no other process holds it; released on closing
  void take_mode(mode_t mode) const;
  void close();  // refuses when the system reports a late write error

 private:
  Descriptor(int number, std::filesystem::path path) : number_(number), path_(std::move(path)) {}
  int number_;
  std::filesystem::path path_;
};

// Gives `from` a second name, or copies it where the file system has no hard links.
void link_or_copy(const std::filesystem::path& from, const std::filesystem::path& to);
// Renames `from` to `to`, exchanging the two in one step where `to` exists.
void swap_in(const std::filesystem::path& from, const std::filesystem::path& to);

}  // namespace squaredig::app

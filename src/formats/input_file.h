// Bytes of an input file, with the SHA-256 of all of them.
//
// Errors: a file that cannot be opened or read is a Refusal of kind Storage, at file:1:1.
// Source: SHA-256 is FIPS 180-4, by OpenSSL.
#pragma once

#include <memory>
#include <span>
#include <string>
#include <string_view>

#include "formats/source_file.h"
#include "quantity/problem.h"

namespace squaredig::formats {

// A file read once from front to back and hashed on the way.
class InputFile {
 public:
  explicit InputFile(const SourceFile& source);
  ~InputFile();
  InputFile(InputFile&&) noexcept;
  InputFile& operator=(InputFile&&) noexcept;

  // Fills `room` from the file and gives the number of bytes; 0 at the end of the file alone.
  std::size_t read(std::span<char> room);
  // Its size when it was opened; 0 where the system does not know.
  std::size_t size() const;
  // Room for one reading: `most` bytes, or a small file's size and one more, so that less than this
  // is read at the end of the file alone.
  std::size_t chunk(std::size_t most) const;
  // The hash of the whole file. Reads what is left of it.
  std::string sha256();

 private:
  struct Open;
  std::unique_ptr<Open> open_;
};

std::string read_whole(const SourceFile& source);
std::string sha256_of_file(const SourceFile& source);
// 64 lower-case hexadecimal digits.
std::string sha256_of(std::string_view bytes);

// "cannot be read: REASON" for a file of an input, with the system's own reason.
Problem storage_problem(const std::string& file, const std::string& what, int error_number);

}  // namespace squaredig::formats

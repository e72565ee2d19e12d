#include "formats/input_file.h"

#include <fcntl.h>
#include <openssl/evp.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <system_error>
#include <vector>

namespace squaredig::formats {
namespace {

class Digest {
 public:
  Digest() : context_(EVP_MD_CTX_new()) {
    if (context_ == nullptr || EVP_DigestInit_ex(context_, EVP_sha256(), nullptr) != 1) failed();
  }
  ~Digest() { EVP_MD_CTX_free(context_); }
  Digest(const Digest&) = delete;
  Digest& operator=(const Digest&) = delete;

  void add(std::string_view bytes) {
    if (EVP_DigestUpdate(context_, bytes.data(), bytes.size()) != 1) failed();
  }
  std::string hex() {
    std::array<unsigned char, EVP_MAX_MD_SIZE> hash{};
    unsigned int size = 0;
    if (EVP_DigestFinal_ex(context_, hash.data(), &size) != 1) failed();
    std::string text;
    for (unsigned int i = 0; i < size; ++i)
      for (const int digit : {hash[i] >> 4, hash[i] & 15})
        text.push_back("0123456789abcdef"[digit]);
    return text;
  }

 private:
  [[noreturn]] static void failed() {
    throw Refusal(Problem{ProblemKind::Storage,
                          {"SHA-256"},
                          "the hash cannot be computed",
                          "a working libcrypto",
                          "repair the installation of OpenSSL"});
  }
  EVP_MD_CTX* context_;
};

constexpr std::size_t kChunk = std::size_t{1} << 20;

}  // namespace

Problem storage_problem(const std::string& file, const std::string& what, int error_number) {
  return {ProblemKind::Storage,
          {file},
          what + ": " + std::generic_category().message(error_number),
          "a readable file and a sound disk",
          "check the name, the permissions and the disk"};
}

struct InputFile::Open {
  std::string name;
  int handle = -1;
  bool ended = false;
  Digest digest;
  std::shared_ptr<ReadMeter> meter;

  explicit Open(const SourceFile& source)
      : name(source.name),
        handle(::open(source.path.c_str(), O_RDONLY | O_CLOEXEC)),
        meter(source.meter) {
    if (handle < 0) throw Refusal(storage_problem(name, "cannot be opened", errno));
  }
  ~Open() { ::close(handle); }
  Open(const Open&) = delete;
  Open& operator=(const Open&) = delete;
};

InputFile::InputFile(const SourceFile& source) : open_(std::make_unique<Open>(source)) {
  if (open_->meter) open_->meter->opened += size();
}
InputFile::~InputFile() = default;
InputFile::InputFile(InputFile&&) noexcept = default;
InputFile& InputFile::operator=(InputFile&&) noexcept = default;

std::size_t InputFile::read(std::span<char> room) {
  std::size_t filled = 0;
  while (filled < room.size() && !open_->ended) {
    const ssize_t got = ::read(open_->handle, room.data() + filled, room.size() - filled);
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) throw Refusal(storage_problem(open_->name, "cannot be read", errno));
    open_->ended = got == 0;
    filled += static_cast<std::size_t>(got);
  }
  open_->digest.add({room.data(), filled});
  if (open_->meter) open_->meter->read += filled;
  return filled;
}

std::size_t InputFile::size() const {
  struct stat status {};
  const bool known = ::fstat(open_->handle, &status) == 0 && status.st_size > 0;
  return known ? static_cast<std::size_t>(status.st_size) : 0;
}

std::size_t InputFile::chunk(std::size_t most) const {
  const std::size_t known = size();
  return known > 0 && known < most ? known + 1 : most;
}

std::string InputFile::sha256() {
  if (!open_->ended) {
    std::vector<char> rest(kChunk);
    while (read(rest) > 0) {
    }
  }
  return open_->digest.hex();
}

std::string read_whole(const SourceFile& source) {
  InputFile file(source);
  const std::size_t chunk = file.chunk(kChunk);
  std::string bytes;
  std::size_t filled = 0;
  while (true) {
    bytes.resize(filled + chunk);
    const std::size_t got = file.read({bytes.data() + filled, chunk});
    bytes.resize(filled + got);
    if (got < chunk) break;
    filled += got;
  }
  return bytes;
}

std::string sha256_of_file(const SourceFile& source) { return InputFile(source).sha256(); }

std::string sha256_of(std::string_view bytes) {
  Digest digest;
  digest.add(bytes);
  return digest.hex();
}

}  // namespace squaredig::formats

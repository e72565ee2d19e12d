// Where libFuzzer enters, for every fuzzer: its bytes become a file that is read.
#include <gdal_priv.h>
#include <ogr_spatialref.h>
#include <unistd.h>

#include <filesystem>
#include <string>

#include "fuzz/fuzz_target.h"

using namespace squaredig;

namespace {

// One file for all inputs, in TMPDIR: a name that leads to it, as some libraries follow links to a
// file without one to nowhere. run.sh keeps it in memory.
class OneFile {
 public:
  OneFile() : path_((std::filesystem::temp_directory_path() / "squaredig-fuzz-XXXXXX").string()) {
    handle_ = mkstemp(path_.data());
    fuzz::wanted(handle_ >= 0);
  }
  ~OneFile() { unlink(path_.c_str()); }
  OneFile(const OneFile&) = delete;
  OneFile& operator=(const OneFile&) = delete;

  const std::string& path() const { return path_; }
  void hold(const std::uint8_t* data, std::size_t size) const {
    fuzz::wanted(ftruncate(handle_, 0) == 0 &&
                 pwrite(handle_, data, size, 0) == static_cast<ssize_t>(size));
  }

 private:
  std::string path_;
  int handle_;
};

const OneFile& the_file() {
  static const OneFile file;
  return file;
}

}  // namespace

// What the libraries do once, done before the time of the first input is taken.
extern "C" int LLVMFuzzerInitialize(int* /*count*/, char*** /*arguments*/) {
  GDALAllRegister();
  OGRSpatialReference system;
  fuzz::wanted(system.importFromEPSG(2157) == OGRERR_NONE);
  the_file();
  return 0;
}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  the_file().hold(data, size);
  formats::SourceFile source;
  source.path = the_file().path();
  source.name = "fuzz";
  // a local grid takes every system as it stands, the other holds each against its own
  source.grid = size % 2 == 0 ? formats::GridWanted{} : formats::GridWanted{2157, 5731};
  if (size % 3 == 0) source.codes = {"GL", "2"};
  fuzz::read_input(source);
  return 0;
}

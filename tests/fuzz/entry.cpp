// Where libFuzzer enters, for every fuzzer: its bytes become a file in memory that is read.
#include <gdal_priv.h>
#include <ogr_spatialref.h>
#include <sys/mman.h>
#include <unistd.h>

#include <string>

#include "fuzz/fuzz_target.h"

using namespace squaredig;

namespace {

// One file for all inputs: making and opening one anew costs more than most readings.
int memory_file() {
  static const int handle = memfd_create("fuzz", 0);
  return handle;
}

}  // namespace

// What the libraries do once, done before the time of the first input is taken.
extern "C" int LLVMFuzzerInitialize(int* /*count*/, char*** /*arguments*/) {
  GDALAllRegister();
  OGRSpatialReference system;
  fuzz::wanted(system.importFromEPSG(2157) == OGRERR_NONE && memory_file() >= 0);
  return 0;
}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const int handle = memory_file();
  fuzz::wanted(ftruncate(handle, 0) == 0 &&
               pwrite(handle, data, size, 0) == static_cast<ssize_t>(size));
  formats::SourceFile source;
  source.path = "/proc/self/fd/" + std::to_string(handle);
  source.name = "fuzz";
  // a local grid takes every system as it stands, the other holds each against its own
  source.grid = size % 2 == 0 ? formats::GridWanted{} : formats::GridWanted{2157, 5731};
  fuzz::read_input(source);
  return 0;
}

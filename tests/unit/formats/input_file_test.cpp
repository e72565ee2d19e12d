#include "formats/input_file.h"

#include <gtest/gtest.h>

#include "unit/formats/text_file.h"

namespace squaredig::formats {
namespace {

// NIST FIPS 180-4 example values for SHA-256 of "abc" and of the empty message (from memory; they
// are also what `sha256sum` prints).
TEST(InputFile, HashesAsPublished) {
  EXPECT_EQ(sha256_of("abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  EXPECT_EQ(sha256_of(""), "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}

TEST(InputFile, ReadsAllBytesAndHashesThemOnTheWay) {
  std::string bytes;
  for (int i = 0; i < 3000000; ++i) bytes.push_back(static_cast<char>(i * 31));
  const SourceFile source = squaredig::testing::text_file(bytes, "big.bin");
  EXPECT_EQ(read_whole(source), bytes);
  EXPECT_EQ(sha256_of_file(source), sha256_of(bytes));
  InputFile file(source);
  std::string part(100, ' ');
  EXPECT_EQ(file.read(part), 100U);
  EXPECT_EQ(part, bytes.substr(0, 100));
  EXPECT_EQ(file.sha256(), sha256_of(bytes));
}

// Less than the chunk is read at the end of the file alone: of an empty one, a small one and one of
// just the most.
TEST(InputFile, TheChunkOfASmallFileIsTheFile) {
  for (const std::size_t size : {0U, 1U, 99U, 100U, 101U, 250U}) {
    const InputFile file(squaredig::testing::text_file(std::string(size, 'x'), "small.bin"));
    EXPECT_EQ(file.chunk(100), size == 0 || size >= 100 ? 100U : size + 1) << size;
  }
}

TEST(InputFile, MissingFileAndFolderAreFaultsOfStorage) {
  for (const std::string& path : {std::string("/no/such/file.csv"), ::testing::TempDir()}) {
    try {
      read_whole({path, "ground.csv"});
      FAIL() << path;
    } catch (const Refusal& refusal) {
      EXPECT_EQ(refusal.problems().front().kind, ProblemKind::Storage);
      EXPECT_EQ(refusal.problems().front().text().rfind("ground.csv:1:1: cannot be ", 0), 0U);
    }
  }
}

}  // namespace
}  // namespace squaredig::formats

#include "app/output_set.h"

#include <sys/stat.h>

#include <algorithm>
#include <system_error>

#include "app/parallel.h"
#include "app/unix_file.h"

namespace squaredig::app {
namespace {

namespace fs = std::filesystem;

// The sibling that is filled. One fixed name: whoever holds the lock on the parent folder owns it,
// so what lies there from a killed run can be removed without asking.
fs::path sibling_of(const fs::path& out) {
  return out.parent_path() / ("." + out.filename().string() + ".squaredig-filling");
}

// The output folder as a full path without links, so that it has a parent and a name.
fs::path resolved(const fs::path& out) {
  std::error_code error;
  fs::path full = fs::absolute(out, error).lexically_normal();
  if (!error && !full.has_filename()) full = full.parent_path();  // "out/"
  fs::path real = fs::canonical(full, error);
  if (!error) return real;
  if (fs::is_symlink(fs::symlink_status(full, error)))
    refuse_storage(full, "a link to nowhere", "a folder for the results",
                   "remove the link or choose another --out");
  if (full == full.root_path() || !full.has_filename())
    refuse_storage(full, "the root folder", "a folder for the results alone",
                   "choose another --out");
  return full;
}

void check_parent(const fs::path& out) {
  std::error_code error;
  if (!fs::is_directory(out.parent_path(), error))
    refuse_storage(out.parent_path(), "no such folder",
                   "the folder in which the output folder is made",
                   "create it or choose another --out");
}

// The names of the files that lie in the output folder already. A folder inside could not be
// carried over by hard links, and would mean that this is somebody's working folder.
std::vector<std::string> earlier_files(const fs::path& out) {
  std::error_code error;
  const auto status = fs::status(out, error);
  if (!fs::exists(status)) return {};
  if (!fs::is_directory(status))
    refuse_storage(out, "a file of that name", "a folder for the results", "choose another --out");
  std::vector<std::string> names;
  for (fs::directory_iterator it(out, error), end; !error && it != end; it.increment(error)) {
    if (!it->is_regular_file(error) || it->is_symlink(error))
      refuse_storage(it->path(), "not a plain file", "an output folder that holds results alone",
                     "move it away or choose another --out");
    names.push_back(it->path().filename().string());
  }
  if (error) {
    errno = error.value();
    refuse_storage(out, "reading the folder");
  }
  std::sort(names.begin(), names.end());
  return names;
}

void remove_sibling(const fs::path& sibling) {
  std::error_code error;
  fs::remove_all(sibling, error);
  if (error) {
    errno = error.value();
    refuse_storage(sibling, "removing what an earlier run left");
  }
}

// Removes the sibling when filling it fails, so that a full disk is not left fuller.
class Sibling {
 public:
  explicit Sibling(fs::path path) : path_(std::move(path)) {
    remove_sibling(path_);
    if (::mkdir(path_.c_str(), 0777) != 0) refuse_storage(path_, "creating the folder");
  }
  Sibling(const Sibling&) = delete;
  Sibling& operator=(const Sibling&) = delete;
  ~Sibling() {
    std::error_code ignored;  // what stays is removed by the next run
    fs::remove_all(path_, ignored);
  }
  const fs::path& path() const { return path_; }

 private:
  fs::path path_;
};

Descriptor written_file(const fs::path& path, std::string_view bytes) {
  Descriptor file = Descriptor::create_file(path);
  file.write_all(bytes);
  file.begin_flush();
  return file;
}

Descriptor written_file(const fs::path& path, const formats::FilePieces& pieces, unsigned threads) {
  Descriptor file = Descriptor::create_file(path);
  take_in_order(pieces, threads, [&](std::string_view bytes) {
    file.write_all(bytes);
    file.begin_flush();
  });
  return file;
}

void flush_all(std::vector<Descriptor>& files) {
  for (Descriptor& file : files) {
    file.flush();
    file.close();
  }
}

void keep_mode(const fs::path& out, const Descriptor& folder) {
  struct stat earlier = {};
  if (::stat(out.c_str(), &earlier) == 0) folder.take_mode(earlier.st_mode & 07777);
}

}  // namespace

void OutputSet::add(std::string name, std::string bytes) {
  owned_.push_back(name);
  files_.insert_or_assign(std::move(name), std::move(bytes));
}

void OutputSet::add(std::string name, formats::FilePieces pieces) {
  owned_.push_back(name);
  large_files_.insert_or_assign(std::move(name), std::move(pieces));
}

// All are written before the first is waited for: the disk takes them together.
void OutputSet::write_files(const fs::path& folder) const {
  std::vector<Descriptor> written;
  for (const auto& [name, bytes] : files_) written.push_back(written_file(folder / name, bytes));
  flush_all(written);
}

void OutputSet::write_large_files(const fs::path& folder, unsigned threads) const {
  std::vector<Descriptor> written;
  for (const auto& [name, pieces] : large_files_)
    written.push_back(written_file(folder / name, pieces, threads));
  flush_all(written);
}

void OutputSet::commit(unsigned threads) const {
  const fs::path out = resolved(out_);
  check_parent(out);
  const Descriptor parent = Descriptor::open_folder(out.parent_path());
  parent.lock();
  const auto earlier = earlier_files(out);
  const Sibling sibling(sibling_of(out));
  for (const auto& name : earlier)
    if (std::find(owned_.begin(), owned_.end(), name) == owned_.end())
      link_or_copy(out / name, sibling.path() / name);
  // what waits for the disk keeps nobody from making the large ones
  together(threads)(
      {[&] { write_large_files(sibling.path(), threads); }, [&] { write_files(sibling.path()); }});
  const Descriptor folder = Descriptor::open_folder(sibling.path());
  keep_mode(out, folder);
  folder.flush();
  swap_in(sibling.path(), out);
  parent.flush();
}

}  // namespace squaredig::app

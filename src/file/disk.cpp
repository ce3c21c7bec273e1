#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <sstream>

#include "file/document.h"

namespace kw {
namespace {

// What the system says; in its own words where it is something rare.
Message reason_of(int error) {
    switch (error) {
        case ENOSPC: return Message::say("disk.no_space");
        case EDQUOT: return Message::say("disk.no_quota");
        case EACCES: return Message::say("disk.no_right");
        case EPERM: return Message::say("disk.not_permitted");
        case EROFS: return Message::say("disk.read_only");
        case ENOENT: return Message::say("disk.not_there");
        case ENOTDIR: return Message::say("disk.no_folder");
        case EISDIR: return Message::say("disk.is_folder");
        case EIO: return Message::say("disk.broken");
        default: return Message::of(std::strerror(error));
    }
}

FileError disk_error(const char* what) {
    const int error = errno;
    return {{}, Message::of(Message::say(what), ": ", reason_of(error)), Message::say("disk.look_at_rights")};
}

bool write_all(int file, const std::string& text) {
    std::size_t done = 0;
    while (done < text.size()) {
        const ssize_t wrote = ::write(file, text.data() + done, text.size() - done);
        if (wrote < 0 && errno == EINTR) continue;
        if (wrote <= 0) return false;
        done += static_cast<std::size_t>(wrote);
    }
    return true;
}

// A rename is only on the disk when its folder is.
void sync_folder(const std::filesystem::path& folder) {
    const int handle = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (handle < 0) return;
    ::fsync(handle);
    ::close(handle);
}

std::filesystem::path folder_of(const std::filesystem::path& path) {
    return path.has_parent_path() ? path.parent_path() : ".";
}

// Of a link, what it points to.
std::filesystem::path target_of(const std::filesystem::path& path) {
    std::error_code ignored;
    return std::filesystem::is_symlink(path, ignored) ? std::filesystem::canonical(path, ignored) : path;
}

// Held while a file of the folder is looked at and replaced: of two of us one waits. Where a file system knows no locks there is none.
class FolderLock {
public:
    explicit FolderLock(const std::filesystem::path& folder)
        : handle_(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC)) {
        while (handle_ >= 0 && ::flock(handle_, LOCK_EX) != 0 && errno == EINTR) {}
    }
    ~FolderLock() {
        if (handle_ >= 0) ::close(handle_);
    }
    FolderLock(const FolderLock&) = delete;
    FolderLock& operator=(const FolderLock&) = delete;

private:
    int handle_;
};

}  // namespace

tl::expected<std::string, FileError> read_file(const std::filesystem::path& path) {
    std::ifstream in(path, std::ios::binary);
    std::ostringstream text;
    if (!in || std::filesystem::is_directory(path) || !(text << in.rdbuf()))
        return tl::unexpected(
            FileError{{}, Message::say("disk.not_read"), Message::say("disk.look_at_name")});
    return text.str();
}

tl::expected<void, FileError> save_file(const std::filesystem::path& path, const std::string& text) {
    // A link stays a link: what it points to is replaced.
    const std::filesystem::path target = target_of(path);
    const std::filesystem::path folder = folder_of(target);
    std::string aside = (folder / ("." + target.filename().string() + ".XXXXXX")).string();
    const int file = ::mkstemp(aside.data());
    if (file < 0) return tl::unexpected(disk_error("disk.nothing_beside"));
    ::fchmod(file, 0644);
    const bool written = write_all(file, text) && ::fsync(file) == 0;
    const bool closed = ::close(file) == 0;
    if (!written || !closed || ::rename(aside.c_str(), target.c_str()) != 0) {
        const FileError error = disk_error("disk.not_saved");
        ::unlink(aside.c_str());
        return tl::unexpected(error);
    }
    sync_folder(folder);
    return {};
}

tl::expected<void, FileError> save_over(const std::filesystem::path& path, const std::string& read,
                                        const std::string& text) {
    const FolderLock lock(folder_of(target_of(path)));
    const auto now = read_file(path);
    if (!now) return tl::unexpected(now.error());
    if (*now != read)
        return tl::unexpected(FileError{
            {}, Message::say("disk.changed_meanwhile"), Message::say("disk.begin_with_what_it_says")});
    return save_file(path, text);
}

}  // namespace kw

#include "file_write.hpp"

#include "error.hpp"
#include "printable.hpp"

#include <cerrno>
#include <cstdio>
#include <fcntl.h>
#include <filesystem>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>
#include <utility>

namespace sim {

namespace {

constexpr std::size_t buffer_size = 1U << 16U;
constexpr mode_t readable_and_writable = 0666; // less what the user's mask takes away

int open_file(const std::string& path, int how)
{
    // NOLINTNEXTLINE(cppcoreguidelines-pro-type-vararg): the system's interface is like this
    return ::open(path.c_str(), how | O_WRONLY | O_CLOEXEC, readable_and_writable);
}

/// The name under which the system shows an open file.
std::string name_of_open(int descriptor)
{
    return "/proc/self/fd/" + std::to_string(descriptor);
}

/// Opens a file that has no name yet in a folder; -1 where there is no such thing.
int open_nameless([[maybe_unused]] const std::string& folder)
{
#ifdef O_TMPFILE
    const int descriptor = open_file(folder, O_TMPFILE);
    if (descriptor >= 0 && ::access(name_of_open(descriptor).c_str(), F_OK) != 0) {
        ::close(descriptor); // it could not be given a name later
        return -1;
    }
    return descriptor;
#else
    return -1;
#endif
}

/// A name in the folder that nothing else uses, for the `number`th try.
std::string hidden_name(const std::string& folder, int number)
{
    return folder + "/.standpipe-" + std::to_string(::getpid()) + "-" + std::to_string(number);
}

constexpr int most_tries = 100;

std::string folder_of(const std::string& path)
{
    const auto folder = std::filesystem::path(path).parent_path().string();
    return folder.empty() ? "." : folder;
}

/// The path with symbolic links followed, so that a link is not replaced by a file.
std::string followed(const std::string& path)
{
    std::error_code trouble;
    const auto real = std::filesystem::canonical(path, trouble);
    return trouble ? path : real.string();
}

} // namespace

FileWriter::FileWriter(std::string path) : path_(std::move(path))
{
    struct stat found = {};
    const bool exists = ::stat(path_.c_str(), &found) == 0;
    if (exists && !S_ISREG(found.st_mode)) {
        descriptor_ = open_file(path_, 0);
        if (descriptor_ < 0) {
            fail();
        }
        return;
    }
    if (exists && ::access(path_.c_str(), W_OK) != 0) {
        fail();
    }
    if (path_.empty() || path_.back() == '/') {
        errno = path_.empty() ? ENOENT : EISDIR;
        fail();
    }
    target_ = followed(path_);
    open_beside();
    if (exists) {
        ::fchmod(descriptor_, found.st_mode & 07777U); // a shared file stays shared
    }
}

FileWriter::~FileWriter()
{
    if (descriptor_ >= 0) {
        ::close(descriptor_);
    }
    if (!beside_.empty()) {
        ::unlink(beside_.c_str());
    }
}

void FileWriter::fail() const
{
    throw RequestError("cannot write " + in_quotes(path_) + ": " +
                       std::generic_category().message(errno));
}

void FileWriter::open_beside()
{
    const std::string folder = folder_of(target_);
    descriptor_ = open_nameless(folder);
    for (int number = 0; descriptor_ < 0 && number < most_tries; ++number) {
        const std::string name = hidden_name(folder, number);
        descriptor_ = open_file(name, O_CREAT | O_EXCL);
        if (descriptor_ >= 0) {
            beside_ = name;
        } else if (errno != EEXIST) {
            fail();
        }
    }
    if (descriptor_ < 0) {
        fail();
    }
}

void FileWriter::write(std::string_view text)
{
    buffer_ += text;
    if (buffer_.size() >= buffer_size) {
        flush();
    }
}

void FileWriter::flush()
{
    std::string_view rest = buffer_;
    while (!rest.empty()) {
        const ssize_t written = ::write(descriptor_, rest.data(), rest.size());
        if (written < 0 && errno != EINTR) {
            fail();
        }
        rest.remove_prefix(written < 0 ? 0 : static_cast<std::size_t>(written));
    }
    buffer_.clear();
}

void FileWriter::name_it()
{
    const std::string open_name = name_of_open(descriptor_);
    for (int number = 0; beside_.empty() && number < most_tries; ++number) {
        const std::string name = hidden_name(folder_of(target_), number);
        if (::linkat(AT_FDCWD, open_name.c_str(), AT_FDCWD, name.c_str(), AT_SYMLINK_FOLLOW) == 0) {
            beside_ = name;
        } else if (errno != EEXIST) {
            fail();
        }
    }
    if (beside_.empty()) {
        fail();
    }
}

void FileWriter::commit()
{
    flush();
    if (!target_.empty()) {
        if (::fsync(descriptor_) != 0) {
            fail();
        }
        name_it();
        if (std::rename(beside_.c_str(), target_.c_str()) != 0) {
            fail();
        }
        beside_.clear();
    }
    if (::close(std::exchange(descriptor_, -1)) != 0) {
        fail();
    }
}

void atomic_write(const std::string& path, std::string_view text)
{
    FileWriter file(path);
    file.write(text);
    file.commit();
}

} // namespace sim

#pragma once

#include <string>
#include <string_view>

namespace sim {

/// A file that appears whole when `commit` is called, or not at all.
///
/// Until then what stood at the path stays. What is written goes to a file without a name on the
/// same file system where there is such a thing, so that nothing is left behind even when the
/// program is killed; else to a hidden file beside it. A path that is no regular file, such as a
/// terminal or a pipe, is written at once.
class FileWriter {
public:
    /// throws:  RequestError when the path cannot be written
    explicit FileWriter(std::string path);
    FileWriter(const FileWriter&) = delete;
    FileWriter& operator=(const FileWriter&) = delete;
    FileWriter(FileWriter&&) = delete;
    FileWriter& operator=(FileWriter&&) = delete;
    ~FileWriter();

    /// throws:  RequestError when there is no room, or the device fails
    void write(std::string_view text);

    /// Brings everything to the disk, then puts it in the place of what stood at the path.
    ///
    /// throws:  RequestError when that fails; what stood at the path is then untouched
    void commit();

private:
    void open_beside();
    void flush();
    void name_it();
    [[noreturn]] void fail() const;

    std::string path_;
    std::string target_; ///< the path with links followed; empty when it is written at once
    std::string beside_; ///< the hidden file; empty when there is none
    std::string buffer_;
    int descriptor_ = -1;
};

/// Writes a whole file, replacing what stood there in one step.
///
/// throws:  RequestError when it cannot be written; what stood at the path is then untouched
void atomic_write(const std::string& path, std::string_view text);

} // namespace sim

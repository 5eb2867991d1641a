#include "sim/file_write.hpp"
#include "sim/error.hpp"
#include "tests/temporary_folder.hpp"

#include <doctest/doctest.h>

#include <csignal>
#include <functional>
#include <sys/resource.h>
#include <sys/stat.h>

using namespace sim;

namespace {

std::string refusal(const std::function<void()>& action)
{
    try {
        action();
    } catch (const RequestError& error) {
        return error.what();
    }
    return "done";
}

/// Lets no file of this process grow beyond a size, as on a disk that is full.
class FileSizeLimit {
public:
    explicit FileSizeLimit(rlim_t bytes)
    {
        ::getrlimit(RLIMIT_FSIZE, &before_);
        const rlimit limit{bytes, before_.rlim_max};
        ::setrlimit(RLIMIT_FSIZE, &limit);
        handler_ = std::signal(SIGXFSZ, SIG_IGN);
    }
    FileSizeLimit(const FileSizeLimit&) = delete;
    FileSizeLimit& operator=(const FileSizeLimit&) = delete;
    FileSizeLimit(FileSizeLimit&&) = delete;
    FileSizeLimit& operator=(FileSizeLimit&&) = delete;
    ~FileSizeLimit()
    {
        ::setrlimit(RLIMIT_FSIZE, &before_);
        std::signal(SIGXFSZ, handler_);
    }

private:
    rlimit before_{};
    void (*handler_)(int) = SIG_DFL;
};

} // namespace

TEST_SUITE_BEGIN("sim");

TEST_CASE("a file is written whole and replaces the one before")
{
    const TemporaryFolder folder;
    atomic_write(folder.file("sheet.json"), "first");
    CHECK(folder.text_of("sheet.json") == "first");
    const std::string long_text(300'000, 'x'); // several buffers
    atomic_write(folder.file("sheet.json"), long_text);
    CHECK(folder.text_of("sheet.json") == long_text);
    CHECK(folder.count() == 1);
}

TEST_CASE("before a commit nothing of a file is there, and without one nothing comes")
{
    const TemporaryFolder folder;
    REQUIRE(folder.with("trace.csv", "old") == folder.file("trace.csv"));
    {
        FileWriter file(folder.file("trace.csv"));
        file.write(std::string(200'000, 'x'));
        CHECK(folder.text_of("trace.csv") == "old");
    }
    CHECK(folder.text_of("trace.csv") == "old");
    CHECK(folder.count() == 1);
}

TEST_CASE("a file that cannot grow is refused and the old one stays")
{
    const TemporaryFolder folder;
    REQUIRE(folder.with("trace.csv", "old") == folder.file("trace.csv"));
    {
        const FileSizeLimit full(100'000);
        CHECK(refusal([&] { atomic_write(folder.file("trace.csv"), std::string(200'000, 'x')); }) ==
              "cannot write \"" + folder.file("trace.csv") + "\": File too large");
    }
    CHECK(folder.text_of("trace.csv") == "old");
    CHECK(folder.count() == 1);
}

TEST_CASE("paths that cannot be written are refused with the reason")
{
    const TemporaryFolder folder;
    const auto refused = [](const std::string& path) {
        return refusal([&] { atomic_write(path, "text"); });
    };
    CHECK(refused("") == "cannot write \"\": No such file or directory");
    CHECK(refused("/dev/full") == "cannot write \"/dev/full\": No space left on device");
    CHECK(refused(folder.file("")) == "cannot write \"" + folder.file("") + "\": Is a directory");
    CHECK(refused(folder.file("no/a.csv")) ==
          "cannot write \"" + folder.file("no/a.csv") + "\": No such file or directory");
    const std::string long_name = folder.file(std::string(300, 'n'));
    CHECK(refused(long_name).ends_with("\": File name too long"));
    CHECK(folder.count() == 0);
}

TEST_CASE("a device is written to and not replaced")
{
    atomic_write("/dev/null", "text");
    CHECK(std::filesystem::is_character_file("/dev/null"));
}

TEST_CASE("a link stays a link, and a file keeps its permissions")
{
    const TemporaryFolder folder;
    const std::string real = folder.with("real.csv", "old");
    std::filesystem::permissions(real, std::filesystem::perms{0640});
    std::filesystem::create_symlink("real.csv", folder.file("link.csv"));
    atomic_write(folder.file("link.csv"), "new");
    CHECK(std::filesystem::is_symlink(folder.file("link.csv")));
    CHECK(folder.text_of("real.csv") == "new");
    CHECK(std::filesystem::status(real).permissions() == std::filesystem::perms{0640});
}

TEST_CASE("a new file has the permissions that the user's mask leaves")
{
    const TemporaryFolder folder;
    const mode_t mask = ::umask(0027);
    atomic_write(folder.file("new.csv"), "text");
    ::umask(mask);
    CHECK(std::filesystem::status(folder.file("new.csv")).permissions() ==
          std::filesystem::perms{0640});
}

TEST_SUITE_END();

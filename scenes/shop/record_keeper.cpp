#include "scenes/shop/record.hpp"

#include "scenes/shop/action_json.hpp"
#include "scenes/shop/record_text.hpp"
#include "sim/error.hpp"
#include "sim/printable.hpp"

#include <cerrno>
#include <fcntl.h>
#include <sys/file.h>
#include <system_error>
#include <unistd.h>
#include <utility>

// Writing records; record.cpp reads them.

namespace shop {
namespace {

constexpr mode_t readable_and_writable = 0666; // less what the user's mask takes away

[[noreturn]] void fail(const std::string& path, int error)
{
    throw sim::RequestError("cannot write the record " + sim::in_quotes(path) + ": " +
                            std::generic_category().message(error));
}

int open_file(const std::string& path, int how)
{
    const int descriptor =
        ::open(path.c_str(), how | O_WRONLY | O_APPEND | O_CLOEXEC, readable_and_writable);
    if (descriptor < 0) {
        fail(path, errno);
    }
    if (::flock(descriptor, LOCK_EX | LOCK_NB) != 0) {
        ::close(descriptor);
        throw sim::RequestError("the record " + sim::in_quotes(path) +
                                " is being written by another window");
    }
    return descriptor;
}

std::string line_text(const nlohmann::ordered_json& json, std::uint64_t& chain)
{
    std::string body = json.dump();
    chain = chained(body, chain);
    body.pop_back();
    return body + ",\"sum\":\"" + hex_of(chain) + "\"}\n";
}

nlohmann::ordered_json observation_json(const Observation& seen)
{
    auto json = nlohmann::ordered_json::object();
    if (seen.number) {
        json["number"] = *seen.number;
    } else if (seen.word) {
        json["word"] = *seen.word;
    }
    return json;
}

} // namespace

RecordKeeper RecordKeeper::begin(const std::string& path, const RecordHead& head)
{
    RecordKeeper keeper(path, open_file(path, O_CREAT | O_EXCL), 0, 0);
    keeper.write(line_text({{"record", 1},
                            {"order", head.order},
                            {"order_sum", hex_of(head.sum)},
                            {"seed", hex_of(head.seed)},
                            {"student", head.student}},
                           keeper.chain_));
    return keeper;
}

RecordKeeper RecordKeeper::resume(const std::string& path, Record& record)
{
    const int descriptor = open_file(path, 0);
    try {
        record = load_record(path);
    } catch (...) {
        ::close(descriptor);
        throw;
    }
    if (::ftruncate(descriptor, static_cast<off_t>(record.whole_bytes)) != 0) {
        const int error = errno;
        ::close(descriptor);
        fail(path, error);
    }
    return {path, descriptor, record.chain, record.lines.size()};
}

RecordKeeper::RecordKeeper(RecordKeeper&& other) noexcept
    : path_(std::move(other.path_)),
      descriptor_(std::exchange(other.descriptor_, -1)),
      chain_(other.chain_),
      count_(other.count_)
{
}

RecordKeeper& RecordKeeper::operator=(RecordKeeper&& other) noexcept
{
    std::swap(path_, other.path_);
    std::swap(descriptor_, other.descriptor_);
    chain_ = other.chain_;
    count_ = other.count_;
    return *this;
}

RecordKeeper::~RecordKeeper()
{
    if (descriptor_ >= 0) {
        ::close(descriptor_);
    }
}

void RecordKeeper::append(const JobLine& line)
{
    nlohmann::ordered_json json;
    json["n"] = count_ + 1;
    json["action"] = action_json(line.action);
    json["read"] = nlohmann::ordered_json::array();
    for (const Observation& seen : line.observations) {
        json["read"].push_back(observation_json(seen));
    }
    std::uint64_t chain = chain_;
    write(line_text(json, chain));
    chain_ = chain;
    ++count_;
}

/// One write of a whole line, so that a crash leaves it or a piece that has no end. What a full
/// disk has left of it is taken back.
void RecordKeeper::write(const std::string& text)
{
    const off_t before = ::lseek(descriptor_, 0, SEEK_END);
    for (std::size_t done = 0; done < text.size();) {
        const auto count = ::write(descriptor_, text.data() + done, text.size() - done);
        if (count < 0 && errno == EINTR) {
            continue;
        }
        if (count <= 0) {
            const int error = errno;
            if (before < 0 || ::ftruncate(descriptor_, before) != 0) {
                ::close(std::exchange(descriptor_, -1)); // nothing more can be trusted to it
            }
            fail(path_, error);
        }
        done += static_cast<std::size_t>(count);
    }
    if (::fsync(descriptor_) != 0 && errno != EINVAL) { // EINVAL: no disk behind it, such as a pipe
        fail(path_, errno);
    }
}

} // namespace shop

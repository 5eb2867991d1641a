#include "tools.hpp"

#include "../temporary_folder.hpp"
#include "scenes/present/chance.hpp"
#include "scenes/shop/record.hpp"

#include <array>
#include <csignal>
#include <sys/wait.h>
#include <unistd.h>

using namespace shop;

namespace {

/// Looks at the machine again and again; what has been done is told on a pipe after it was kept.
[[noreturn]] void work_until_killed(const std::string& path, int told)
{
    const auto order = tests::small_order();
    Record record;
    Attempt attempt(order, order->seed);
    RecordKeeper keeper = RecordKeeper::resume(path, record);
    replay(record, path, attempt);
    for (;;) {
        attempt.perform(attempt.lines().size() % 2 == 0
                            ? Action(Suspect{{"main_jet_plugged"}})
                            : Action(DoCheck{"look_round", {"vapour"}}));
        keeper.append(attempt.lines().back());
        const char done = '.';
        if (::write(told, &done, 1) != 1) {
            ::_exit(1);
        }
    }
}

/// Has a child work, kills it after a time, and gives how many actions it told of.
std::size_t worked_and_killed(const std::string& path, useconds_t after)
{
    std::array<int, 2> ends{};
    REQUIRE(::pipe(ends.data()) == 0);
    const pid_t child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        ::close(ends[0]);
        try {
            work_until_killed(path, ends[1]);
        } catch (...) {
            ::_exit(1);
        }
    }
    ::close(ends[1]);
    ::usleep(after);
    ::kill(child, SIGKILL);
    int status = 0;
    ::waitpid(child, &status, 0);
    CHECK(WIFSIGNALED(status)); // it did not end by itself
    std::size_t count = 0;
    for (char each = 0; ::read(ends[0], &each, 1) == 1;) {
        ++count;
    }
    ::close(ends[0]);
    return count;
}

} // namespace

TEST_SUITE_BEGIN("long");

TEST_CASE("killed at two hundred moments an attempt resumes each time with every finished action")
{
    const TemporaryFolder folder;
    tests::small_order(); // loaded once, before the children
    std::size_t finished = 0;
    std::size_t restarts = 0;
    std::string path;
    for (std::uint64_t kill = 0; kill < 200; ++kill) {
        if (kill % 10 == 0) { // a new one now and then, so that replays stay short
            path = folder.file("record-" + std::to_string(kill) + ".jsonl");
            const auto order = tests::small_order();
            RecordKeeper::begin(path, {order->id, order->sum, order->seed, "Bench 4"});
            finished = 0;
        }
        const auto moment = static_cast<useconds_t>(4e4 * scenes::chance(11, kill) *
                                                    (1.0 + static_cast<double>(kill % 10)));
        finished += worked_and_killed(path, moment);
        const Record record = load_record(path);
        CAPTURE(kill);
        // One more may have been kept, and the kill come before it was told.
        CHECK(record.lines.size() >= finished);
        CHECK(record.lines.size() <= finished + 1);
        finished = record.lines.size();
        restarts += finished > 0 ? 1 : 0;
        const auto order = tests::small_order();
        Attempt attempt(order, record.head.seed);
        replay(record, path, attempt);
        CHECK(attempt.lines().size() == finished);
    }
    CHECK(restarts > 100); // the kills met work, not only its beginning
}

TEST_SUITE_END();

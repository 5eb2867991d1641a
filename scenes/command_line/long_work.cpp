#include "scenes/command_line/long_work.hpp"

#include <algorithm>
#include <csignal>
#include <thread>
#include <unistd.h>

namespace scenes {
namespace {

/// The one thing a signal's handler may touch.
std::atomic<bool> was_interrupted = false;

void interrupt(int /*signal*/)
{
    was_interrupted = true;
}

/// At a terminal one line grows; in a log a line stands for every tenth.
constexpr std::size_t steps_in_log = 10;

} // namespace

LongWork::LongWork(std::ostream& out, std::string name)
    : out_(out), name_(std::move(name)), is_terminal_(::isatty(STDERR_FILENO) != 0)
{
    was_interrupted = false;
    earlier_ = std::signal(SIGINT, interrupt);
}

LongWork::~LongWork()
{
    std::signal(SIGINT, earlier_);
    if (is_told_ && is_terminal_) {
        out_ << '\n' << std::flush;
    }
}

const std::atomic<bool>& LongWork::is_cancelled() const
{
    return was_interrupted;
}

void LongWork::progress(std::size_t done, std::size_t all)
{
    const std::size_t steps = is_terminal_ ? 100 : steps_in_log;
    const std::size_t step = all == 0 ? steps : done * steps / all;
    if (is_told_ && step == told_) {
        return;
    }
    told_ = step;
    is_told_ = true;
    out_ << (is_terminal_ ? "\r" : "") << name_ << ": " << done << " of " << all
         << (is_terminal_ ? "" : "\n") << std::flush;
}

unsigned usual_threads()
{
    return std::max(std::thread::hardware_concurrency(), 1U);
}

} // namespace scenes

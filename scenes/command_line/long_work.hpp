#pragma once

#include <atomic>
#include <ostream>
#include <string>

namespace scenes {

/// Long work at a terminal: says how far it is, and stops in good order when the person interrupts
/// it (Ctrl-C).
class LongWork {
public:
    /// Watches for interrupts as long as it lives; `name` stands before the progress.
    LongWork(std::ostream& out, std::string name);
    LongWork(const LongWork&) = delete;
    LongWork& operator=(const LongWork&) = delete;
    LongWork(LongWork&&) = delete;
    LongWork& operator=(LongWork&&) = delete;
    ~LongWork();

    [[nodiscard]] const std::atomic<bool>& is_cancelled() const;
    /// Says so, at most once for each per cent.
    void progress(std::size_t done, std::size_t all);

private:
    std::ostream& out_;
    std::string name_;
    std::size_t told_ = 0;
    bool is_told_ = false;
    bool is_terminal_ = false;
    void (*earlier_)(int) = nullptr;
};

/// How many threads this computer can run at once.
unsigned usual_threads();

} // namespace scenes

#pragma once

#include "scenes/shop/observation.hpp"
#include "scenes/shop/order.hpp"
#include "scenes/shop/procedure_run.hpp"

#include <deque>

namespace shop {

/// A student's guess at what a reading will show, made before the check.
struct Predict {
    std::string check;
    std::string reading;
    std::string guess; ///< "lower", "sound" or "higher", or one of the reading's words
    bool operator==(const Predict&) const = default;
};
struct DoCheck {
    std::string check;
    std::vector<std::string> heeded; ///< ids of the cautions that were seen to first
    bool operator==(const DoCheck&) const = default;
};
struct DoRepair {
    std::string repair;
    std::vector<std::string> heeded;
    bool operator==(const DoRepair&) const = default;
};
/// Suspected faults, the likeliest first.
struct Suspect {
    std::vector<std::string> causes;
    bool operator==(const Suspect&) const = default;
};
/// What the student found, and the advice to the customer with an estimate for it.
struct Finding {
    std::vector<std::string> causes;
    Advice advice = Advice::clean;
    double minutes = 0.0; ///< of work, beside the search
    double money = 0.0;   ///< of parts
    std::string note;
    bool operator==(const Finding&) const = default;
};
struct HandIn {
    bool operator==(const HandIn&) const = default;
};

/// Everything a student can do with a work order.
using Action = std::variant<Predict, DoCheck, DoRepair, Suspect, Finding, HandIn>;

/// A line of the job sheet: what was done, what was read, what it took.
struct JobLine {
    Action action;
    std::vector<Observation> observations; ///< of a check, in the order of its readings
    double minutes = 0.0;
    double money = 0.0;
    bool did_harm = false; ///< not for the student's eyes before the marks
};

/// What lines took together: `&JobLine::minutes` or `&JobLine::money`.
double sum_of(std::span<const JobLine> lines, double JobLine::*member);
/// The finding that counts, the last one; null before the first.
const Finding* last_finding(const std::vector<JobLine>& lines);

/// A student's way through a work order, on a live machine.
///
/// What happens depends on the order, the seed and the actions alone. Work is done in pieces of the
/// machine's time, so that a window can show it; how it is divided changes nothing.
class Attempt {
public:
    /// The machine has its history still to go through: the attempt begins busy.
    explicit Attempt(std::shared_ptr<const Order> order, std::uint64_t seed);

    [[nodiscard]] const Order& order() const { return *order_; }
    [[nodiscard]] std::uint64_t seed() const { return seed_; }
    [[nodiscard]] sim::Simulator& machine() { return machine_; }
    [[nodiscard]] const sim::Simulator& machine() const { return machine_; }
    [[nodiscard]] const std::vector<JobLine>& lines() const { return lines_; }
    [[nodiscard]] double minutes() const;
    [[nodiscard]] double money() const;
    [[nodiscard]] bool is_handed_in() const;
    /// The last finding and ranking; null before the first.
    [[nodiscard]] const Finding* finding() const;
    [[nodiscard]] const Suspect* suspects() const;

    /// Why an action cannot be done now, in a sentence for the student; empty when it can.
    [[nodiscard]] std::string reason_against(const Action& action) const;
    /// Begins an action; one that takes no work is done at once.
    ///
    /// throws:  RequestError with the reason from `reason_against`
    void begin(const Action& action);
    /// Whether work is under way: the machine's history, or an action begun.
    [[nodiscard]] bool is_busy() const { return !work_.empty(); }
    /// The action under way; null for the history.
    [[nodiscard]] const Action* in_hand() const { return in_hand_ ? &*in_hand_ : nullptr; }
    /// Goes on with the work for so much of the machine's time at most.
    ///
    /// throws:  NumericsError
    void advance(sim::Tick ticks);
    /// Does an action from beginning to end.
    void perform(const Action& action);
    /// Goes on until nothing is under way.
    void finish();

    /// Prediction asked for before a check that has not been made yet; null when none is.
    [[nodiscard]] const Order::Ask* asks_before(std::string_view check) const;

private:
    [[nodiscard]] std::string reason(const Predict& action) const;
    [[nodiscard]] std::string reason(const DoCheck& action) const;
    [[nodiscard]] std::string reason(const DoRepair& action) const;
    [[nodiscard]] std::string reason(const Suspect& action) const;
    [[nodiscard]] std::string reason(const Finding& action) const;
    [[nodiscard]] std::string reason(const HandIn& action) const;
    void queue_beginning(std::string_view id);
    void begin_work(const DoCheck& action);
    void begin_work(const DoRepair& action);
    template <class Other>
    void begin_work(const Other& action);
    void end_work();
    [[nodiscard]] std::uint64_t place() const { return lines_.size(); }

    std::shared_ptr<const Order> order_;
    std::uint64_t seed_;
    sim::Simulator machine_;
    std::vector<JobLine> lines_;
    std::deque<ProcedureRun> work_;
    std::optional<Action> in_hand_;
    bool does_harm_ = false;
};

} // namespace shop

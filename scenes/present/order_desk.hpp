#pragma once

#include "scenes/present/marking_work.hpp"
#include "scenes/shop/attempt.hpp"
#include "scenes/shop/record.hpp"

#include <functional>

namespace scenes {

/// A work order on the desk: the attempt at it, its record, and its marking.
///
/// Every action that is finished is in the record before the next can begin. Work on the machine is
/// shown at a pace that begins slowly enough to be seen and grows until nobody has to wait.
class OrderDesk {
public:
    using Leave = std::function<bool()>;
    /// Where the table of an order is stored; empty for nowhere.
    using StoreOf = std::function<std::string(const shop::Order&)>;

    explicit OrderDesk(StoreOf store_of = shop::table_store) : store_of_(std::move(store_of)) {}

    /// Begins an attempt with a record of its own.
    ///
    /// throws:  RequestError when the record cannot be written; nothing is begun then
    void begin(std::shared_ptr<const shop::Order> order, const std::string& student,
               std::uint64_t seed, const std::string& record_path);
    /// Goes on with an attempt where its record ends, once that is done again.
    ///
    /// throws:  AssetError or RequestError when the record is wrong, of another order, or in use
    void resume(std::shared_ptr<const shop::Order> order, const std::string& record_path);
    /// Shows a copy of an attempt, without a record, and marks that are there already; for
    /// pictures.
    void show(const shop::Attempt& attempt, std::shared_ptr<const MarkingWork::Result> result);
    /// Puts the order away; its record stays.
    void put_away();

    [[nodiscard]] bool has_order() const { return attempt_ != nullptr; }
    /// valid:   has_order()
    [[nodiscard]] const shop::Order& order() const { return attempt_->order(); }
    [[nodiscard]] shop::Attempt& attempt() { return *attempt_; }
    [[nodiscard]] const shop::Attempt& attempt() const { return *attempt_; }
    [[nodiscard]] const std::string& student() const { return student_; }
    /// Counts the attempts that were begun or resumed.
    [[nodiscard]] int attempt_number() const { return attempt_number_; }

    /// Whether something goes on that must end before anything else can be done.
    [[nodiscard]] bool is_busy() const
    {
        return has_order() && (replay_ != nullptr || attempt_->is_busy());
    }
    [[nodiscard]] bool is_replaying() const { return replay_ != nullptr; }
    /// How many of the record's actions are done again, of how many.
    [[nodiscard]] std::size_t replayed() const { return replay_ ? replay_->done() : 0; }
    [[nodiscard]] std::size_t to_replay() const { return replay_ ? replay_->count() : 0; }
    /// Whether an action can be begun now.
    [[nodiscard]] bool is_ready() const
    {
        return has_order() && !is_busy() && trouble_.empty() && !attempt_->is_handed_in();
    }
    /// Begins an action.
    ///
    /// valid:   is_ready()
    /// throws:  RequestError with the reason when it cannot be done
    void act(const shop::Action& action);
    /// Goes on with what is under way, as long as it has leave.
    void advance(double real_seconds, const Leave& has_leave, bool is_hurried = false);
    /// Seconds on the machine's clock since what is under way began.
    [[nodiscard]] double machine_seconds() const;
    /// Works until nothing is under way.
    void finish();

    /// Why the attempt cannot be gone on with, in one line; empty while nothing is wrong.
    [[nodiscard]] const std::string& trouble() const { return trouble_; }
    /// Null when the attempt is not being marked.
    [[nodiscard]] const MarkingWork* marking() const { return marking_.get(); }
    /// Null before the marks are there.
    [[nodiscard]] std::shared_ptr<const MarkingWork::Result> result() const
    {
        return marking_ ? marking_->result() : shown_result_;
    }
    /// What was done to the machine before the student saw it, its faults included.
    [[nodiscard]] const sim::RunSheet& arrival() const { return arrival_; }
    [[nodiscard]] sim::Tick arrived_at() const { return arrived_at_; }

private:
    void take(std::unique_ptr<shop::Attempt> attempt, std::string student);
    void begin_marking(std::shared_ptr<const shop::Order> order);
    /// Gives whether all that is under way is done.
    bool go_on(sim::Tick ticks);
    void note_lines();
    void note_arrival();
    [[nodiscard]] sim::Tick piece() const;

    StoreOf store_of_;
    std::unique_ptr<shop::Attempt> attempt_;
    std::unique_ptr<shop::Replay> replay_;
    std::optional<shop::RecordKeeper> keeper_;
    std::unique_ptr<MarkingWork> marking_;
    std::shared_ptr<const MarkingWork::Result> shown_result_;
    std::string student_;
    std::string trouble_;
    std::size_t recorded_ = 0; ///< lines that are in the record
    double worked_ = 0.0;      ///< real seconds since what is under way began
    double owed_ = 0.0;        ///< ticks that the pace asks for
    sim::Tick began_at_ = 0;
    sim::RunSheet arrival_;
    sim::Tick arrived_at_ = 0;
    bool has_arrived_ = false;
    int attempt_number_ = 0;
};

} // namespace scenes

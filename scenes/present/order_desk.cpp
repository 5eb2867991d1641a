#include "scenes/present/order_desk.hpp"

#include "scenes/present/run_files.hpp"
#include "sim/error.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace scenes {
namespace {

/// The pace at first, and how it grows from second to second: a check of a minute is over in one
/// second, a night in four.
constexpr double first_pace = 20.0;
constexpr double growth = 8.0;

} // namespace

void OrderDesk::take(std::unique_ptr<shop::Attempt> attempt, std::string student)
{
    put_away();
    attempt_ = std::move(attempt);
    student_ = std::move(student);
    recorded_ = attempt_->lines().size();
    worked_ = owed_ = 0.0;
    began_at_ = 0;
    has_arrived_ = false;
    note_arrival(); // a machine without a history has it behind it
    ++attempt_number_;
}

void OrderDesk::begin_marking(std::shared_ptr<const shop::Order> order)
{
    const std::string store = store_of_(*order);
    marking_ = std::make_unique<MarkingWork>(std::move(order), store);
}

void OrderDesk::begin(std::shared_ptr<const shop::Order> order, const std::string& student,
                      std::uint64_t seed, const std::string& record_path)
{
    make_folder_for(record_path);
    auto keeper = shop::RecordKeeper::begin(record_path, {order->id, order->sum, seed, student});
    take(std::make_unique<shop::Attempt>(order, seed), student);
    keeper_ = std::move(keeper);
    begin_marking(std::move(order));
}

void OrderDesk::resume(std::shared_ptr<const shop::Order> order, const std::string& record_path)
{
    shop::Record record = shop::load_record(record_path);
    auto replay = std::make_unique<shop::Replay>(record, record_path, *order);
    auto keeper = shop::RecordKeeper::resume(record_path, record);
    take(std::make_unique<shop::Attempt>(order, record.head.seed), record.head.student);
    recorded_ = record.lines.size();
    replay_ = std::move(replay);
    keeper_ = std::move(keeper);
    begin_marking(std::move(order));
}

void OrderDesk::show(const shop::Attempt& attempt,
                     std::shared_ptr<const MarkingWork::Result> result)
{
    take(std::make_unique<shop::Attempt>(attempt), "");
    shown_result_ = std::move(result);
}

void OrderDesk::put_away()
{
    attempt_.reset();
    replay_.reset();
    keeper_.reset();
    marking_.reset();
    shown_result_.reset();
    trouble_.clear();
}

void OrderDesk::act(const shop::Action& action)
{
    began_at_ = attempt_->machine().now();
    worked_ = owed_ = 0.0;
    attempt_->begin(action);
    note_lines();
}

void OrderDesk::note_arrival()
{
    if (!has_arrived_ && !attempt_->is_busy()) {
        has_arrived_ = true;
        arrival_ = attempt_->machine().sheet();
        arrived_at_ = attempt_->machine().now();
    }
}

void OrderDesk::note_lines()
{
    const auto& lines = attempt_->lines();
    try {
        for (; recorded_ < lines.size(); ++recorded_) {
            if (keeper_) {
                keeper_->append(lines[recorded_]);
            }
        }
    } catch (const sim::RequestError& error) { // the disk is full, say
        trouble_ = error.what();
    }
    if (!is_busy() && attempt_->is_handed_in() && marking_) {
        marking_->hand_in(*attempt_);
    }
}

bool OrderDesk::go_on(sim::Tick ticks)
{
    if (!replay_ || !has_arrived_) {
        attempt_->advance(ticks);
        note_arrival();
        return !is_busy();
    }
    if (replay_->advance(*attempt_, ticks)) {
        replay_.reset();
    }
    return !replay_;
}

sim::Tick OrderDesk::piece() const
{
    // Short enough that the window answers in between, even where every turn is followed.
    const sim::Simulator& machine = attempt_->machine();
    constexpr sim::Tick turn_by_turn = 20;
    constexpr sim::Tick usual = 500;
    return machine.can_leap() && !machine.may_leap() ? turn_by_turn : usual;
}

void OrderDesk::advance(double real_seconds, const Leave& has_leave, bool is_hurried)
{
    if (!is_busy() || !trouble_.empty()) {
        return;
    }
    worked_ += real_seconds;
    owed_ += real_seconds * first_pace * std::pow(growth, worked_) / sim::tick_length;
    const bool is_paced = !replay_ && !is_hurried;
    try {
        while ((!is_paced || owed_ >= 1.0) && has_leave()) {
            const sim::Tick most = piece();
            const sim::Tick ticks =
                is_paced ? std::min(most, static_cast<sim::Tick>(std::min(owed_, 1e9))) : most;
            owed_ -= static_cast<double>(ticks);
            if (go_on(ticks)) {
                note_lines();
                break;
            }
        }
    } catch (const std::runtime_error& error) { // equations, or a record that does not fit
        trouble_ = error.what();
    }
    owed_ = std::min(owed_, 1.0 / sim::tick_length); // what cannot be kept up with is let go
}

void OrderDesk::finish()
{
    while (is_busy() && trouble_.empty()) {
        advance(
            0.0, [] { return true; }, true);
    }
}

double OrderDesk::machine_seconds() const
{
    return static_cast<double>(attempt_->machine().now() - began_at_) * sim::tick_length;
}

} // namespace scenes

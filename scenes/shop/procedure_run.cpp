#include "scenes/shop/procedure_run.hpp"

#include <algorithm>
#include <limits>

namespace shop {
namespace {

/// How often a watch is looked at: often enough for a hunting engine, and a look costs next to
/// nothing. Where the engine leaps, a look into a leap has its turn resolved anew.
constexpr sim::Tick looks = 400;
constexpr sim::Tick looks_in_leaps = 20;
/// The longest way at once, ticks: sums of ticks stay far from their limit.
constexpr sim::Tick longest_piece = 1'000'000'000;

bool take_readings(std::span<const Step> steps);

bool takes_readings(const Act& /*act*/)
{
    return false;
}
bool takes_readings(const Wait& /*wait*/)
{
    return false;
}
bool takes_readings(const Watch& watch)
{
    return !watch.readings.empty();
}
bool takes_readings(const Repeat& repeat)
{
    return repeat.count.has_value() || take_readings(repeat.steps);
}
bool takes_readings(const Choose& choose)
{
    return take_readings(choose.steps) || take_readings(choose.otherwise);
}

bool take_readings(std::span<const Step> steps)
{
    return std::ranges::any_of(steps, [](const Step& step) {
        return std::visit([](const auto& what) { return takes_readings(what); }, step.what);
    });
}

} // namespace

void do_to(sim::Simulator& machine, const sim::Command& command)
{
    machine.post(command);
    machine.advance(machine.now()); // what comes next sees it done
}

ProcedureRun::ProcedureRun(const Procedure& procedure)
    : procedure_(&procedure), values_(procedure.readings.size())
{
    frames_.push_back({&procedure.steps});
}

bool ProcedureRun::advance(sim::Simulator& machine, sim::Tick ticks)
{
    sim::Tick left = ticks;
    while (!settle(machine)) {
        if (command_ != nullptr) {
            do_to(machine, *command_);
            command_is_done();
            continue;
        }
        if (left <= 0) {
            return false;
        }
        const sim::Tick to = std::min(next(), machine.now() + std::min(left, longest_piece));
        left -= to - machine.now();
        machine.advance(to);
        if (to == next()) {
            arrive(machine);
        }
    }
    return true;
}

void ProcedureRun::finish(sim::Simulator& machine)
{
    while (!advance(machine, std::numeric_limits<sim::Tick>::max())) {
    }
}

bool ProcedureRun::settle(sim::Simulator& machine)
{
    while (command_ == nullptr && !waits_until_ && !watching_) {
        if (frames_.empty()) {
            return true;
        }
        begin_next(machine);
    }
    return false;
}

sim::Tick ProcedureRun::next() const
{
    if (!watching_) {
        return *waits_until_;
    }
    const sim::Tick end = watching_->from + watching_->watch->ticks;
    return std::min(end,
                    watching_->from + static_cast<sim::Tick>(watching_->count) * watching_->every);
}

void ProcedureRun::arrive(sim::Simulator& machine)
{
    if (!watching_) {
        waits_until_.reset();
        return;
    }
    sample(machine);
    const Watch& watch = *watching_->watch;
    if (machine.now() >= watching_->from + watch.ticks ||
        (watch.until && watch.until->holds(seen_))) {
        end_watch(machine);
    }
}

bool ProcedureRun::has_read_all() const
{
    return !watching_ && std::ranges::none_of(frames_, [](const Frame& frame) {
        return take_readings(std::span(*frame.steps).subspan(frame.next)) ||
               (frame.repeat != nullptr && takes_readings(*frame.repeat));
    });
}

void ProcedureRun::begin_next(sim::Simulator& machine)
{
    Frame& frame = frames_.back();
    if (frame.next == frame.steps->size()) {
        end_round(machine);
        return;
    }
    const Step& step = (*frame.steps)[frame.next++];
    std::visit([&](const auto& what) { begin(what, machine); }, step.what);
}

/// Goes through a repeat's steps again, or leaves them.
void ProcedureRun::end_round(sim::Simulator& machine)
{
    Frame& frame = frames_.back();
    if (frame.repeat != nullptr) {
        look(machine);
        const bool is_reached = frame.repeat->until.holds(seen_);
        if (!is_reached && frame.rounds < frame.repeat->times) {
            ++frame.rounds;
            frame.next = 0;
            return;
        }
        if (frame.repeat->count) {
            values_[*frame.repeat->count] =
                static_cast<double>(frame.rounds + (is_reached ? 0 : 1));
        }
    }
    frames_.pop_back();
}

void ProcedureRun::begin(const Act& act, sim::Simulator& /*machine*/)
{
    command_ = &act.command;
}

void ProcedureRun::begin(const Wait& wait, sim::Simulator& machine)
{
    waits_until_ = machine.now() + wait.ticks;
}

void ProcedureRun::begin(const Watch& watch, sim::Simulator& machine)
{
    watching_ = Watching{
        &watch, machine.now(),
        std::max<sim::Tick>(1, watch.ticks / (machine.may_leap() ? looks_in_leaps : looks)), 0,
        std::vector<Sum>(watch.readings.size())};
    sample(machine);
    if (watch.ticks == 0 || (watch.until && watch.until->holds(seen_))) {
        end_watch(machine);
    }
}

void ProcedureRun::begin(const Repeat& repeat, sim::Simulator& machine)
{
    // As after a round, only that none has been done.
    frames_.push_back({&repeat.steps, repeat.steps.size(), &repeat});
    end_round(machine);
}

void ProcedureRun::begin(const Choose& choose, sim::Simulator& machine)
{
    look(machine);
    frames_.push_back({choose.when.holds(seen_) ? &choose.steps : &choose.otherwise});
}

void ProcedureRun::look(sim::Simulator& machine)
{
    seen_.resize(machine.readings().size());
    machine.read(seen_);
}

void ProcedureRun::sample(sim::Simulator& machine)
{
    look(machine);
    Watching& now = *watching_;
    const double elapsed = static_cast<double>(machine.now() - now.from) * sim::tick_length;
    for (std::size_t i = 0; i < now.sums.size(); ++i) {
        const Reading& reading = procedure_->readings[now.watch->readings[i]];
        Sum& sum = now.sums[i];
        const double value =
            reading.of ? seen_[*reading.of] : machine.parameter(reading.part, reading.parameter);
        if (now.count == 0) {
            sum = {value, value, 0.0, value, value, {}};
        }
        sum.last = value;
        sum.total += value;
        sum.least = std::min(sum.least, value);
        sum.most = std::max(sum.most, value);
        if (reading.as == Reading::As::time && !sum.passed_at && reading.passes.holds(seen_)) {
            sum.passed_at = elapsed;
        }
    }
    ++now.count;
}

void ProcedureRun::end_watch(sim::Simulator& machine)
{
    const Watching& now = *watching_;
    const double elapsed = static_cast<double>(machine.now() - now.from) * sim::tick_length;
    for (std::size_t i = 0; i < now.sums.size(); ++i) {
        const std::size_t place = now.watch->readings[i];
        const Sum& sum = now.sums[i];
        std::optional<double>& value = values_[place];
        switch (procedure_->readings[place].as) {
        case Reading::As::last:
            value = sum.last;
            break;
        case Reading::As::mean:
            value = sum.total / static_cast<double>(now.count);
            break;
        case Reading::As::least:
            value = sum.least;
            break;
        case Reading::As::most:
            value = sum.most;
            break;
        case Reading::As::change:
            value = sum.last - sum.first;
            break;
        case Reading::As::swing:
            value = sum.most - sum.least;
            break;
        case Reading::As::time:
            value = sum.passed_at.value_or(elapsed);
            break;
        case Reading::As::count: // taken by its repeat
            break;
        }
    }
    watching_.reset();
}

} // namespace shop

#include "scenes/shop/attempt.hpp"

#include "scenes/present/chance.hpp"
#include "sim/error.hpp"
#include "sim/printable.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace shop {
namespace {

/// Places of chance that belong to one action: one for harm, the rest for readings.
constexpr std::uint64_t places_of_action = 64;
constexpr std::size_t longest_note = 4000;

template <class T>
const T* last_of(const std::vector<JobLine>& lines)
{
    for (std::size_t i = lines.size(); i-- > 0;) {
        if (const T* found = std::get_if<T>(&lines[i].action)) {
            return found;
        }
    }
    return nullptr;
}

std::string unknown_caution(const Workshop& workshop, const std::vector<std::string>& heeded)
{
    for (const std::string& id : heeded) {
        if (workshop.find_caution(id) == nullptr) {
            return "There is no caution " + sim::in_quotes(id) + ".";
        }
    }
    return "";
}

std::string unknown_fault(const sim::Rig& rig, const std::vector<std::string>& causes)
{
    for (std::size_t i = 0; i < causes.size(); ++i) {
        if (rig.find_fault(causes[i]) == nullptr) {
            return "There is no cause " + sim::in_quotes(causes[i]) + ".";
        }
        if (std::find(causes.begin(), causes.begin() + static_cast<std::ptrdiff_t>(i), causes[i]) !=
            causes.begin() + static_cast<std::ptrdiff_t>(i)) {
            return "The cause " + sim::in_quotes(causes[i]) + " is named twice.";
        }
    }
    return "";
}

} // namespace

Attempt::Attempt(std::shared_ptr<const Order> order, std::uint64_t seed)
    : order_(std::move(order)),
      seed_(seed),
      machine_(with_faults(*order_->workshop, order_->weather, order_->answer.faults))
{
    work_.emplace_back(order_->history);
    advance(0); // a history of no time is over at once
}

double sum_of(std::span<const JobLine> lines, double JobLine::*member)
{
    double sum = 0.0;
    for (const JobLine& line : lines) {
        sum += line.*member;
    }
    return sum;
}

const Finding* last_finding(const std::vector<JobLine>& lines)
{
    return last_of<Finding>(lines);
}

double Attempt::minutes() const
{
    return sum_of(lines_, &JobLine::minutes);
}

double Attempt::money() const
{
    return sum_of(lines_, &JobLine::money);
}

bool Attempt::is_handed_in() const
{
    return last_of<HandIn>(lines_) != nullptr;
}

const Finding* Attempt::finding() const
{
    return last_finding(lines_);
}

const Suspect* Attempt::suspects() const
{
    return last_of<Suspect>(lines_);
}

const Order::Ask* Attempt::asks_before(std::string_view check) const
{
    for (const Order::Ask& ask : order_->predictions) {
        const auto answers = [&](const JobLine& line) {
            const auto* made = std::get_if<Predict>(&line.action);
            return made != nullptr && made->check == ask.check && made->reading == ask.reading;
        };
        if (ask.check == check && std::ranges::none_of(lines_, answers)) {
            return &ask;
        }
    }
    return nullptr;
}

std::string Attempt::reason_against(const Action& action) const
{
    if (is_handed_in()) {
        return "The work has been handed in.";
    }
    if (is_busy()) {
        return "Something is being done already.";
    }
    return std::visit([&](const auto& what) { return reason(what); }, action);
}

std::string Attempt::reason(const Predict& action) const
{
    const Check* check = order_->workshop->find_check(action.check);
    const Reading* reading = check == nullptr ? nullptr : check->procedure.find(action.reading);
    if (reading == nullptr || !order_->allows_check(action.check)) {
        return "There is no such reading to predict.";
    }
    const bool is_known =
        reading->words.empty()
            ? action.guess == "lower" || action.guess == "sound" || action.guess == "higher"
            : std::ranges::find(reading->words, action.guess, &Reading::Band::say) !=
                  reading->words.end();
    return is_known ? "" : sim::in_quotes(action.guess) + " is nothing this reading can show.";
}

std::string Attempt::reason(const DoCheck& action) const
{
    if (!order_->allows_check(action.check)) {
        return "This order does not permit the check " + sim::in_quotes(action.check) + ".";
    }
    if (asks_before(action.check) != nullptr) {
        return "Say first what you expect to read.";
    }
    return unknown_caution(*order_->workshop, action.heeded);
}

std::string Attempt::reason(const DoRepair& action) const
{
    if (!order_->allows_repair(action.repair)) {
        return "This order does not permit the repair " + sim::in_quotes(action.repair) + ".";
    }
    return unknown_caution(*order_->workshop, action.heeded);
}

std::string Attempt::reason(const Suspect& action) const
{
    return unknown_fault(*order_->workshop->rig, action.causes);
}

std::string Attempt::reason(const Finding& action) const
{
    if (action.causes.empty() || action.causes.size() > 4) {
        return "Name one cause, four at most.";
    }
    if (!(action.minutes >= 0.0 && action.minutes <= 10000.0 && action.money >= 0.0 &&
          action.money <= 1e6)) {
        return "The estimate is out of range.";
    }
    if (action.note.size() > longest_note) {
        return "The note is too long; 4,000 letters are enough.";
    }
    return unknown_fault(*order_->workshop->rig, action.causes);
}

std::string Attempt::reason(const HandIn& /*action*/) const
{
    return finding() != nullptr ? "" : "Write down a finding first.";
}

void Attempt::begin(const Action& action)
{
    const std::string reason = reason_against(action);
    if (!reason.empty()) {
        throw sim::RequestError(reason);
    }
    in_hand_ = action;
    std::visit([&](const auto& what) { begin_work(what); }, action);
    advance(0);
}

void Attempt::queue_beginning(std::string_view id)
{
    const Beginning& beginning = *order_->workshop->find_beginning(id);
    if (!beginning.after.empty()) {
        queue_beginning(beginning.after);
    }
    work_.emplace_back(beginning.procedure);
}

void Attempt::begin_work(const DoCheck& action)
{
    const Check& check = *order_->workshop->find_check(action.check);
    queue_beginning(check.begins);
    work_.emplace_back(check.procedure);
}

void Attempt::begin_work(const DoRepair& action)
{
    const Repair& repair = *order_->workshop->find_repair(action.repair);
    queue_beginning(repair.begins);
    work_.emplace_back(repair.procedure);
    does_harm_ =
        repair.harm && scenes::chance(seed_, place() * places_of_action) < repair.harm->chance;
    if (does_harm_) {
        work_.emplace_back(repair.harm->procedure);
    }
}

template <class Other>
void Attempt::begin_work(const Other& /*action*/)
{
    lines_.push_back({*in_hand_, {}, 0.0, 0.0, false});
    in_hand_.reset();
}

void Attempt::advance(sim::Tick ticks)
{
    const sim::Tick end = ticks > std::numeric_limits<sim::Tick>::max() - machine_.now()
                              ? std::numeric_limits<sim::Tick>::max()
                              : machine_.now() + ticks;
    while (!work_.empty() && work_.front().advance(machine_, end - machine_.now())) {
        if (work_.size() == 1) {
            end_work();
        }
        work_.pop_front();
    }
}

void Attempt::end_work()
{
    if (!in_hand_) {
        return; // the history
    }
    JobLine line{*in_hand_, {}, 0.0, 0.0, does_harm_};
    const Job* job = nullptr;
    if (const auto* check = std::get_if<DoCheck>(&*in_hand_)) {
        const Check& done = *order_->workshop->find_check(check->check);
        job = &done;
        const auto& values = work_.front().values();
        for (std::size_t i = 0; i < values.size(); ++i) {
            line.observations.push_back(observe(done.procedure.readings[i], values[i], seed_,
                                                place() * places_of_action + i + 1));
        }
    } else if (const auto* repair = std::get_if<DoRepair>(&*in_hand_)) {
        job = order_->workshop->find_repair(repair->repair);
    }
    line.minutes = job->minutes;
    line.money = job->money;
    lines_.push_back(std::move(line));
    in_hand_.reset();
    does_harm_ = false;
}

void Attempt::perform(const Action& action)
{
    begin(action);
    finish();
}

void Attempt::finish()
{
    while (is_busy()) {
        advance(std::numeric_limits<sim::Tick>::max());
    }
}

} // namespace shop

#include "scenes/shop/policy.hpp"

#include "sim/error.hpp"

#include <algorithm>

namespace shop {
namespace {

/// Chance at which a cause is clear, and bits below which a check is not worth while.
constexpr double clear = 0.9;
constexpr double nothing_to_learn = 0.02;
/// Actions after which even good work gives up.
constexpr std::size_t longest_path = 60;

bool holds(const std::vector<std::string>& ids, std::string_view id)
{
    return std::ranges::find(ids, id) != ids.end();
}

/// What a hypothesis would make a reading show, as a prediction says it.
std::string guess_of(const Reading& reading, std::optional<double> value)
{
    if (!reading.words.empty()) {
        return reading.words[value ? reading.word_of(*value) : 0].say;
    }
    if (value && reading.least && *value < *reading.least) {
        return "lower";
    }
    return value && reading.most && *value > *reading.most ? "higher" : "sound";
}

bool is_sound(const Check& check, const std::vector<Observation>& observations)
{
    for (std::size_t r = 0; r < observations.size(); ++r) {
        const Reading& reading = check.procedure.readings[r];
        std::optional<double> value;
        if (observations[r].number) {
            value = reading.instrument->in_si(*observations[r].number);
        }
        if (observations[r].word
                ? !holds(reading.sound_words, reading.words[*observations[r].word].say) &&
                      reading.has_sound()
                : !reading.is_sound(value)) {
            return false;
        }
    }
    return true;
}

} // namespace

Policy::Policy(const Order& order, const Table& table)
    : order_(order), table_(table), belief_(table)
{
    const auto truth = table.find(together(order.answer.faults).id);
    std::vector<std::size_t> complaint;
    for (const std::string& check : order.solved) {
        complaint.push_back(table.check_index(check));
    }
    belief_.hear(complaint, *truth);
}

const std::vector<std::size_t>& Policy::alike(std::size_t hypothesis) const
{
    auto& known = alike_[hypothesis];
    if (known.empty()) {
        known = look_alikes(table_, hypothesis);
    }
    return known;
}

std::vector<Worth> Policy::worths() const
{
    std::vector<Worth> all;
    for (std::size_t c = 0; c < table_.checks.size(); ++c) {
        const Check& check = *table_.checks[c];
        if (!holds(checked_, check.id)) {
            const double for_money =
                order_.labour > 0.0 ? check.money / order_.labour * 60.0 : check.money;
            all.push_back(
                {&check, belief_.information(c), std::max(check.minutes + for_money, 0.1)});
        }
    }
    std::ranges::stable_sort(all, std::greater<>{}, &Worth::rate);
    return all;
}

bool Policy::is_clear() const
{
    double chance = 0.0;
    for (const std::size_t h : alike(belief_.likeliest())) {
        chance += belief_.chance(h);
    }
    return chance >= clear;
}

Action Policy::to_check(const Check& check) const
{
    for (const Order::Ask& ask : order_.predictions) {
        const auto is_made = [&](const Predict& made) {
            return made.check == ask.check && made.reading == ask.reading;
        };
        if (ask.check == check.id && std::ranges::none_of(predictions_, is_made)) {
            const std::size_t c = table_.check_index(check.id);
            const Reading& reading = *check.procedure.find(ask.reading);
            const auto r = static_cast<std::size_t>(&reading - check.procedure.readings.data());
            const std::size_t row = belief_.row(belief_.likeliest());
            return Predict{ask.check, ask.reading, guess_of(reading, table_.rows[row][c][r])};
        }
    }
    return DoCheck{check.id, check.cautions};
}

std::optional<Action> Policy::verify() const
{
    for (const std::string& id : order_.solved) {
        if (!holds(verified_, id)) {
            return to_check(*order_.workshop->find_check(id));
        }
    }
    return std::nullopt;
}

double Policy::price_of_verifying() const
{
    double sum = 0.0;
    for (const std::string& id : order_.solved) {
        sum += order_.price(*order_.workshop->find_check(id));
    }
    return sum;
}

/// The repair with the least price, that of what must follow where it does not cure included.
const Repair* Policy::choose_repair() const
{
    const sim::Rig& rig = *order_.workshop->rig;
    const std::size_t top = belief_.likeliest();
    double mass = 0.0;
    double widest = 0.0;
    for (const std::size_t h : alike(top)) {
        mass += belief_.chance(h);
    }
    const auto cures = [&](const Repair& repair, std::size_t h) {
        const auto& faults = table_.hypotheses[belief_.row(h)].faults;
        return std::ranges::any_of(faults, [&](const sim::SetFault& fault) {
            return repair.undoes(*rig.find_fault(fault.fault));
        });
    };
    std::vector<std::pair<const Repair*, double>> chosen;
    for (const std::string& id : order_.repairs) {
        const Repair& repair = *order_.workshop->find_repair(id);
        if (!cures(repair, top) || std::ranges::find(repairs_, &repair) != repairs_.end()) {
            continue;
        }
        double share = 0.0;
        for (const std::size_t h : alike(top)) {
            share += cures(repair, h) ? belief_.chance(h) : 0.0;
        }
        chosen.emplace_back(&repair, share / mass);
        widest = std::max(widest, order_.price(repair));
    }
    const double again = widest + price_of_verifying();
    const auto expected = [&](const std::pair<const Repair*, double>& one) {
        return order_.price(*one.first) + (1.0 - one.second) * again;
    };
    const auto best = std::ranges::min_element(chosen, {}, expected);
    return best == chosen.end() ? nullptr : best->first;
}

Finding Policy::finding() const
{
    Finding found;
    // What the repairs have undone of the likeliest hypothesis, or all of it before any.
    for (const sim::SetFault& fault : table_.hypotheses[belief_.likeliest()].faults) {
        found.causes.push_back(fault.fault);
    }
    if (found.causes.empty()) {
        found.causes.push_back(order_.workshop->rig->faults.front().id);
    }
    const Repair* dearest = nullptr;
    for (const Repair* repair : repairs_) {
        found.minutes += repair->minutes;
        found.money += repair->money;
        if (dearest == nullptr || order_.price(*repair) > order_.price(*dearest)) {
            dearest = repair;
        }
    }
    if (dearest != nullptr) {
        found.advice = advice_for(*dearest);
    }
    return found;
}

Action Policy::next() const
{
    if (has_finding_) {
        return HandIn{};
    }
    if (!repairs_.empty() && unsound_.empty()) {
        if (const auto action = verify()) {
            return *action;
        }
        return finding();
    }
    if (!is_clear()) {
        const auto all = worths();
        if (!all.empty() && all.front().bits >= nothing_to_learn) {
            return to_check(*all.front().check);
        }
    }
    if (const Repair* repair = choose_repair()) {
        if (is_worth_repairing(order_, *repair)) {
            return DoRepair{repair->id, repair->cautions};
        }
        Finding scrap = finding();
        scrap.advice = Advice::not_worth;
        scrap.minutes = repair->minutes;
        scrap.money = repair->money;
        return scrap;
    }
    return finding();
}

void Policy::note(const JobLine& line)
{
    if (const auto* predict = std::get_if<Predict>(&line.action)) {
        predictions_.push_back(*predict);
    } else if (const auto* done = std::get_if<DoCheck>(&line.action)) {
        const Check& check = *order_.workshop->find_check(done->check);
        checked_.push_back(check.id);
        belief_.learn(table_.check_index(check.id), line.observations);
        if (!repairs_.empty() && holds(order_.solved, check.id)) {
            (is_sound(check, line.observations) ? verified_ : unsound_).push_back(check.id);
        }
    } else if (const auto* work = std::get_if<DoRepair>(&line.action)) {
        const Repair& repair = *order_.workshop->find_repair(work->repair);
        repairs_.push_back(&repair);
        belief_.repaired(repair);
        checked_.clear();
        verified_.clear();
        unsound_.clear();
    } else if (std::get_if<Finding>(&line.action) != nullptr) {
        has_finding_ = true;
    }
}

Advice advice_for(const Repair& repair)
{
    switch (repair.kind) {
    case Repair::Kind::clean:
        return Advice::clean;
    case Repair::Kind::tighten:
        return Advice::tighten;
    case Repair::Kind::adjust:
        return Advice::adjust;
    case Repair::Kind::replace:
        return Advice::replace;
    }
    return Advice::replace;
}

bool is_worth_repairing(const Order& order, const Repair& repair)
{
    constexpr double most_share = 0.5;
    return order.price(repair) <= most_share * order.worth;
}

Path good_path(const std::shared_ptr<const Order>& order, const Table& table)
{
    Attempt attempt(order, order->seed);
    return good_path(attempt, table);
}

Path good_path(Attempt& attempt, const Table& table, const std::atomic<bool>& is_cancelled)
{
    attempt.finish();
    Policy policy(attempt.order(), table);
    while (!attempt.is_handed_in() && attempt.lines().size() < longest_path && !is_cancelled) {
        attempt.perform(policy.next());
        policy.note(attempt.lines().back());
    }
    return {attempt.lines(), attempt.minutes(), attempt.money(),
            failing(attempt.order(), attempt.machine()).empty()};
}

std::vector<std::string> failing(const Order& order, const sim::Simulator& machine)
{
    std::vector<std::string> failed;
    for (const std::string& id : order.solved) {
        const Check& check = *order.workshop->find_check(id);
        ProcedureRun run(check.procedure);
        bool passes = false;
        try {
            sim::Simulator copy = machine;
            bring_to(*order.workshop, check.begins, copy);
            run.finish(copy);
            passes = check.procedure.is_sound(run.values());
        } catch (const sim::NumericsError&) { // what cannot be run has not passed
        }
        if (!passes) {
            failed.push_back(id);
        }
    }
    return failed;
}

} // namespace shop

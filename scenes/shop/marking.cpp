#include "scenes/shop/marking.hpp"
#include "scenes/shop/plain_number.hpp"

#include "scenes/shop/policy.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

// Every mark is worked out from the job sheet, the order and its table alone, so that anyone can
// work it out again.

namespace shop {
namespace {

/// Full marks up to this many times what good work takes, none from the second on.
constexpr double full_at = 1.3;
constexpr double none_at = 3.0;
/// Share of the best check's worth, averaged over minutes, that earns full marks for the order.
constexpr double full_order = 0.7;
/// How an answer's mark is shared out.
constexpr double share_of_cause = 0.75;
constexpr double share_of_advice = 0.15;
constexpr double share_of_estimate = 0.1;
/// How far an estimate may be off, as a share, and in minutes and money besides.
constexpr double estimate_share = 0.35;
constexpr double estimate_slack = 10.0;

std::string listed(const std::vector<std::string>& titles)
{
    std::string text;
    for (std::size_t i = 0; i < titles.size(); ++i) {
        text += (i == 0 ? "" : i + 1 == titles.size() ? " and " : ", ") + titles[i];
    }
    return text;
}

template <class Id>
std::string fault_titles(const sim::Rig& rig, const std::vector<Id>& faults)
{
    std::vector<std::string> titles;
    for (const auto& each : faults) {
        if constexpr (std::is_same_v<Id, sim::SetFault>) {
            titles.push_back(rig.find_fault(each.fault)->title);
        } else {
            titles.push_back(rig.find_fault(each)->title);
        }
    }
    return titles.empty() ? "nothing" : listed(titles);
}

/// What the marks are worked out from.
class Marking {
public:
    Marking(const Attempt& attempt, const Table& table, const Path& good)
        : attempt_(attempt), order_(attempt.order()), table_(table), good_(good)
    {
        const sim::Simulator& machine = attempt.machine();
        failed_ = failing(order_, machine);
        for (const JobLine& line : attempt.lines()) {
            has_repair_ = has_repair_ || std::holds_alternative<DoRepair>(line.action);
            has_check_ = has_check_ || std::holds_alternative<DoCheck>(line.action);
        }
    }

    Marks all() const
    {
        return {{solved(), cause(), minutes(), money(), order_of_checks(), verified(), harm(),
                 cautions()}};
    }

private:
    [[nodiscard]] bool is_scrap() const { return order_.answer.advice == Advice::not_worth; }
    /// Solved, or rightly left alone.
    [[nodiscard]] bool is_solved() const
    {
        if (is_scrap()) {
            return attempt_.finding()->advice == Advice::not_worth;
        }
        return failed_.empty();
    }

    static Mark mark_of(const char* id, double of, double share, std::string says)
    {
        return {id, of * std::clamp(share, 0.0, 1.0), of, std::move(says)};
    }

    [[nodiscard]] Mark solved() const
    {
        const double of = order_.weights.solved;
        const std::string count = plain_number(static_cast<double>(order_.solved.size()));
        if (is_scrap()) {
            return is_solved()
                       ? mark_of("solved", of, 1.0,
                                 "The machine is not worth the repair, and you said so.")
                       : mark_of("solved", of, 0.0,
                                 "The repair costs more than half of what the machine is worth, " +
                                     plain_number(order_.worth) +
                                     ": it should have been left alone.");
        }
        if (failed_.empty()) {
            return mark_of("solved", of, 1.0,
                           "Run again, the machine passed all of the " + count +
                               " tests it was judged by.");
        }
        std::vector<std::string> titles;
        for (const std::string& id : failed_) {
            titles.push_back(order_.workshop->find_check(id)->title);
        }
        const double passed = static_cast<double>(order_.solved.size() - failed_.size()) /
                              static_cast<double>(order_.solved.size());
        return mark_of("solved", of, 0.0,
                       "Run again, the machine did not pass " +
                           plain_number(static_cast<double>(failed_.size())) + " of " + count +
                           " tests: " + listed(titles) + "." +
                           (passed > 0.0 ? " It has to pass all." : ""));
    }

    [[nodiscard]] Mark cause() const
    {
        const Finding& finding = *attempt_.finding();
        const sim::Rig& rig = *order_.workshop->rig;
        const auto right =
            static_cast<double>(std::ranges::count_if(finding.causes, [&](const std::string& id) {
                return order_.is_cause(id) || std::ranges::find(order_.answer.look_alikes, id) !=
                                                  order_.answer.look_alikes.end();
            }));
        const auto wrong = static_cast<double>(finding.causes.size()) - right;
        const auto wanted =
            static_cast<double>(std::max<std::size_t>(order_.answer.faults.size(), 1));
        const double named = std::clamp((std::min(right, wanted) - 0.5 * wrong) / wanted, 0.0, 1.0);
        const bool is_advice = finding.advice == order_.answer.advice;
        const bool is_estimate = is_advice && is_estimate_fair(finding);
        std::string says = "You named " + fault_titles(rig, finding.causes) + "; it was " +
                           fault_titles(rig, order_.answer.faults) + ".";
        says += is_advice ? " Your advice was right" : " Your advice was not the one that fits";
        says += is_estimate
                    ? ", and so was your estimate."
                    : "; the estimate of " + plain_number(finding.minutes) + " minutes and " +
                          plain_number(finding.money) + " in parts was off: good work took " +
                          plain_number(good_repair_minutes()) + " and " +
                          plain_number(good_repair_money()) + ".";
        return mark_of("cause", order_.weights.cause,
                       share_of_cause * named + (is_advice ? share_of_advice : 0.0) +
                           (is_estimate ? share_of_estimate : 0.0),
                       std::move(says));
    }

    [[nodiscard]] double good_repair_minutes() const
    {
        const Finding* found = last_finding(good_.lines);
        return found == nullptr ? 0.0 : found->minutes;
    }
    [[nodiscard]] double good_repair_money() const
    {
        const Finding* found = last_finding(good_.lines);
        return found == nullptr ? 0.0 : found->money;
    }

    /// An estimate is fair when it fits good work's repairs, or those that were done.
    [[nodiscard]] bool is_estimate_fair(const Finding& finding) const
    {
        double own_minutes = 0.0;
        double own_money = 0.0;
        for (const JobLine& line : attempt_.lines()) {
            if (std::holds_alternative<DoRepair>(line.action)) {
                own_minutes += line.minutes;
                own_money += line.money;
            }
        }
        const auto fits = [](double said, double true_value) {
            return std::abs(said - true_value) <= estimate_share * true_value + estimate_slack;
        };
        return (fits(finding.minutes, good_repair_minutes()) &&
                fits(finding.money, good_repair_money())) ||
               (has_repair_ && is_solved() && fits(finding.minutes, own_minutes) &&
                fits(finding.money, own_money));
    }

    Mark spent(const char* id, double of, double own, double good, const char* what) const
    {
        if (!is_solved()) {
            return mark_of(id, of, 0.0, "The machine is not in order, so nothing is given here.");
        }
        const double slack = 5.0; // a cheap path leaves no room else
        const double full = full_at * good + slack;
        const double none = none_at * good + 4.0 * slack;
        return mark_of(id, of, (none - own) / (none - full),
                       "You spent " + plain_number(own) + " " + what + "; good work took " +
                           plain_number(good) + ", full marks go to " + plain_number(full) +
                           " and none to " + plain_number(none) + " or more.");
    }

    [[nodiscard]] Mark minutes() const
    {
        return spent("minutes", order_.weights.minutes, attempt_.minutes(), good_.minutes,
                     "minutes");
    }
    [[nodiscard]] Mark money() const
    {
        return spent("money", order_.weights.money, attempt_.money(), good_.money, "in parts");
    }

    /// How much each check of the search was expected to tell for its minutes, beside the best one
    /// at that time.
    [[nodiscard]] Mark order_of_checks() const
    {
        const double of = order_.weights.order;
        Policy policy(order_, table_);
        double earned = 0.0;
        double weight = 0.0;
        std::size_t count = 0;
        std::string worst;
        double worst_share = 1.0;
        for (const JobLine& line : attempt_.lines()) {
            if (const auto* done = std::get_if<DoCheck>(&line.action);
                done != nullptr && !is_verifying(line, policy)) {
                const double share = share_of_best(policy, done->check);
                const double minutes = std::max(line.minutes, 0.1);
                earned += share * minutes;
                weight += minutes;
                ++count;
                if (share < worst_share) {
                    worst_share = share;
                    worst = order_.workshop->find_check(done->check)->title;
                }
            }
            policy.note(line);
        }
        if (count == 0) {
            return mark_of("order", of, 0.0, "No check was done to find the cause.");
        }
        const double mean = earned / weight;
        std::string says = "Your " + plain_number(static_cast<double>(count)) +
                           " checks told, minute for minute, " + plain_number(100.0 * mean) +
                           " % of what the best ones at the time would have; full marks go to " +
                           plain_number(100.0 * full_order) + " %.";
        if (!worst.empty()) {
            says += " Least told: " + worst + " (" + plain_number(100.0 * worst_share) + " %).";
        }
        return mark_of("order", of, mean / full_order, std::move(says));
    }

    /// A check after a repair, of those the machine is judged by.
    [[nodiscard]] bool is_verifying(const JobLine& line, const Policy& policy) const
    {
        const auto& check = std::get<DoCheck>(line.action).check;
        return policy.has_repaired() &&
               std::ranges::find(order_.solved, check) != order_.solved.end();
    }

    static double share_of_best(const Policy& policy, const std::string& check)
    {
        if (policy.is_clear()) {
            return 0.0; // there was nothing left to find
        }
        const auto worths = policy.worths();
        const auto own = std::ranges::find_if(
            worths, [&](const Worth& worth) { return worth.check->id == check; });
        if (own == worths.end()) {
            return 0.0; // done already, with nothing changed since
        }
        const double best = worths.front().rate();
        return best > 0.0 ? own->rate() / best : 0.0;
    }

    [[nodiscard]] Mark verified() const
    {
        const double of = order_.weights.verified;
        if (is_scrap() && !has_repair_) {
            return mark_of("verified", of, is_solved() ? 1.0 : 0.0,
                           "There was no repair to verify.");
        }
        if (!has_repair_) {
            return mark_of("verified", of, 0.0, "Nothing was repaired, so nothing was verified.");
        }
        std::vector<std::string> done;
        for (const JobLine& line : attempt_.lines()) {
            if (std::holds_alternative<DoRepair>(line.action)) {
                done.clear();
            } else if (const auto* check = std::get_if<DoCheck>(&line.action);
                       check != nullptr &&
                       std::ranges::find(order_.solved, check->check) != order_.solved.end() &&
                       std::ranges::find(done, check->check) == done.end()) {
                done.push_back(check->check);
            }
        }
        const double share =
            static_cast<double>(done.size()) / static_cast<double>(order_.solved.size());
        return mark_of("verified", of, share,
                       "After the last repair you ran " +
                           plain_number(static_cast<double>(done.size())) + " of the " +
                           plain_number(static_cast<double>(order_.solved.size())) +
                           " tests that show whether the complaint is gone.");
    }

    [[nodiscard]] Mark harm() const
    {
        const double of = order_.weights.harm;
        if (!has_repair_ && !(is_scrap() && is_solved())) {
            return mark_of("harm", of, 0.0, "Nothing was repaired, so no care could be shown.");
        }
        std::vector<std::string> says;
        for (const JobLine& line : attempt_.lines()) {
            if (line.did_harm) {
                says.push_back(order_.workshop->find_repair(std::get<DoRepair>(line.action).repair)
                                   ->harm->says);
            }
        }
        if (says.empty()) {
            return mark_of("harm", of, 1.0, "Nothing was damaged.");
        }
        return mark_of("harm", of, 1.0 - 0.5 * static_cast<double>(says.size()),
                       "Damage was done: " + listed(says));
    }

    [[nodiscard]] Mark cautions() const
    {
        const double of = order_.weights.cautions;
        std::size_t due = 0;
        std::size_t heeded = 0;
        for (const JobLine& line : attempt_.lines()) {
            const auto count = [&](const Job& job, const std::vector<std::string>& ids) {
                due += job.cautions.size();
                heeded += static_cast<std::size_t>(
                    std::ranges::count_if(job.cautions, [&](const std::string& id) {
                        return std::ranges::find(ids, id) != ids.end();
                    }));
            };
            if (const auto* check = std::get_if<DoCheck>(&line.action)) {
                count(*order_.workshop->find_check(check->check), check->heeded);
            } else if (const auto* repair = std::get_if<DoRepair>(&line.action)) {
                count(*order_.workshop->find_repair(repair->repair), repair->heeded);
            }
        }
        if (!has_check_ && !has_repair_) {
            return mark_of("cautions", of, 0.0, "Nothing was done that asks for caution.");
        }
        const double share =
            due == 0 ? 1.0 : static_cast<double>(heeded) / static_cast<double>(due);
        // One caution left out can be the one that burns somebody: half of them is nothing.
        return mark_of("cautions", of, 2.0 * share - 1.0,
                       "You saw to " + plain_number(static_cast<double>(heeded)) + " of the " +
                           plain_number(static_cast<double>(due)) +
                           " cautions your work called for.");
    }

    const Attempt& attempt_;
    const Order& order_;
    const Table& table_;
    const Path& good_;
    std::vector<std::string> failed_;
    bool has_repair_ = false;
    bool has_check_ = false;
};

} // namespace

double Marks::got() const
{
    return std::accumulate(marks.begin(), marks.end(), 0.0,
                           [](double sum, const Mark& mark) { return sum + mark.got; });
}

double Marks::of() const
{
    return std::accumulate(marks.begin(), marks.end(), 0.0,
                           [](double sum, const Mark& mark) { return sum + mark.of; });
}

Marks mark(const Attempt& attempt, const Table& table, const Path& good)
{
    return Marking(attempt, table, good).all();
}

} // namespace shop

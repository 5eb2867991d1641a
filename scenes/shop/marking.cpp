#include "scenes/shop/marking.hpp"

#include "scenes/shop/search_quality.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

// Every mark is worked out from the job sheet, the order and its table alone, so that anyone can
// work it out again.

namespace shop {
namespace {

using scenes::phrase;

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

/// What is spent on an order, and the sentences about it.
struct Spending {
    const char* id;
    scenes::Phrase in_vain;
    scenes::Phrase spent;
};
constexpr Spending of_minutes{
    "minutes", phrase("The machine is not in order, so nothing is given for minutes."),
    phrase("You spent {0} minutes; good work took {1}, full marks go to {2} and none to {3} or "
           "more.")};
constexpr Spending of_money{
    "money", phrase("The machine is not in order, so nothing is given for money."),
    phrase("You spent {0} in parts; good work took {1}, full marks go to {2} and none to {3} or "
           "more.")};

double count_of(std::size_t count)
{
    return static_cast<double>(count);
}

Titles titles_of(const sim::Rig& rig, const std::vector<std::string>& faults)
{
    Titles titles;
    for (const std::string& id : faults) {
        titles.push_back(rig.find_fault(id)->title);
    }
    return titles;
}

Titles titles_of(const sim::Rig& rig, const std::vector<sim::SetFault>& faults)
{
    Titles titles;
    for (const sim::SetFault& each : faults) {
        titles.push_back(rig.find_fault(each.fault)->title);
    }
    return titles;
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

    static Mark mark_of(const char* id, double of, double share, std::vector<Reason> why)
    {
        return {id, of * std::clamp(share, 0.0, 1.0), of, std::move(why)};
    }

    [[nodiscard]] Mark solved() const
    {
        const double of = order_.weights.solved;
        if (is_scrap()) {
            return is_solved()
                       ? mark_of("solved", of, 1.0,
                                 {{phrase("The machine is not worth the repair, and you said "
                                          "so.")}})
                       : mark_of("solved", of, 0.0,
                                 {{phrase("The repair costs more than half of what the machine is "
                                          "worth, {0}: it should have been left alone."),
                                   {order_.worth}}});
        }
        const double tests = count_of(order_.solved.size());
        if (failed_.empty()) {
            return mark_of("solved", of, 1.0,
                           {{phrase("Run again, the machine passed all of the {0} tests it was "
                                    "judged by."),
                             {tests}}});
        }
        Titles titles;
        for (const std::string& id : failed_) {
            titles.push_back(order_.workshop->find_check(id)->title);
        }
        std::vector<Reason> why{
            {phrase("Run again, the machine did not pass {0} of {1} tests: {2}."),
             {count_of(failed_.size()), tests, std::move(titles)}}};
        if (failed_.size() < order_.solved.size()) {
            why.push_back({phrase("It has to pass all.")});
        }
        return mark_of("solved", of, 0.0, std::move(why));
    }

    [[nodiscard]] Mark cause() const
    {
        const Finding& finding = *attempt_.finding();
        const sim::Rig& rig = *order_.workshop->rig;
        const bool is_advice = finding.advice == order_.answer.advice;
        const bool is_estimate = is_advice && is_estimate_fair(finding);
        std::vector<Reason> why{
            {phrase("You named: {0}. It was: {1}."),
             {titles_of(rig, finding.causes), titles_of(rig, order_.answer.faults)}},
            {is_advice ? phrase("Your advice was right.")
                       : phrase("Your advice was not the one that fits.")}};
        if (is_estimate) {
            why.push_back({phrase("Your estimate was fair.")});
        } else {
            why.push_back(
                {phrase("The estimate of {0} minutes and {1} in parts was off: good work "
                        "took {2} and {3}."),
                 {finding.minutes, finding.money, good_repair_minutes(), good_repair_money()}});
        }
        return mark_of("cause", order_.weights.cause,
                       share_of_cause * named(finding) + (is_advice ? share_of_advice : 0.0) +
                           (is_estimate ? share_of_estimate : 0.0),
                       std::move(why));
    }

    /// How much of the causes was named, less half of one for each wrong one; 0 to 1.
    [[nodiscard]] double named(const Finding& finding) const
    {
        const auto right =
            static_cast<double>(std::ranges::count_if(finding.causes, [&](const std::string& id) {
                return order_.is_cause(id) || std::ranges::find(order_.answer.look_alikes, id) !=
                                                  order_.answer.look_alikes.end();
            }));
        const double wrong = count_of(finding.causes.size()) - right;
        const double wanted = count_of(std::max<std::size_t>(order_.answer.faults.size(), 1));
        return std::clamp((std::min(right, wanted) - 0.5 * wrong) / wanted, 0.0, 1.0);
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

    [[nodiscard]] Mark spent(const Spending& what, double of, double own, double good) const
    {
        if (!is_solved()) {
            return mark_of(what.id, of, 0.0, {{what.in_vain}});
        }
        const double slack = 5.0; // a cheap path leaves no room else
        const double full = full_at * good + slack;
        const double none = none_at * good + 4.0 * slack;
        return mark_of(what.id, of, (none - own) / (none - full),
                       {{what.spent, {own, good, full, none}}});
    }

    [[nodiscard]] Mark minutes() const
    {
        return spent(of_minutes, order_.weights.minutes, attempt_.minutes(), good_.minutes);
    }
    [[nodiscard]] Mark money() const
    {
        return spent(of_money, order_.weights.money, attempt_.money(), good_.money);
    }

    [[nodiscard]] Mark order_of_checks() const
    {
        const double of = order_.weights.order;
        const SearchQuality search = quality_of_search(order_, table_, attempt_.lines());
        if (search.checks == 0) {
            return mark_of("order", of, 0.0, {{phrase("No check was done to find the cause.")}});
        }
        std::vector<Reason> why{
            {phrase("Your {0} checks told, minute for minute, {1} % of what the best ones at the "
                    "time would have; full marks go to {2} %."),
             {count_of(search.checks), 100.0 * search.share, 100.0 * full_order}}};
        if (!search.least.empty()) {
            why.push_back({phrase("Least told: {0} ({1} %)."),
                           {Titles{search.least}, 100.0 * search.least_share}});
        }
        return mark_of("order", of, search.share / full_order, std::move(why));
    }

    [[nodiscard]] Mark verified() const
    {
        const double of = order_.weights.verified;
        if (is_scrap() && !has_repair_) {
            return mark_of("verified", of, is_solved() ? 1.0 : 0.0,
                           {{phrase("There was no repair to verify.")}});
        }
        if (!has_repair_) {
            return mark_of("verified", of, 0.0,
                           {{phrase("Nothing was repaired, so nothing was verified.")}});
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
        const double ran = count_of(done.size());
        const double tests = count_of(order_.solved.size());
        return mark_of("verified", of, ran / tests,
                       {{phrase("After the last repair you ran {0} of the {1} tests that show "
                                "whether the complaint is gone."),
                         {ran, tests}}});
    }

    [[nodiscard]] Mark harm() const
    {
        const double of = order_.weights.harm;
        if (!has_repair_ && !(is_scrap() && is_solved())) {
            return mark_of("harm", of, 0.0,
                           {{phrase("Nothing was repaired, so no care could be shown.")}});
        }
        std::vector<Reason> why;
        for (const JobLine& line : attempt_.lines()) {
            if (line.did_harm) {
                const std::string& says =
                    order_.workshop->find_repair(std::get<DoRepair>(line.action).repair)
                        ->harm->says;
                why.push_back({phrase("Damage was done. {0}"), {Titles{says}}});
            }
        }
        const double times = count_of(why.size());
        if (why.empty()) {
            why.push_back({phrase("Nothing was damaged.")});
        }
        return mark_of("harm", of, 1.0 - 0.5 * times, std::move(why));
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
            return mark_of("cautions", of, 0.0,
                           {{phrase("Nothing was done that asks for caution.")}});
        }
        const double share = due == 0 ? 1.0 : count_of(heeded) / count_of(due);
        // One caution left out can be the one that burns somebody: half of them is nothing.
        return mark_of("cautions", of, 2.0 * share - 1.0,
                       {{phrase("You saw to {0} of the {1} cautions your work called for."),
                         {count_of(heeded), count_of(due)}}});
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

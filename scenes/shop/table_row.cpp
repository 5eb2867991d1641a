#include "scenes/shop/procedure_run.hpp"
#include "scenes/shop/table.hpp"
#include "sim/error.hpp"

#include <algorithm>

namespace shop {
namespace {

/// Checks, and the beginnings that lead to them, on one machine for as long as all of them do the
/// same to it; where they part, each goes on with a copy.
///
/// A machine's way depends on what is done to it and when, never on who looks, so that every check
/// reads to the last bit what it would read alone. What a check does after its last reading is left
/// out: the machine is thrown away.
class SharedWay {
public:
    SharedWay(const Workshop& workshop, const std::vector<const Check*>& checks, Table::Row& row,
              const std::atomic<bool>& is_cancelled)
        : workshop_(workshop), checks_(checks), row_(row), is_cancelled_(is_cancelled)
    {
        for (const Check* check : checks) {
            for (std::string id = check->begins; !id.empty();
                 id = workshop.find_beginning(id)->after) {
                wanted_.push_back(id);
            }
        }
    }

    /// Goes all ways that begin with the machine as it arrived.
    void go(sim::Simulator machine)
    {
        Travellers all;
        join(all, "");
        go(std::move(machine), std::move(all));
    }

private:
    struct Traveller {
        ProcedureRun run;
        const Beginning* beginning = nullptr; ///< on the way there; null for a check
        std::size_t check = 0;
    };
    using Travellers = std::vector<Traveller>;

    /// Adds what begins where a beginning ends; without an id, with the machine as it arrived.
    void join(Travellers& travellers, const std::string& id) const
    {
        for (const Beginning& beginning : workshop_.beginnings) {
            if (beginning.after == id &&
                std::ranges::find(wanted_, beginning.id) != wanted_.end()) {
                travellers.push_back({ProcedureRun(beginning.procedure), &beginning});
            }
        }
        for (std::size_t c = 0; c < checks_.size(); ++c) {
            if (checks_[c]->begins == id) {
                travellers.push_back({ProcedureRun(checks_[c]->procedure), nullptr, c});
            }
        }
    }

    /// Has everyone take part who need not wait; those who have arrived leave, and others join.
    void settle(sim::Simulator& machine, Travellers& travellers)
    {
        for (std::size_t i = 0; i < travellers.size();) {
            Traveller& one = travellers[i];
            const bool is_done = one.run.settle(machine);
            if (one.beginning == nullptr ? !one.run.has_read_all() : !is_done) {
                ++i;
                continue;
            }
            const Traveller arrived = std::move(one);
            travellers.erase(travellers.begin() + static_cast<std::ptrdiff_t>(i));
            if (arrived.beginning == nullptr) {
                row_[arrived.check] = arrived.run.values();
            } else {
                join(travellers, arrived.beginning->id);
            }
        }
    }

    void go(sim::Simulator machine, Travellers travellers)
    {
        try {
            for (settle(machine, travellers); !travellers.empty() && !is_cancelled_;
                 settle(machine, travellers)) {
                part(machine, travellers);
                next(machine, travellers);
            }
        } catch (const sim::NumericsError&) { // those who are left have read nothing
        }
    }

    /// Lets go on their own, with a copy, all who want something else than the first.
    void part(const sim::Simulator& machine, Travellers& travellers)
    {
        while (true) {
            const auto differs = [](const Traveller& one, const Traveller& other) {
                const sim::Command* a = one.run.command();
                const sim::Command* b = other.run.command();
                return a == nullptr || b == nullptr ? a != b : *a != *b;
            };
            const auto leader = std::ranges::find_if(
                travellers, [&](const Traveller& one) { return differs(one, travellers.front()); });
            if (leader == travellers.end()) {
                return;
            }
            const auto others = std::stable_partition(
                travellers.begin(), travellers.end(),
                [&, like = *leader](const Traveller& one) { return differs(one, like); });
            Travellers leaving(std::make_move_iterator(others),
                               std::make_move_iterator(travellers.end()));
            travellers.erase(others, travellers.end());
            go(machine, std::move(leaving));
        }
    }

    /// Does what all of them want, or lets time go by until the first wants to look.
    static void next(sim::Simulator& machine, Travellers& travellers)
    {
        if (const sim::Command* command = travellers.front().run.command()) {
            do_to(machine, *command);
            for (Traveller& one : travellers) {
                one.run.command_is_done();
            }
            return;
        }
        const auto ticks = [](const Traveller& one) { return one.run.next(); };
        machine.advance(std::ranges::min(travellers, {}, ticks).run.next());
        for (Traveller& one : travellers) {
            if (one.run.next() == machine.now()) {
                one.run.arrive(machine);
            }
        }
    }

    const Workshop& workshop_;
    const std::vector<const Check*>& checks_;
    Table::Row& row_;
    const std::atomic<bool>& is_cancelled_;
    std::vector<std::string> wanted_; ///< ids of beginnings
};

} // namespace

sim::Tolerance table_tolerance(const sim::Rig& rig)
{
    // At twice this an open hose breathes to and fro within the error allowed, in steps of some ten
    // microseconds for as long as it drips.
    constexpr double share = 5e-7;
    return {std::max(rig.tolerance.relative, share), std::max(rig.tolerance.absolute, share)};
}

std::optional<Table::Row> simulate_row(const Situation& situation,
                                       const std::vector<const Check*>& checks,
                                       const Hypothesis& hypothesis,
                                       const std::atomic<bool>& is_cancelled)
{
    Table::Row row;
    for (const Check* check : checks) {
        row.emplace_back(check->procedure.readings.size());
    }
    try {
        sim::Simulator machine =
            with_faults(*situation.workshop, situation.weather, hypothesis.faults,
                        table_tolerance(*situation.workshop->rig));
        if (situation.history != nullptr) {
            ProcedureRun(*situation.history).finish(machine);
        }
        SharedWay(*situation.workshop, checks, row, is_cancelled).go(std::move(machine));
    } catch (const sim::NumericsError&) { // already in the machine's history: nothing can be read
    }
    return is_cancelled ? std::nullopt : std::optional(std::move(row));
}

} // namespace shop

#include "scenes/shop/table.hpp"

#include "scenes/shop/table_store.hpp"

#include <algorithm>
#include <sstream>
#include <thread>

namespace shop {
namespace {

/// A hypothesis in the store: ids with severities.
std::string store_name(const Hypothesis& hypothesis)
{
    std::ostringstream name;
    name.precision(17);
    name << "sound";
    for (const sim::SetFault& fault : hypothesis.faults) {
        name << '+' << fault.fault << '=' << fault.severity;
    }
    return name.str();
}

/// Work on a table, shared out over threads by hypothesis.
class TableWork {
public:
    TableWork(const Situation& situation, Table& table, TableStore& store, const Progress& progress,
              const std::atomic<bool>& is_cancelled)
        : situation_(situation),
          table_(table),
          store_(store),
          progress_(progress),
          is_cancelled_(is_cancelled)
    {
    }

    void run(unsigned threads)
    {
        std::vector<std::thread> others;
        for (unsigned i = 1; i < threads; ++i) {
            others.emplace_back([this] { work(); });
        }
        work();
        for (std::thread& other : others) {
            other.join();
        }
        if (trouble_) {
            std::rethrow_exception(trouble_);
        }
    }

private:
    void work()
    {
        try {
            for (std::size_t i = next_++; i < table_.hypotheses.size() && !is_over(); i = next_++) {
                fill(i);
            }
        } catch (...) { // what cannot be carried on is not simulated; this is a full disk or worse
            const std::scoped_lock lock(mutex_);
            trouble_ = std::current_exception();
            has_trouble_ = true;
        }
    }

    [[nodiscard]] bool is_over() const { return is_cancelled_ || has_trouble_; }

    void fill(std::size_t i)
    {
        const std::string name = store_name(table_.hypotheses[i]);
        TableStore::ByCheck known = store_.known(name);
        std::vector<const Check*> missing;
        for (const Check* check : table_.checks) {
            const auto found = known.find(check->id);
            if (found == known.end() || found->second.size() != check->procedure.readings.size()) {
                missing.push_back(check);
            }
        }
        if (!missing.empty()) {
            const auto row = simulate_row(situation_, missing, table_.hypotheses[i], is_cancelled_);
            if (!row) {
                return;
            }
            TableStore::ByCheck fresh;
            for (std::size_t c = 0; c < missing.size(); ++c) {
                fresh[missing[c]->id] = known[missing[c]->id] = (*row)[c];
            }
            store_.add(name, fresh);
        }
        for (std::size_t c = 0; c < table_.checks.size(); ++c) {
            table_.rows[i][c] = known[table_.checks[c]->id];
        }
        const std::scoped_lock lock(mutex_);
        ++done_;
        if (progress_) {
            progress_(done_, table_.hypotheses.size());
        }
    }

    const Situation& situation_;
    Table& table_;
    TableStore& store_;
    const Progress& progress_;
    const std::atomic<bool>& is_cancelled_;
    std::atomic<std::size_t> next_ = 0;
    std::atomic<bool> has_trouble_ = false;
    std::mutex mutex_;
    std::size_t done_ = 0;
    std::exception_ptr trouble_;
};

} // namespace

std::size_t Table::check_index(std::string_view id) const
{
    return static_cast<std::size_t>(
        std::ranges::find_if(checks, [&](const Check* check) { return check->id == id; }) -
        checks.begin());
}

std::optional<std::size_t> Table::find(std::string_view id) const
{
    const auto found = std::ranges::find(hypotheses, id, &Hypothesis::id);
    return found == hypotheses.end()
               ? std::nullopt
               : std::optional(static_cast<std::size_t>(found - hypotheses.begin()));
}

Situation situation_of(const Order& order)
{
    return {order.workshop, order.weather, &order.history, order.history_text};
}

std::vector<Hypothesis> all_single(const sim::Rig& rig)
{
    std::vector<Hypothesis> all{{"sound", {}}};
    for (const sim::Fault& fault : rig.faults) {
        all.push_back({fault.id, {{fault.id, 1.0}}});
    }
    return all;
}

Hypothesis together(const std::vector<sim::SetFault>& faults)
{
    Hypothesis joined{"", faults};
    for (const sim::SetFault& fault : faults) {
        joined.id += (joined.id.empty() ? "" : "+") + fault.fault;
    }
    if (faults.empty()) {
        joined.id = "sound";
    }
    return joined;
}

std::optional<Table> simulate_table(const Situation& situation,
                                    const std::vector<const Check*>& checks,
                                    std::vector<Hypothesis> hypotheses, unsigned threads,
                                    const std::string& store, const Progress& progress,
                                    const std::atomic<bool>& is_cancelled)
{
    Table table{situation.workshop, std::move(hypotheses), checks, {}};
    table.rows.resize(table.hypotheses.size(), Table::Row(checks.size()));
    TableStore kept(store, situation_key(situation));
    TableWork(situation, table, kept, progress, is_cancelled).run(threads);
    return is_cancelled ? std::nullopt : std::optional(std::move(table));
}

std::optional<Table> simulate_table(const Order& order, unsigned threads, const std::string& store,
                                    const Progress& progress, const std::atomic<bool>& is_cancelled)
{
    std::vector<Hypothesis> hypotheses = all_single(*order.workshop->rig);
    const Hypothesis hidden = together(order.answer.faults);
    const auto found = std::ranges::find(hypotheses, hidden.id, &Hypothesis::id);
    if (found == hypotheses.end()) {
        hypotheses.push_back(hidden);
    } else {
        *found = hidden; // as bad as it is in the order
    }
    std::vector<const Check*> checks;
    for (const std::string& id : order.checks) {
        checks.push_back(order.workshop->find_check(id));
    }
    return simulate_table(situation_of(order), checks, std::move(hypotheses), threads, store,
                          progress, is_cancelled);
}

} // namespace shop

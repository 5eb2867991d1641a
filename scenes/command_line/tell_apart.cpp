#include "scenes/command_line/tell_apart.hpp"

#include "scenes/command_line/csv.hpp"
#include "scenes/command_line/long_work.hpp"
#include "scenes/command_line/table.hpp"
#include "scenes/present/own_folders.hpp"
#include "scenes/shop/belief.hpp"
#include "scenes/shop/plain_number.hpp"
#include "sim/error.hpp"
#include "sim/ids.hpp"
#include "sim/printable.hpp"
#include "sim/words.hpp"

#include <algorithm>

namespace scenes {
namespace {

std::vector<shop::Hypothesis> hypotheses_of(const sim::Rig& rig,
                                            const std::vector<std::string>& ids)
{
    std::vector<shop::Hypothesis> all = shop::all_single(rig);
    if (ids.empty()) {
        return all;
    }
    const std::vector<std::string> known = sim::ids_of(rig.faults);
    std::vector<shop::Hypothesis> chosen{all.front()};
    for (const std::string& id : ids) {
        if (std::ranges::find(known, id) == known.end()) {
            throw sim::RequestError("there is no fault " + sim::in_quotes(id) +
                                    sim::choices_hint(id, known));
        }
        chosen.push_back({id, {{id, 1.0}}});
    }
    return chosen;
}

/// What each check is expected to tell where every fault is as likely as any other.
void print_worths(const shop::Table& table, std::ostream& out)
{
    const shop::Belief belief(table);
    std::vector<std::pair<double, std::vector<std::string>>> rows;
    for (std::size_t c = 0; c < table.checks.size(); ++c) {
        const shop::Check& check = *table.checks[c];
        const double bits = belief.information(c);
        const double rate = bits / std::max(check.minutes, 0.1);
        rows.push_back({rate,
                        {check.id, shop::plain_number(bits, 2),
                         shop::plain_number(check.minutes, 1), shop::plain_number(rate, 3)}});
    }
    std::ranges::stable_sort(rows, [](const auto& a, const auto& b) { return a.first > b.first; });
    std::vector<std::vector<std::string>> lines{{"check", "bits", "minutes", "bits/minute"}};
    for (auto& [rate, line] : rows) {
        lines.push_back(std::move(line));
    }
    out << aligned(lines) << '\n';
}

void print_twins(const shop::Table& table, std::ostream& out)
{
    std::size_t pairs = 0;
    std::vector<std::vector<std::string>> lines;
    for (std::size_t i = 0; i < table.hypotheses.size(); ++i) {
        for (std::size_t j = i + 1; j < table.hypotheses.size(); ++j) {
            ++pairs;
            const double share = shop::separation(table, i, j);
            if (share < shop::told_apart) {
                lines.push_back({table.hypotheses[i].id, table.hypotheses[j].id,
                                 shop::plain_number(50.0 * (1.0 - share), 0) + " %"});
            }
        }
    }
    out << pairs - lines.size() << " of " << pairs
        << " pairs are told apart by one reading, wrong at most in 5 of 100 cases.\n";
    if (!lines.empty()) {
        lines.insert(lines.begin(), {"never told apart", "from", "wrong"});
        out << '\n' << aligned(lines);
    }
}

void print_readings(const shop::Table& table, std::ostream& out)
{
    std::vector<std::string> head{"with"};
    for (const shop::Check* check : table.checks) {
        for (const shop::Reading& reading : check->procedure.readings) {
            head.push_back(check->id + "." + reading.id);
        }
    }
    out << csv_line(head);
    for (std::size_t h = 0; h < table.hypotheses.size(); ++h) {
        std::vector<std::string> cells{table.hypotheses[h].id};
        for (std::size_t c = 0; c < table.checks.size(); ++c) {
            const auto& readings = table.checks[c]->procedure.readings;
            for (std::size_t r = 0; r < readings.size(); ++r) {
                cells.push_back(observation_text(
                    readings[r], shop::observe_exactly(readings[r], table.rows[h][c][r])));
            }
        }
        out << csv_line(cells);
    }
}

std::string usual_store(const shop::Situation& situation)
{
    const std::string folder = cache_folder();
    return folder.empty() ? "" : folder + "/tables/" + situation.workshop->rig->id + ".jsonl";
}

} // namespace

bool tell_apart(const TellApartRequest& request, std::ostream& out, std::ostream& progress)
{
    const auto rig = std::make_shared<const sim::Rig>(sim::load_rig(request.rig));
    const auto workshop = shop::load_workshop(rig, sim::assets_folder());
    const shop::Situation situation{
        workshop, {.temperature = sim::Temperature{request.ambient}}, nullptr, ""};
    const auto checks = checks_of(*workshop, request.checks);
    const auto hypotheses = hypotheses_of(*rig, request.faults);
    std::optional<shop::Table> table;
    {
        LongWork work(progress, "faults simulated");
        table = shop::simulate_table(
            situation, checks, hypotheses, request.threads == 0 ? usual_threads() : request.threads,
            request.store.value_or(usual_store(situation)),
            [&](std::size_t done, std::size_t all) { work.progress(done, all); },
            work.is_cancelled());
    }
    if (!table) {
        return false;
    }
    if (request.shows_readings) {
        print_readings(*table, out);
        return true;
    }
    print_worths(*table, out);
    print_twins(*table, out);
    return true;
}

} // namespace scenes

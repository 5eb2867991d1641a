#include "scenes/bench/order_shots.hpp"

#include "scenes/bench/order_panels.hpp"
#include "scenes/shop/action_json.hpp"
#include "scenes/shop/asset_files.hpp"
#include "sim/rig.hpp"

#include <algorithm>
#include <utility>

namespace scenes {
namespace {

std::vector<shop::Action> actions_of(const shop::Path& path)
{
    std::vector<shop::Action> actions;
    for (const shop::JobLine& line : path.lines) {
        actions.push_back(line.action);
    }
    return actions;
}

bool is_repair_or_finding(const shop::Action& action)
{
    return std::holds_alternative<shop::DoRepair>(action) ||
           std::holds_alternative<shop::Finding>(action) ||
           std::holds_alternative<shop::HandIn>(action);
}

/// The first causes there are, beside what it was.
shop::Suspect some_suspects(const shop::Order& order)
{
    shop::Suspect suspects;
    for (const sim::SetFault& fault : order.answer.faults) {
        suspects.causes.push_back(fault.fault);
    }
    for (const sim::Fault& fault : order.workshop->rig->faults) {
        const bool is_there = std::ranges::find(suspects.causes, fault.id) != suspects.causes.end();
        if (suspects.causes.size() < 3 && !is_there) {
            suspects.causes.push_back(fault.id);
        }
    }
    return suspects;
}

void show_page(BenchScene& scene, const shop::Attempt& attempt,
               const std::shared_ptr<const MarkingWork::Result>& result, OrderPage page)
{
    OrderBoard& board = scene.orders();
    scene.view().shows_orders = true;
    board.desk().show(attempt, result);
    board.view() = {};
    scene.draw(0.0F); // what is written is taken over into the forms
    board.view().page = page;
}

/// The first permitted check that has cautions.
const shop::Check* check_with_cautions(const shop::Order& order)
{
    for (const shop::Check& check : order.workshop->checks) {
        if (!check.cautions.empty() && order.allows_check(check.id)) {
            return &check;
        }
    }
    return nullptr;
}

std::optional<shop::Table> table_of(const shop::Order& order)
{
    const std::atomic<bool> is_cancelled{false};
    constexpr unsigned threads = 2;
    return shop::simulate_table(
        order, threads, shop::table_store(order), [](std::size_t, std::size_t) {}, is_cancelled);
}

} // namespace

OrderScenery play_order(const std::shared_ptr<const shop::Order>& order,
                        const std::optional<std::string>& actions, bool wants_marks)
{
    const auto table = wants_marks || !actions ? table_of(*order) : std::nullopt;
    auto result = std::make_shared<MarkingWork::Result>();
    if (table) {
        result->good = shop::good_path(order, *table);
    }
    OrderScenery scenery;
    shop::Attempt attempt(order, order->seed);
    attempt.finish();
    for (const shop::Action& action :
         actions ? shop::load_actions(*actions) : actions_of(result->good)) {
        if (!scenery.under_way && is_repair_or_finding(action)) {
            shop::Attempt half = attempt;
            half.perform(some_suspects(*order));
            scenery.under_way = std::make_shared<const shop::Attempt>(std::move(half));
        }
        attempt.perform(action);
    }
    if (table && attempt.is_handed_in()) {
        result->marks = shop::mark(attempt, *table, result->good);
        scenery.result = std::move(result);
    }
    scenery.handed_in = std::make_shared<const shop::Attempt>(std::move(attempt));
    scenery.under_way = scenery.under_way ? scenery.under_way : scenery.handed_in;
    return scenery;
}

OrderShot shelf_shot()
{
    return {"shelf", false, [](BenchScene& scene) {
                OrderBoard& board = scene.orders();
                scene.view().shows_orders = true;
                // A picture does not depend on who takes it: neither own orders nor records.
                board.view().shelf = orders_on_shelf(
                    board.workshops(), shop::json_files(sim::assets_folder() + "/orders"));
                board.view().order = 0;
            }};
}

std::vector<OrderShot> order_shots(OrderScenery scenery)
{
    std::vector<OrderShot> shots{shelf_shot()};
    const auto page = [&](const char* name, OrderPage shown, bool is_compact_only) {
        shots.push_back({name, is_compact_only, [scenery, shown](BenchScene& scene) {
                             show_page(scene, *scenery.under_way, nullptr, shown);
                         }});
    };
    page("order", OrderPage::order, true);
    page("machine", OrderPage::machine, true);
    page("sheet", OrderPage::sheet, true);
    page("checks", OrderPage::checks, false);
    page("repairs", OrderPage::repairs, false);
    page("suspects", OrderPage::suspects, false);
    page("finding", OrderPage::finding, false);
    if (const shop::Check* check = check_with_cautions(scenery.under_way->order())) {
        shots.push_back({"cautions", false, [scenery, check](BenchScene& scene) {
                             show_page(scene, *scenery.under_way, nullptr, OrderPage::checks);
                             OrderView& view = scene.orders().view();
                             view.check_to_begin = check->id;
                             view.has_cautions_open = true;
                         }});
    }
    const auto& asks = scenery.under_way->order().predictions;
    if (!asks.empty()) {
        shots.push_back({"guess", false, [scenery](BenchScene& scene) {
                             const shop::Order& order = scenery.under_way->order();
                             const auto fresh = std::make_shared<const shop::Order>(order);
                             shop::Attempt attempt(fresh, order.seed);
                             show_page(scene, attempt, nullptr, OrderPage::checks);
                             OrderView& view = scene.orders().view();
                             view.check_to_begin = order.predictions.front().check;
                             view.has_guess_open = true;
                         }});
    }
    shots.push_back({"marks", false, [scenery](BenchScene& scene) {
                         show_page(scene, *scenery.handed_in, scenery.result, OrderPage::marks);
                     }});
    return shots;
}

} // namespace scenes

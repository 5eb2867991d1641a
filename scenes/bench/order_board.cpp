#include "scenes/bench/order_board.hpp"

#include "scenes/bench/order_panels.hpp"
#include "scenes/present/order_words.hpp"
#include "scenes/present/readout.hpp"
#include "scenes/present/wording.hpp"

#include <array>
#include <cmath>

namespace scenes {
namespace {

std::string_view title_of(const shop::Order& order, const shop::Action& action)
{
    if (const auto* check = std::get_if<shop::DoCheck>(&action)) {
        return translated(order.workshop->find_check(check->check)->title);
    }
    if (const auto* repair = std::get_if<shop::DoRepair>(&action)) {
        return translated(order.workshop->find_repair(repair->repair)->title);
    }
    return "";
}

} // namespace

OrderBoard::OrderBoard(const Fonts& fonts, BenchDesk& bench)
    : fonts_(fonts), bench_(bench), workshops_(sim::assets_folder()), status_(fonts)
{
}

void OrderBoard::open()
{
    bench_.view.shows_orders = true;
    bench_.model.pace.is_paused = true; // nobody sees or hears the bench meanwhile
    if (!desk_.has_order()) {
        OrderTable table = this->table();
        read_shelf(table);
    }
}

void OrderBoard::advance(double seconds, const OrderDesk::Leave& has_leave)
{
    desk_.advance(seconds, has_leave, bench_.settings.now().is_motion_reduced);
}

void OrderBoard::handle(const sf::Event& event)
{
    if (event.type == sf::Event::MouseButtonReleased || !desk_.has_order()) {
        drag_from_.reset();
    }
    if (!drawing_ || !desk_.has_order() || layout_.machine.height <= 0.0F) {
        return;
    }
    if (event.type == sf::Event::MouseMoved && drag_from_) {
        const sf::Vector2f at(static_cast<float>(event.mouseMove.x),
                              static_cast<float>(event.mouseMove.y));
        drawing_->pan(at - *drag_from_);
        drag_from_ = at;
    }
    if (bench_.ui.has_mouse() || bench_.ui.has_dialog()) {
        return;
    }
    if (event.type == sf::Event::MouseButtonPressed &&
        event.mouseButton.button == sf::Mouse::Left) {
        const sf::Vector2f at(static_cast<float>(event.mouseButton.x),
                              static_cast<float>(event.mouseButton.y));
        drag_from_ = layout_.machine.contains(at) ? std::optional(at) : std::nullopt;
    } else if (event.type == sf::Event::MouseWheelScrolled) {
        const sf::Vector2f at(static_cast<float>(event.mouseWheelScroll.x),
                              static_cast<float>(event.mouseWheelScroll.y));
        if (layout_.machine.contains(at)) {
            drawing_->zoom(std::pow(1.15, static_cast<double>(event.mouseWheelScroll.delta)), at);
        }
    }
}

void OrderBoard::take_machine()
{
    if (!desk_.has_order() || drawn_attempt_ == desk_.attempt_number()) {
        return;
    }
    drawn_attempt_ = desk_.attempt_number();
    drawing_.emplace(fonts_, desk_.attempt().machine());
    values_.assign(desk_.attempt().machine().readings().size(), 0.0);
    has_written_ = false;
}

void OrderBoard::take_written()
{
    if (has_written_ || desk_.is_replaying()) {
        return;
    }
    has_written_ = true;
    const shop::Attempt& attempt = desk_.attempt();
    if (const shop::Finding* finding = attempt.finding()) {
        view_.draft = {.causes = {},
                       .advice = static_cast<std::size_t>(finding->advice),
                       .minutes = finding->minutes,
                       .money = finding->money,
                       .note = finding->note};
        for (const std::string& cause : finding->causes) {
            view_.draft.causes[cause] = true;
        }
    }
    if (attempt.is_handed_in()) {
        view_.page = OrderPage::marks;
    }
}

void OrderBoard::show(sf::Vector2f window)
{
    OrderTable table = this->table();
    layout_ = {};
    if (!desk_.has_order()) {
        show_shelf(table, window);
    }
    if (desk_.has_order()) {
        take_machine();
        take_written();
        layout_ = lay_out_order(window, table.look(), view_.page, has_message());
        if (layout_.pages.height > 0.0F) {
            show_order_pages(table, layout_.pages);
        }
        if (layout_.card.height > 0.0F) {
            show_card(table, layout_.card);
        }
    }
    if (desk_.has_order()) { // it may just have been put away
        if (layout_.sheet.height > 0.0F) {
            show_job_sheet(table, layout_.sheet);
        }
        if (layout_.work.height > 0.0F) {
            show_work(table, layout_);
        }
        show_order_dialogs(table);
    }
}

void OrderBoard::take_keys()
{
    using Key = sf::Keyboard;
    Interface& ui = bench_.ui;
    if (ui.take_key(Key::W)) {
        bench_.view.shows_orders = false;
    }
    if (drawing_ && desk_.has_order()) {
        const sf::FloatRect& box = layout_.machine;
        const sf::Vector2f middle{box.left + box.width / 2.0F, box.top + box.height / 2.0F};
        if (ui.take_key(Key::Z)) {
            drawing_->zoom(1.25, middle);
        }
        if (ui.take_key(Key::X)) {
            drawing_->zoom(0.8, middle);
        }
        if (ui.take_key(Key::Home) || ui.take_key(Key::Num0)) {
            drawing_->show_whole();
        }
    }
    const std::array pages{
        std::pair{Key::F2, OrderPage::checks}, std::pair{Key::F3, OrderPage::repairs},
        std::pair{Key::F4, OrderPage::suspects}, std::pair{Key::F7, OrderPage::finding}};
    for (const auto& [key, page] : pages) {
        if (!ui.has_dialog() && ui.take_key(key)) {
            view_.page = page;
        }
    }
}

bool OrderBoard::has_message() const
{
    return desk_.is_busy() || !desk_.trouble().empty() || !view_.notice.empty();
}

std::string OrderBoard::message() const
{
    if (!desk_.trouble().empty()) {
        return filled(words::order_stopped, {worded(desk_.trouble())});
    }
    const shop::Attempt& attempt = desk_.attempt();
    const std::string clock = whole_clock_text(desk_.machine_seconds());
    if (desk_.is_replaying()) {
        return words::doing_again;
    }
    if (attempt.is_busy()) {
        const shop::Action* action = attempt.in_hand();
        return action == nullptr
                   ? filled(words::history_goes_by, {clock})
                   : filled(words::is_being_done, {title_of(attempt.order(), *action), clock});
    }
    if (!view_.notice.empty()) {
        return view_.notice;
    }
    return attempt.is_handed_in() ? words::order_over : words::order_ready;
}

void OrderBoard::draw_status(sf::RenderTarget& target)
{
    if (layout_.status.height <= 0.0F) {
        return;
    }
    const Look& look = bench_.ui.look();
    const bool is_warning = !desk_.trouble().empty() || !view_.notice.empty();
    TextStyle style{.size = look.body(),
                    .colour = is_warning ? look.theme.warning : look.theme.accent,
                    .anchor = Anchor::top};
    status_.clear();
    status_.write_wrapped(message(), layout_.status, style);
    target.draw(status_);
}

void OrderBoard::draw(sf::RenderTarget& target, float seconds)
{
    if (!desk_.has_order() || !drawing_ || drawn_attempt_ != desk_.attempt_number()) {
        return;
    }
    sim::Simulator& machine = desk_.attempt().machine();
    machine.read(values_);
    flow_seconds_ += static_cast<double>(seconds);
    BenchLayout layout;
    layout.section = layout_.machine;
    drawing_->draw(target, {.layout = layout,
                            .look = bench_.ui.look(),
                            .machine = machine,
                            .values = values_,
                            .run_number = drawn_attempt_,
                            .seconds = flow_seconds_,
                            .frame_seconds = seconds,
                            .is_open = false,
                            .reduces_motion = bench_.settings.now().is_motion_reduced});
    draw_status(target);
}

} // namespace scenes

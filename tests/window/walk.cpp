#include "scenes/bench/bench_scene.hpp"
#include "scenes/bench/display.hpp"
#include "sim/error.hpp"
#include "tests/shop/small_order.hpp"

#include <SFML/Graphics/Image.hpp>
#include <SFML/Graphics/Texture.hpp>
#include <SFML/System/Err.hpp>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <set>

// Walks the real window by keyboard alone, page by page and dialog by dialog. Tab must come to
// everything that can be used and back to where it began, Shift+Tab the other way round; focus must
// be on the screen and seen there; arrow keys must move what is focused; Escape closes dialogs and
// takes the focus away.
//
//     xvfb-run -a -s "-screen 0 1280x720x24" build/walk_window [machine [percent [show]]]

namespace {

using scenes::Widget;
using Key = sf::Keyboard;

constexpr int most_stops = 300;
int trouble_count = 0;
bool is_showing = false;

void trouble(const std::string& where, const std::string& what)
{
    std::printf("%s: %s\n", where.c_str(), what.c_str());
    ++trouble_count;
}

std::string name_of(const Widget& widget)
{
    return widget.panel + " / " + widget.name + " (" + widget.role + ")";
}

bool can_be_used(const Widget& widget)
{
    static const std::set<std::string> roles{"button", "choice",     "handle", "list",
                                             "slider", "text field", "switch"};
    return widget.is_enabled && roles.count(widget.role) > 0;
}

/// The window with its bench, and a keyboard.
class Walker {
public:
    Walker(scenes::BenchModel& model, const scenes::Settings& settings)
        : model_(model),
          files_(scenes::find_font_files(std::filesystem::path(sim::assets_folder()) / "fonts")),
          fonts_(files_),
          window_(sf::VideoMode(settings.window->width, settings.window->height), "Standpipe",
                  sf::Style::None, sf::ContextSettings(0, 0, 0)),
          keeper_(settings),
          scene_(window_, files_, fonts_, model, keeper_)
    {
        frames(8);
    }

    void frames(int count)
    {
        for (int i = 0; i < count; ++i) {
            sf::Event event{};
            while (window_.pollEvent(event)) { // nobody else touches this window
            }
            model_.advance(1.0 / 60.0, [] { return true; });
            scene_.draw(1.0F / 60.0F);
            window_.display();
        }
    }

    void press(Key::Key key, bool has_shift = false, bool has_control = false)
    {
        sf::Event event{};
        event.key = {key, false, has_control, has_shift, false};
        for (const auto type : {sf::Event::KeyPressed, sf::Event::KeyReleased}) {
            event.type = type;
            scene_.handle(event);
            frames(1);
        }
        frames(2); // what is scrolled to comes into view, dialogs find their size
    }

    void type(char letter)
    {
        sf::Event event{};
        event.type = sf::Event::TextEntered;
        event.text.unicode = static_cast<sf::Uint32>(letter);
        scene_.handle(event);
        frames(2);
    }

    [[nodiscard]] const std::vector<Widget>& widgets() const { return scene_.widgets().all(); }
    [[nodiscard]] std::vector<Widget> focused() const
    {
        std::vector<Widget> found;
        std::ranges::copy_if(widgets(), std::back_inserter(found), &Widget::is_focused);
        return found;
    }
    [[nodiscard]] sf::Image picture() const
    {
        sf::Texture texture;
        texture.create(window_.getSize().x, window_.getSize().y);
        texture.update(window_);
        return texture.copyToImage();
    }
    [[nodiscard]] sf::Vector2f size() const { return sf::Vector2f(window_.getSize()); }
    [[nodiscard]] scenes::BenchView& view() { return scene_.view(); }
    [[nodiscard]] scenes::OrderBoard& orders() { return scene_.orders(); }
    [[nodiscard]] scenes::BuilderBoard& builder() { return scene_.builder(); }

private:
    scenes::BenchModel& model_;
    scenes::FontFiles files_;
    scenes::Fonts fonts_;
    sf::RenderWindow window_;
    scenes::SettingsKeeper keeper_;
    scenes::BenchScene scene_;
};

/// How many pixels along a widget's edges differ between two pictures.
int changed_around(const sf::Image& a, const sf::Image& b, const scenes::WidgetBox& box)
{
    constexpr float reach = 12.0F; // of the ring at 200 %
    const auto pixel = [](float at, unsigned most) {
        return static_cast<unsigned>(std::clamp(at, 0.0F, static_cast<float>(most)));
    };
    const sf::Vector2u size = a.getSize();
    int count = 0;
    for (unsigned y = pixel(box.top - reach, size.y);
         y < pixel(box.top + box.height + reach, size.y); ++y) {
        for (unsigned x = pixel(box.left - reach, size.x);
             x < pixel(box.left + box.width + reach, size.x); ++x) {
            count += a.getPixel(x, y) != b.getPixel(x, y) ? 1 : 0;
        }
    }
    return count;
}

/// One stop of the walk: focus is at one place, on the screen, and seen.
void check_stop(const std::string& where, const Walker& walker, const Widget& stop,
                const sf::Image& before, const sf::Image& now)
{
    const scenes::WidgetBox& box = stop.box;
    const bool is_on_screen = stop.is_visible && box.width >= 8.0F && box.height >= 8.0F &&
                              box.left + box.width <= walker.size().x + 1.0F &&
                              box.top + box.height <= walker.size().y + 1.0F;
    if (!is_on_screen) {
        trouble(where, "focus is out of sight: " + name_of(stop));
        return;
    }
    // Two sides of a ring of two pixels, at the least.
    const int least = static_cast<int>(2.0F * std::min(box.width, box.height));
    if (changed_around(before, now, box) < least) {
        trouble(where, "focus is not seen: " + name_of(stop));
    }
}

/// What can be used now: of a dialog only, while one is open.
void note_usable(const Walker& walker, std::set<std::string>& usable)
{
    const auto& widgets = walker.widgets();
    const auto dialog = std::ranges::find(widgets, "dialog", &Widget::role);
    for (const Widget& widget : widgets) {
        const bool is_blocked = dialog != widgets.end() && widget.panel != dialog->panel;
        if (can_be_used(widget) && !is_blocked) {
            usable.insert(name_of(widget));
        }
    }
}

/// Goes round by Tab and gives where it came by.
std::vector<std::string> walk(const std::string& where, Walker& walker, bool is_backward,
                              std::set<std::string>& usable)
{
    std::vector<std::string> stops;
    for (int i = 0; i < most_stops; ++i) {
        const sf::Image before = walker.picture();
        walker.press(Key::Tab, is_backward);
        note_usable(walker, usable);
        const std::vector<Widget> focused = walker.focused();
        if (focused.size() != 1) {
            trouble(where, std::to_string(focused.size()) + " widgets have the focus");
            return stops;
        }
        const std::string name = name_of(focused.front());
        if (!stops.empty() && name == stops.front()) {
            return stops;
        }
        if (std::ranges::find(stops, name) != stops.end()) {
            trouble(where, "Tab goes in a ring that leaves something out, or twice by " + name);
            return stops;
        }
        if (!is_backward) {
            check_stop(where, walker, focused.front(), before, walker.picture());
        }
        stops.push_back(name);
    }
    trouble(where, "Tab does not come back");
    return stops;
}

/// Goes round once more and moves what arrow keys move, there and back.
void try_arrows(const std::string& where, Walker& walker, std::size_t stop_count)
{
    for (std::size_t i = 0; i < stop_count; ++i) {
        walker.press(Key::Tab);
        const Widget before = walker.focused().empty() ? Widget{} : walker.focused().front();
        const bool is_moved = before.role == "slider" || before.role == "choice";
        if (!is_moved || !before.is_enabled || before.name.starts_with("Page")) {
            continue;
        }
        for (const auto& [there, back] :
             {std::pair{Key::Right, Key::Left}, std::pair{Key::Left, Key::Right}}) {
            walker.press(there);
            const std::string value = walker.focused().front().value;
            walker.press(back);
            if (value != before.value) {
                break;
            }
            if (there == Key::Left) {
                trouble(where, "arrow keys move nothing: " + name_of(before));
            }
        }
    }
}

void check_walk(const std::string& where, Walker& walker)
{
    std::set<std::string> usable;
    const std::vector<std::string> stops = walk(where, walker, false, usable);
    if (is_showing) {
        std::printf("\n%s\n", where.c_str());
        for (const std::string& stop : stops) {
            std::printf("    %s\n", stop.c_str());
        }
    }
    for (const std::string& name : usable) {
        if (std::ranges::find(stops, name) == stops.end()) {
            trouble(where, "Tab never comes to " + name);
        }
    }
    std::vector<std::string> back = walk(where, walker, true, usable);
    std::ranges::reverse(back);
    std::ranges::rotate(back, std::ranges::find(back, stops.empty() ? "" : stops.front()));
    if (back != stops) {
        trouble(where, "Shift + Tab takes another way than Tab");
    }
    try_arrows(where, walker, stops.size());
}

/// A dialog: opened by its key, walked, closed by Escape, focus back where it was.
void check_dialog(const std::string& where, Walker& walker, Key::Key key, bool has_control)
{
    walker.press(Key::Tab);
    const std::vector<Widget> before = walker.focused();
    walker.press(key, false, has_control);
    const bool is_open = std::ranges::any_of(
        walker.widgets(), [](const Widget& widget) { return widget.role == "dialog"; });
    if (!is_open) {
        trouble(where, "the key opens no dialog");
        return;
    }
    check_walk(where, walker);
    walker.press(Key::Escape);
    const bool is_shut = std::ranges::none_of(
        walker.widgets(), [](const Widget& widget) { return widget.role == "dialog"; });
    if (!is_shut) {
        trouble(where, "Escape does not close it");
    }
    const std::vector<Widget> after = walker.focused();
    if (before.size() != 1 || after.size() != 1 || name_of(before[0]) != name_of(after[0])) {
        trouble(where, "focus does not come back to where it was");
    }
}

/// A dialog of a work order, opened by what leads to it: walked, closed by Escape.
void check_order_dialog(const std::string& where, Walker& walker, bool& is_open)
{
    is_open = true;
    walker.frames(3);
    check_walk(where, walker);
    walker.press(Key::Escape);
    if (is_open) {
        trouble(where, "Escape does not close it");
    }
}

/// The shelf of work orders and every page of one under way, by keys from the bench and back.
void walk_orders(const std::string& look, Walker& walker, bool is_small)
{
    const auto order = tests::small_order();
    walker.press(Key::W);
    if (!walker.view().shows_orders) {
        trouble(look, "W does not lead to the work orders");
        return;
    }
    scenes::OrderView& view = walker.orders().view();
    view.shelf = {{"small_order.json", order->id, order, ""}};
    view.order = 0;
    view.records.clear();
    walker.frames(3);
    check_walk(look + ", shelf of orders", walker);
    shop::Attempt attempt(order, order->seed);
    attempt.finish();
    attempt.perform(shop::DoCheck{"look_round", {}});
    attempt.perform(shop::Suspect{{"bowl_vent_plugged", "cap_vent_plugged", "filter_plugged"}});
    walker.orders().desk().show(attempt, nullptr);
    using scenes::OrderPage;
    for (const auto& [page, name] :
         {std::pair{OrderPage::order, "order"}, std::pair{OrderPage::sheet, "job sheet"},
          std::pair{OrderPage::checks, "checks"}, std::pair{OrderPage::repairs, "repairs"},
          std::pair{OrderPage::suspects, "suspects"}, std::pair{OrderPage::finding, "finding"}}) {
        if (page < OrderPage::checks && !is_small) {
            continue; // in a large window they stand side by side
        }
        view.page = page;
        view.suspect = 1; // so that it can be moved both ways
        walker.frames(4);
        walker.press(Key::Escape); // a page with a single stop has the focus elsewhere at first
        check_walk(look + ", order, page " + name, walker);
    }
    view.page = OrderPage::checks;
    view.check_to_begin = "bowl_drain_crack";
    for (const std::string& id : order->workshop->find_check("bowl_drain_crack")->cautions) {
        view.heeded[id] = false;
    }
    check_order_dialog(look + ", order, cautions", walker, view.has_cautions_open);
    check_order_dialog(look + ", order, guess", walker, view.has_guess_open);
    check_order_dialog(look + ", order, hand in", walker, view.has_hand_in_open);
    walker.press(Key::Escape);
    walker.press(Key::W);
    if (walker.view().shows_orders) {
        trouble(look, "W does not lead back to the bench");
    }
}

/// What is typed into a field of several lines breaks into lines, is left by Escape as it is, and
/// goes with one Ctrl + Z.
void check_undo(const std::string& where, Walker& walker)
{
    const scenes::OrderDraft& draft = walker.builder().building().draft();
    const std::string before = draft.now().customer;
    walker.press(Key::Num3, false, true);
    walker.press(Key::Escape);
    for (int i = 0; i < most_stops; ++i) {
        walker.press(Key::Tab);
        if (!walker.focused().empty() && walker.focused().front().role == "text field") {
            break;
        }
    }
    walker.press(Key::End);
    const std::string typed = " who mows a long slope, tips it over and never looks at the filter";
    for (const char letter : typed) {
        walker.type(letter);
    }
    walker.press(Key::Enter); // puts nothing in
    walker.press(Key::Escape);
    if (draft.now().customer != before + typed) {
        trouble(where,
                "typed was \"" + before + typed + "\", there is \"" + draft.now().customer + "\"");
    }
    walker.press(Key::Z, false, true);
    walker.frames(3);
    if (draft.now().customer != before) {
        trouble(where, "Ctrl + Z does not take back what was typed");
    }
}

/// The builder of work orders: every page by its key, every dialog, what Ctrl + Z gives back, and
/// the student's screen; by keys from the bench and back.
void walk_builder(const std::string& look, Walker& walker)
{
    walker.press(Key::I);
    if (walker.view().shows_builder) {
        trouble(look, "the builder, which shows answers, opens with an attempt in hand");
    }
    walker.orders().desk().put_away();
    walker.press(Key::I);
    if (!walker.view().shows_builder) {
        trouble(look, "I does not lead to the builder");
        return;
    }
    scenes::OrderBuilding& building = walker.builder().building();
    scenes::BuilderView& view = walker.builder().view();
    building.begin(scenes::draft_of(*tests::small_order()));
    for (const auto& [key, page, name] :
         {std::tuple{Key::Num1, scenes::BuilderPage::machine, "machine"},
          std::tuple{Key::Num2, scenes::BuilderPage::hidden, "hidden"},
          std::tuple{Key::Num3, scenes::BuilderPage::customer, "customer"},
          std::tuple{Key::Num4, scenes::BuilderPage::permitted, "permitted"},
          std::tuple{Key::Num5, scenes::BuilderPage::marks, "marks"},
          std::tuple{Key::Num6, scenes::BuilderPage::trial, "try out"}}) {
        walker.press(key, false, true);
        if (view.page != page) {
            trouble(look, std::string("Ctrl and a number do not lead to ") + name);
        }
        walker.press(Key::Escape);
        check_walk(look + ", builder, page " + name, walker);
    }
    check_undo(look + ", builder", walker);
    const auto order = tests::small_order();
    view.shelf = {{"small_order.json", order->id, order, ""}};
    view.order = 0;
    check_order_dialog(look + ", builder, other orders", walker, view.has_orders_open);
    check_order_dialog(look + ", builder, put away", walker, view.has_discard_open);
    view.name = {.id = "mine", .path = "mine.json", .is_taken = true, .free_id = "mine_2"};
    check_order_dialog(look + ", builder, name", walker, view.has_name_open);
    building.begin(scenes::draft_of(*order)); // arrow keys have changed the machine meanwhile
    view.wants_preview = true;
    walker.frames(4);
    if (!walker.view().shows_orders) {
        trouble(look, "the builder does not show the student's screen: " + view.notice);
    }
    check_walk(look + ", builder, student's screen", walker);
    walker.press(Key::Escape);
    walker.press(Key::W);
    if (walker.view().shows_orders || !walker.view().shows_builder) {
        trouble(look, "W does not lead from the student's screen to the builder");
    }
    walker.press(Key::Escape);
    walker.press(Key::I);
    if (walker.view().shows_builder) {
        trouble(look, "I does not lead back to the bench");
    }
}

void walk_bench(const std::string& rig, unsigned width, unsigned height, int percent)
{
    const std::string look = rig + " " + std::to_string(width) + "x" + std::to_string(height) +
                             " " + std::to_string(percent) + " %";
    scenes::BenchModel model(std::make_shared<const sim::Rig>(sim::load_rig(rig)));
    model.begin_running();
    model.finish_replay();
    model.pace.is_paused = true;
    scenes::Settings settings;
    settings.machine = rig;
    settings.window = scenes::WindowPlace{0, 0, width, height};
    settings.scale_percent = percent;
    settings.is_motion_reduced = true;
    Walker walker(model, settings);
    using scenes::Page;
    for (const auto& [page, name] :
         {std::pair{Page::machine, "machine"}, std::pair{Page::grade, "grade"},
          std::pair{Page::charts, "charts"}, std::pair{Page::controls, "controls"},
          std::pair{Page::faults, "faults"}, std::pair{Page::run, "run"},
          std::pair{Page::changes, "changes"}}) {
        if (page < Page::controls && percent == 100) {
            continue; // in a large window they stand side by side
        }
        walker.view().page = page;
        walker.frames(4);
        check_walk(look + ", page " + name, walker);
    }
    for (const auto& [key, has_control, name] :
         {std::tuple{Key::F1, false, "keys"}, std::tuple{Key::F8, false, "settings"},
          std::tuple{Key::M, false, "machines"}, std::tuple{Key::S, true, "save"},
          std::tuple{Key::O, true, "open"}, std::tuple{Key::G, false, "go ahead"},
          std::tuple{Key::R, false, "branches"}, std::tuple{Key::Num1, false, "chart"}}) {
        check_dialog(look + ", dialog " + name, walker, key, has_control);
    }
    walker.press(Key::Tab);
    walker.press(Key::Escape);
    if (!walker.focused().empty()) {
        trouble(look, "Escape leaves the focus where it is");
    }
    walker.press(Key::F5);
    check_walk(look + ", projector", walker);
    walker.press(Key::Escape);
    walk_orders(look, walker, percent > 100);
    walk_builder(look, walker);
}

} // namespace

int main(int count, char** words)
{
    try {
        scenes::require_display();
        is_showing = count > 3;
        sf::err().rdbuf(nullptr);
        walk_bench(count > 1 ? words[1] : "mower", 1280, 720,
                   count > 2 ? std::stoi(words[2]) : 100);
    } catch (const std::exception& error) {
        std::fprintf(stderr, "walk_window: %s\n", error.what());
        return 1;
    }
    return trouble_count == 0 ? 0 : 1;
}

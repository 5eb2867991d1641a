#include "scenes/bench/settings_dialog.hpp"

#include "scenes/bench/bench_panels.hpp"
#include "scenes/present/words.hpp"
#include "scenes/ui/controls.hpp"
#include "scenes/ui/dialog.hpp"
#include "scenes/ui/panel.hpp"
#include "sim/error.hpp"

#include <algorithm>
#include <array>

namespace scenes {
namespace {

constexpr std::array text_sizes{100, 110, 125, 150, 175, 200};
/// The projector view: text is a thirtieth of the window's height, lines are heavier.
constexpr float projector_scale_per_pixel = 1.5F / 720.0F;
constexpr float projector_weight = 1.5F;

/// A choice between two values of a setting.
template <class Value, std::size_t Count>
void choose(BenchDesk& desk, const Choice& spec, const std::array<Value, Count>& values,
            Value Settings::*setting)
{
    const Value now = desk.settings.now().*setting;
    auto chosen = static_cast<std::size_t>(std::ranges::find(values, now) - values.begin());
    if (choice(desk.ui, spec, chosen)) {
        desk.settings.change([&](Settings& settings) { settings.*setting = values[chosen]; });
    }
}

/// A switch for a setting; `place` finds it in the settings.
template <class Place>
void flip(BenchDesk& desk, std::string_view name, Place place)
{
    Settings now = desk.settings.now();
    bool is_on = place(now);
    if (toggle(desk.ui, {.name = name, .on_text = words::on, .off_text = words::off}, is_on)) {
        desk.settings.change([&](Settings& settings) { place(settings) = is_on; });
    }
}

void show_language(BenchDesk& desk)
{
    const std::vector<Language> all = languages();
    std::vector<std::string_view> titles;
    std::size_t chosen = 0;
    for (std::size_t i = 0; i < all.size(); ++i) {
        titles.emplace_back(all[i].title);
        chosen = all[i].id == chosen_language() ? i : chosen;
    }
    if (choice(desk.ui, {.name = words::language, .options = titles, .id = "language"}, chosen)) {
        desk.settings.change([&](Settings& settings) { settings.language = all[chosen].id; });
    }
}

void show_wording(BenchDesk& desk)
{
    {
        const Row row(desk.ui, {1.0F, 1.0F});
        show_language(desk);
        choose(desk, {.name = words::units, .options = translated(words::unit_sets), .id = "units"},
               std::array{UnitSet::si, UnitSet::us_customary}, &Settings::units);
    }
    const Row row(desk.ui, {1.0F, 1.0F});
    choose(desk, {.name = words::ground, .options = translated(words::grounds), .id = "ground"},
           std::array{Ground::paper, Ground::blackboard}, &Settings::ground);
    if (language_decimal_sign() != '.') {
        const std::array<std::string_view, 2> signs{words::decimal_comma, words::decimal_point};
        choose(desk, {.name = words::numbers, .options = signs, .id = "decimal sign"},
               std::array{DecimalSign::of_language, DecimalSign::point}, &Settings::decimal_sign);
    }
}

void show_text_size(BenchDesk& desk)
{
    const int percent = desk.settings.now().scale_percent;
    const Row row(desk.ui, {2.8F, 1.0F, 1.0F});
    reading(desk.ui, words::text_size, std::to_string(percent) + " %");
    if (button(desk.ui, {.name = "\u2212", .is_enabled = percent > text_sizes.front()})) {
        change_text_size(desk.settings, -1);
    }
    if (button(desk.ui, {.name = "+", .is_enabled = percent < text_sizes.back()})) {
        change_text_size(desk.settings, 1);
    }
}

void show_projector(BenchDesk& desk)
{
    heading(desk.ui, words::projector_shows);
    flip(desk, words::projector_grade, [](Settings& s) -> bool& { return s.projector.grade; });
    flip(desk, words::projector_standpipes,
         [](Settings& s) -> bool& { return s.projector.standpipes; });
    flip(desk, words::projector_charts, [](Settings& s) -> bool& { return s.projector.charts; });
    flip(desk, words::projector_panel, [](Settings& s) -> bool& { return s.projector.panel; });
}

} // namespace

void show_settings(BenchDesk& desk)
{
    bool& is_open = desk.view.has_settings_open;
    const Dialog dialog{
        desk.ui, {.name = words::settings, .width = 620.0F, .id = "settings"}, is_open};
    if (!dialog) {
        return;
    }
    {
        // What does not fit scrolls, and the way out stays in sight.
        const Look& look = desk.ui.look();
        const float room = desk.window_height - look.px(150.0F);
        const ScrollArea area(desk.ui, "all settings", std::min(room, look.px(600.0F)));
        show_wording(desk);
        show_text_size(desk);
        flip(desk, words::reduced_motion, [](Settings& s) -> bool& { return s.is_motion_reduced; });
        rule(desk.ui);
        heading(desk.ui, words::sound);
        show_sound(desk);
        rule(desk.ui);
        show_projector(desk);
    }
    if (button(desk.ui, {.name = words::close, .is_primary = true})) {
        is_open = false;
    }
}

void switch_ground(SettingsKeeper& settings)
{
    const bool is_paper = settings.now().ground == Ground::paper;
    settings.change(
        [=](Settings& changed) { changed.ground = is_paper ? Ground::blackboard : Ground::paper; });
}

void change_text_size(SettingsKeeper& settings, int steps)
{
    const int now = settings.now().scale_percent;
    const auto* const above = std::ranges::upper_bound(text_sizes, now);
    const auto* const below = std::ranges::lower_bound(text_sizes, now);
    int wanted = now;
    if (steps > 0 && above != text_sizes.end()) {
        wanted = *above;
    } else if (steps < 0 && below != text_sizes.begin()) {
        wanted = *(below - 1);
    } else if (steps == 0) {
        wanted = text_sizes.front();
    }
    settings.change([=](Settings& changed) { changed.scale_percent = wanted; });
}

Look look_of(const Settings& settings, float projector_height)
{
    const float scale = static_cast<float>(settings.scale_percent) / 100.0F;
    return {.theme = settings.ground == Ground::paper ? paper_theme : board_theme,
            .scale = scale * std::max(1.0F, projector_height * projector_scale_per_pixel),
            .weight = projector_height > 0.0F ? projector_weight : 1.0F};
}

void apply_settings(SettingsKeeper& settings, float projector_height, Interface& ui)
{
    const Settings& now = settings.now();
    if (chosen_language() != now.language) {
        try {
            choose_language(now.language);
        } catch (const std::runtime_error&) { // not there, or its file is wrong
            settings.without().push_back({words::no_language, now.language});
            settings.override_with([](Settings& changed) { changed.language = "en"; });
            choose_language("en");
        }
    }
    if (chosen_decimal_sign() != now.decimal_sign) {
        choose_decimal_sign(now.decimal_sign);
    }
    if (chosen_units() != now.units) {
        choose_units(now.units);
    }
    ui.set_look(look_of(now, projector_height));
}

} // namespace scenes

#include "scenes/bench/bench_keys.hpp"
#include "scenes/present/builder_words.hpp"
#include "scenes/present/hand_words.hpp"
#include "scenes/present/order_words.hpp"
#include "scenes/present/time_words.hpp"
#include "scenes/present/words.hpp"

#include <algorithm>

// The keys and what they do, as the key map shows them.

namespace scenes {

void BenchKeys::name_lines(const std::vector<Action>& actions)
{
    lines_.clear();
    const auto line = [this](std::string_view key, std::string_view does) {
        lines_.push_back({std::string(key), std::string(does)});
    };
    line(phrase("Space|the key"), words::key_pause);
    line("\u2190  \u2192", words::key_back);
    line(phrase("Shift + \u2190  \u2192"), words::key_frame_back);
    line("Ctrl + \u2190  \u2192", words::key_second);
    line(phrase("Page Up, Page Down"), words::key_ten);
    line(phrase("Ctrl + Home, End"), words::key_ends);
    line("G", words::key_ahead);
    line("R", words::key_branches);
    line("Esc", words::key_stop);
    line(",  .", words::key_pace);
    for (const ActionKey& key : action_keys_) {
        const Action& action = actions[key.action];
        const std::string_view title = translated(action.title);
        line(key.shown,
             action.release.empty() ? std::string(title) : filled(words::key_hold, {title}));
    }
    const bool has_stop = std::ranges::find(actions, "stop", &Action::id) != actions.end();
    if (!has_stop) {
        line("S", words::key_stop_switch);
    }
    line("M", words::key_machine);
    line("W", words::key_orders);
    line("I", words::key_builder);
    line(phrase("1 to 6"), words::key_charts);
    line("+  \u2212", words::key_span);
    line("Z  X", words::key_zoom);
    line(phrase("Home, 0|the keys"), words::key_whole);
    line(phrase("N, Shift + N"), words::key_part);
    line(phrase("Enter|the key"), words::key_frame_part);
    line("V", words::key_shut);
    line("F2  F3  F4", words::key_pages);
    line("F7", words::key_changes);
    line("F2  F3  F4  F7", words::key_order_pages);
    line(phrase("Ctrl + 1 to 6"), words::key_builder_pages);
    line(phrase("Tab, Shift + Tab"), words::key_tab);
    line("F6", words::key_panel);
    line(phrase("Arrow keys"), words::key_arrows);
    line("Ctrl + Z", words::undo);
    line(phrase("Ctrl + Shift + Z"), words::redo);
    line("Ctrl + S", words::save);
    line("Ctrl + O", words::open);
    line("Ctrl + +, Ctrl + \u2212", words::key_text);
    line("F5", words::key_projector);
    line(phrase("Page Down|the key"), words::key_clicker);
    line(phrase("Page Up|the key"), words::key_clicker_step);
    line("F8", words::key_settings);
    line("F9", words::key_ground);
    line("[  ]", words::key_tip);
    line("K", words::key_cap);
    line("U", words::key_mute);
    line("C", words::key_captions);
    line("F1", words::key_help);
    line("Ctrl + Q", words::key_quit);
}

} // namespace scenes

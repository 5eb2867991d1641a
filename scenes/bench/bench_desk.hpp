#pragma once

#include "scenes/bench/bench_layout.hpp"
#include "scenes/present/bench_model.hpp"
#include "scenes/present/departures.hpp"
#include "scenes/present/fault_list.hpp"
#include "scenes/present/settings_keeper.hpp"
#include "scenes/ui/interface.hpp"
#include "scenes/view/text.hpp"

#include <optional>
#include <string>
#include <vector>

namespace scenes {

/// A machine to choose from.
struct MachineEntry {
    std::string id;
    std::string title; ///< or why it cannot be had
};

/// What a person has chosen about the bench itself, as opposed to the machine on it.
struct BenchView {
    Page page = Page::machine;
    bool shows_twin = true;
    bool is_shut = false; ///< the drawing shows the machine from outside only
    std::size_t span = 1; ///< index into words::span_seconds
    std::string fault_search;
    HiddenFaults hidden; ///< while one is at work the machine is shut and heads are not shown
    std::vector<std::string> broken; ///< listed as such; stays while a slider is dragged
    std::string notice;              ///< what was done last, below the drawing
    bool wants_to_quit = false;
    bool is_projector = false;
    bool shows_orders = false;  ///< work orders in place of the bench
    bool wants_orders = false;  ///< from the next frame on
    bool shows_builder = false; ///< the builder of work orders in place of the bench
    bool wants_builder = false;

    bool has_keys_open = false;
    bool has_settings_open = false;
    bool has_save_open = false;
    bool has_open_open = false;
    bool has_machines_open = false;
    std::vector<MachineEntry> machines; ///< while they are chosen from
    std::size_t machine = 0;

    bool has_ahead_open = false;
    std::string ahead_to;
    std::string ahead_trouble;
    bool has_branches_open = false;
    std::size_t branch = 0;                     ///< selected in the list
    std::optional<std::size_t> change;          ///< the reading selected among the changes
    std::optional<std::size_t> reading_to_show; ///< that some chart is to take up

    std::string path; ///< in the dialogs that save and open
    std::string open_trouble;

    /// The slider that a pointer drags, and the button it holds.
    std::string dragged;
    std::string held;
    bool is_held_by_key = false;
    bool is_held_in_drawing = false;
};

/// All that panels and dialogs of the bench work with.
struct BenchDesk {
    BenchModel& model;
    BenchView& view;
    SettingsKeeper& settings;
    Interface& ui;
    std::vector<Action> actions;
    const Text& ruler;            ///< measures words
    float window_height = 720.0F; ///< pixels; how high lists in dialogs can be
    sf::Vector2f pointer{};       ///< pixels of the window
    float panel_width = 340.0F;   ///< pixels; whether words fit side by side
    Departures changes{};         ///< what changed first in the run that is shown
};

} // namespace scenes

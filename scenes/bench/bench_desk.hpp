#pragma once

#include "scenes/bench/bench_layout.hpp"
#include "scenes/present/bench_model.hpp"
#include "scenes/present/departures.hpp"
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
    std::size_t span = 1; ///< index into words::span_seconds
    std::string fault_search;
    std::string notice; ///< what was done last, below the drawing
    bool wants_to_quit = false;

    bool has_keys_open = false;
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
    sf::Vector2f pointer;                       ///< pixels

    std::string path; ///< in the dialogs that save and open
    std::string open_trouble;

    /// The slider that a pointer drags, and the button it holds.
    std::string dragged;
    std::string held;
    bool is_held_by_key = false;
};

/// All that panels and dialogs of the bench work with.
struct BenchDesk {
    BenchModel& model;
    BenchView& view;
    Interface& ui;
    std::vector<Action> actions;
    const Text& ruler;            ///< measures words
    float window_height = 720.0F; ///< pixels; how high lists in dialogs can be
    float panel_width = 340.0F;   ///< pixels; whether words fit side by side
    Departures changes{};         ///< what changed first in the run that is shown
};

} // namespace scenes

#pragma once

#include "scenes/bench/bench_desk.hpp"

#include <span>
#include <string>
#include <vector>

namespace scenes {

class ChartBoard;
class DrawingBoard;

/// A line of the key map.
struct KeyLine {
    std::string key;
    std::string does;
};

/// The keys of the bench, those for the rig's doings among them.
class BenchKeys {
public:
    explicit BenchKeys(const std::vector<Action>& actions);

    /// Writes the lines of the key map in the chosen language.
    void name_lines(const std::vector<Action>& actions);
    [[nodiscard]] std::span<const KeyLine> lines() const { return lines_; }

    /// Does what the keys of this frame say that no widget used.
    void take(BenchDesk& desk, ChartBoard& charts, DrawingBoard& drawing);
    /// The keys that mean the same on every screen: help, settings, size and ground, leaving.
    static void take_window(BenchDesk& desk);
    /// A key was let go of, or all are since the window lost the keyboard.
    void release(BenchDesk& desk, sf::Keyboard::Key key);
    void release_all(BenchDesk& desk);

private:
    struct ActionKey {
        sf::Keyboard::Key key;
        std::size_t action;
        std::string_view shown;
    };

    static void take_time(BenchDesk& desk);
    static void take_moments(BenchDesk& desk);
    void take_actions(BenchDesk& desk);
    static void take_bench(BenchDesk& desk);

    std::vector<ActionKey> action_keys_;
    std::vector<KeyLine> lines_;
    sf::Keyboard::Key held_ = sf::Keyboard::Unknown;
};

} // namespace scenes

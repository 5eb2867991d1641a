#pragma once

#include "scenes/present/phrase.hpp"
#include "scenes/present/readout.hpp"

#include <optional>
#include <string>

namespace scenes {

/// What the screen looks like: ink on paper, or chalk on a blackboard.
enum class Ground { paper, blackboard };

/// Where a window lies on the screen, in pixels.
struct WindowPlace {
    int left = 0;
    int top = 0;
    unsigned width = 1280;
    unsigned height = 720;
    bool operator==(const WindowPlace&) const = default;
};

/// The smallest window in which the bench can be used, and the largest that can be drawn.
inline constexpr unsigned least_window = 320;
inline constexpr unsigned most_window = 8192;

/// A place at which all of a window is on a screen of the given size, as near as can be to the
/// wanted one; smaller where the screen is.
WindowPlace fitted(const WindowPlace& wanted, unsigned screen_width, unsigned screen_height);

/// What the projector view shows beside the drawing.
struct ProjectorParts {
    bool grade = true;
    bool standpipes = true;
    bool charts = false;
    bool panel = false;
    bool operator==(const ProjectorParts&) const = default;
};

/// What a person has chosen about the program, as opposed to a machine; remembered.
struct Settings {
    std::string language = "en";
    DecimalSign decimal_sign = DecimalSign::of_language;
    UnitSet units = UnitSet::si;
    Ground ground = Ground::paper;
    int scale_percent = 100; ///< of text, 100 to 200
    bool is_motion_reduced = false;
    int volume_percent = 60; ///< of the engine's sound, 0 to 100
    bool is_muted = false;
    bool has_captions = false; ///< what is heard stands in words too
    std::string machine = "mower";
    std::optional<WindowPlace> window; ///< absent until there was one
    ProjectorParts projector;
    bool operator==(const Settings&) const = default;

    /// What the engine is rendered with, 0 to 1.
    [[nodiscard]] double loudness() const { return is_muted ? 0.0 : volume_percent / 100.0; }
};

/// The settings of somebody who never chose: in the language their system speaks, where we have it.
Settings usual_settings();

} // namespace scenes

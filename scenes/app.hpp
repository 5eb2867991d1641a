#pragma once

#include <optional>
#include <string>

namespace scenes {

/// What a window or a picture looks like.
struct Appearance {
    enum class Ground { paper, blackboard };
    Ground ground = Ground::paper;
    unsigned width_px = 1280;
    unsigned height_px = 720;
    int scale_percent = 100;
    bool operator==(const Appearance&) const = default;
};

/// Opens the program's window.
struct WindowRequest {
    Appearance appearance;
    std::optional<std::string> rig; ///< the machine; the first one when absent
};

/// Takes a picture of a scene.
///
/// unit:    at_seconds is the time on the machine's own clock
struct ShotRequest {
    std::string scene;
    std::optional<std::string> rig;   ///< the machine; that of the sheet, or the first, when absent
    std::optional<std::string> sheet; ///< the run sheet's file; the rig's default run when absent
    double at_seconds = 30.0;
    Appearance appearance;
    std::string picture;              ///< the PNG file to write
    std::optional<std::string> part;  ///< of the drawing, shown large
    std::optional<std::string> boxes; ///< a CSV file for where the drawing's words stand
    bool is_shut = false;             ///< the machine from outside
};

/// Shows the bench until the person closes it; gives the program's exit code.
///
/// throws:  RequestError for an unknown rig or no display; AssetError when an asset is wrong
int open_window(const WindowRequest& request);

/// Writes the picture of a scene; gives the program's exit code.
///
/// throws:  RequestError for an unknown scene or rig, no display or a file that cannot be written;
///          AssetError when an asset or the run sheet is wrong
int take_shot(const ShotRequest& request);

} // namespace scenes

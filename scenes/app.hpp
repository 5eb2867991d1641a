#pragma once

#include "scenes/present/settings.hpp"

#include <optional>
#include <string>

namespace scenes {

struct PixelSize {
    unsigned width = 1280;
    unsigned height = 720;
    bool operator==(const PixelSize&) const = default;
};

/// What a window or a picture is asked to look like; the rest is as the person's settings have it,
/// or for a picture as for somebody without any.
struct Appearance {
    std::optional<Ground> ground = {};
    std::optional<PixelSize> size = {};
    std::optional<int> scale_percent = {};
    std::optional<std::string> language = {}; ///< of those there are
    std::optional<UnitSet> units = {};
    bool is_projector = false; ///< in the projector view
    bool operator==(const Appearance&) const = default;

    /// Puts what was asked for into settings.
    void apply(Settings& settings) const;
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
    std::string picture;                     ///< the PNG file to write
    std::optional<std::string> part;         ///< of the drawing, shown large
    std::optional<std::string> boxes;        ///< a CSV file for where the drawing's words stand
    bool is_shut = false;                    ///< the machine from outside
    std::optional<std::string> order = {};   ///< of the scene order: a file or an id
    std::optional<std::string> actions = {}; ///< what a student does on it; good work when absent
    std::optional<std::string> page = {};    ///< of the order that is shown
};

/// Takes the reference pictures of all scenes.
struct PicturesRequest {
    std::string folder;
    std::optional<std::string> rig; ///< of this machine only
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

/// Writes the reference pictures into a folder and says on standard output what in them is cut off
/// or lies on something else; gives the program's exit code, 1 when there is any such thing.
///
/// throws:  RequestError for an unknown rig, no display or a folder that cannot be written;
///          AssetError when an asset is wrong
int take_pictures(const PicturesRequest& request);

} // namespace scenes

#pragma once

#include "tests/temporary_folder.hpp"

#include <cstdlib>

/// Assets of one small machine, used instead of the program's own until the end of the test.
///
/// The machine is a block of 100 J/K that starts at the ambient temperature. As heat is kept when
/// its capacity changes, its temperature in degC follows as start * 100 J/K / capacity.
class BlockAssets {
public:
    explicit BlockAssets(std::string_view rig = sound_rig)
    {
        std::filesystem::create_directory(folder.file("rigs"));
        std::filesystem::create_directory(folder.file("faults"));
        (void)folder.with("rigs/block.json", rig);
        (void)folder.with("faults/halved.json", fault);
        ::setenv("STANDPIPE_ASSETS", folder.file("").c_str(), 1);
    }
    BlockAssets(const BlockAssets&) = delete;
    BlockAssets& operator=(const BlockAssets&) = delete;
    BlockAssets(BlockAssets&&) = delete;
    BlockAssets& operator=(BlockAssets&&) = delete;
    ~BlockAssets() { ::unsetenv("STANDPIPE_ASSETS"); }

    TemporaryFolder folder;

private:
    static constexpr std::string_view sound_rig = R"({
        "format": 1, "id": "block", "title": "Block of iron",
        "fuel": {"reid_pressure": "62 kPa", "density": "745 kg/m3", "viscosity": "0.5 mPa s",
                 "ethanol": 0, "light_share": 0.3, "gum": "0 mm"},
        "parts": [{"id": "block", "kind": "heat_lump", "capacity": "100 J/K"}],
        "controls": [{"id": "size", "title": "Its size", "unit": "J/K", "low": 50, "high": 200,
                      "start": 100, "part": "block", "parameter": "capacity"}],
        "doings": [{"id": "dip", "title": "Dip it into ice water",
                    "jump": [{"state": "block.heat", "to": 0}]}],
        "default_sheet": {"format": 1, "rig": "block", "commands": [
            {"at": "0.5 s", "do": "set", "control": "size", "to": 200}]},
        "default_length": "1 s",
        "drawing": {}})";
    static constexpr std::string_view fault = R"({
        "format": 1, "id": "halved", "title": "Half of it is gone", "where": "block",
        "about": "Someone took a saw.", "machines": [{"rigs": ["block"], "found": "It is small.",
        "cures": ["Weld it"], "changes": [{"part": "block", "parameter": "capacity",
                                           "scale": 0.5}]}]})";
};

#pragma once

#include "command.hpp"
#include "part.hpp"
#include "tolerance.hpp"

#include <optional>

namespace sim {

/// A lever, tap or setting that a person can move.
struct Control {
    std::string id;
    std::string title;
    std::string unit;
    double low = 0.0;
    double high = 1.0;
    double start = 0.0;
    /// What it sets: a part's parameter, or with an empty part the tilt named by `parameter`.
    std::string part;
    std::string parameter;
    bool is_workshop = false; ///< not on the machine's own panel: a drain, a parted hose
};

/// Something a person does once.
struct Doing {
    struct Setting {
        std::string part;
        std::string parameter;
        double to = 0.0;
    };
    struct Jump {
        std::string state;
        double to = 0.0;
    };
    std::string id;
    std::string title;
    std::vector<Setting> settings;
    std::vector<Jump> jumps;
    std::string fills; ///< the chamber whose filling is set to the amount given; empty for none
    std::string adds_to = {}; ///< the state to which the amount given is added; empty for none
    double most = 1.0;        ///< that can be given, and that such a state can reach by it
    bool is_workshop = false; ///< done with the workshop's tools

    [[nodiscard]] bool has_amount() const { return !fills.empty() || !adds_to.empty(); }
};

/// One change a fault makes to one parameter, in proportion to its severity.
struct FaultChange {
    enum class How { scale, add, set };
    std::string part;
    std::string parameter;
    How how = How::scale;
    double amount = 1.0;
};

/// What can be wrong with a machine.
struct Fault {
    std::string id;
    std::string title;
    std::string where;
    std::string about;
    std::string found;
    std::vector<std::string> cures;
    std::vector<FaultChange> changes;
};

/// A machine as its files state it: parts, fuel, controls, doings, faults, a default run.
struct Rig {
    std::string id;
    std::string title;
    std::string file;
    FuelBlend fuel;
    std::vector<PartSpec> parts;
    std::vector<Control> controls;
    std::vector<Doing> doings;
    std::vector<Fault> faults;
    Tolerance tolerance;
    RunSheet default_sheet;
    double default_length = 120.0;
    std::string drawing; ///< the rig file's "drawing" value as JSON text, read by the screen

    [[nodiscard]] const Control* find_control(std::string_view name) const;
    [[nodiscard]] const Doing* find_doing(std::string_view name) const;
    [[nodiscard]] const Fault* find_fault(std::string_view name) const;
    /// The table row of a part's parameter, or of the fuel's; null when there is none.
    [[nodiscard]] const ParameterInfo* find_parameter(std::string_view part,
                                                      std::string_view name) const;
};

/// The fuel's parameters, read and changed like a part's; the part id in files is "fuel".
std::span<const ParameterInfo> fuel_parameters();

/// The folder of the program's assets: the environment variable STANDPIPE_ASSETS when set, else
/// where the program was built from.
std::string assets_folder();

/// Ids of all rigs in the assets, sorted.
std::vector<std::string> rig_ids();

/// Loads a rig and its faults from the assets.
///
/// throws:  RequestError when there is no such rig; AssetError when a file is wrong
Rig load_rig(std::string_view id);

/// Loads from given folders; `load_rig` with the assets' own.
Rig load_rig_file(const std::string& path, const std::string& faults_folder);

} // namespace sim

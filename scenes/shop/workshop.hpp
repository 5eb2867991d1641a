#pragma once

#include "scenes/shop/procedure.hpp"

namespace shop {

/// Words of caution that are shown before work that could hurt someone.
struct Caution {
    std::string id;
    std::string title;
    std::string says;
};

/// A condition that checks begin in, and how the workshop brings the machine there.
struct Beginning {
    std::string id;
    std::string title;
    std::string after; ///< the beginning whose steps come first; empty for none
    Procedure procedure;
};

/// What checks and repairs have in common, for one machine.
struct Job {
    std::string id;
    std::string title;
    std::string about;
    std::vector<std::string> tools;
    std::vector<std::string> cautions; ///< ids
    double minutes = 0.0;              ///< bench minutes of a practised technician
    double money = 0.0;                ///< parts and supplies
    std::string begins;                ///< id of the beginning
    Procedure procedure;
};

/// A workshop check: a procedure that takes readings.
struct Check : Job {
    std::string disturbs; ///< what it leaves changed; empty for nothing
};

/// Work that restores or sets parameters; whether it cures is found by running the machine.
struct Repair : Job {
    enum class Kind { clean, tighten, adjust, replace };
    struct Harm {
        double chance = 0.0;
        std::string says;
        Procedure procedure;
    };
    Kind kind = Kind::clean;
    std::optional<Harm> harm;

    /// Whether it puts a parameter back to what the rig was built with.
    [[nodiscard]] bool restores(std::string_view part, std::string_view parameter) const;
    /// Whether it undoes all that a fault changes.
    [[nodiscard]] bool undoes(const sim::Fault& fault) const;
};

/// All that is at hand to find and mend what is wrong with a machine.
struct Workshop {
    std::shared_ptr<const sim::Rig> rig;
    std::shared_ptr<const Instruments> instruments;
    std::vector<Caution> cautions;
    std::vector<Beginning> beginnings;
    std::vector<Check> checks;
    std::vector<Repair> repairs;
    std::uint64_t sum = 0; ///< checksum of all files that decide what a check reads

    [[nodiscard]] const Caution* find_caution(std::string_view id) const;
    [[nodiscard]] const Beginning* find_beginning(std::string_view id) const;
    [[nodiscard]] const Check* find_check(std::string_view id) const;
    [[nodiscard]] const Repair* find_repair(std::string_view id) const;
};

/// Loads what the assets' folder has for a rig: instruments, cautions, beginnings, checks, repairs.
///
/// throws:  AssetError naming file, pointer, what is wrong and what is allowed
std::shared_ptr<const Workshop> load_workshop(std::shared_ptr<const sim::Rig> rig,
                                              const std::string& assets);

/// The checks of these ids, or all of them when none is named.
///
/// throws:  RequestError when there is no such check, with those that come near
std::vector<const Check*> checks_of(const Workshop& workshop, const std::vector<std::string>& ids);

/// A machine fresh from the shelf with these faults posted; without a tolerance, followed to the
/// rig's own.
sim::Simulator with_faults(const Workshop& workshop, const sim::Weather& weather,
                           std::span<const sim::SetFault> faults,
                           std::optional<sim::Tolerance> tolerance = {});

/// Brings a machine into a beginning, the ones it comes after first.
void bring_to(const Workshop& workshop, std::string_view beginning, sim::Simulator& machine);

} // namespace shop

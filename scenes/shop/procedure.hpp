#pragma once

#include "scenes/shop/instrument.hpp"
#include "sim/json_reader.hpp"
#include "sim/simulator.hpp"

#include <memory>
#include <optional>
#include <variant>
#include <vector>

namespace shop {

/// Whether one of the machine's readings stands above or below a limit.
struct Condition {
    std::size_t reading = 0; ///< index in the machine's readings
    bool wants_above = true;
    double limit = 0.0; ///< in SI

    [[nodiscard]] bool holds(const std::vector<double>& values) const
    {
        return wants_above ? values[reading] > limit : values[reading] < limit;
    }
};

/// What is read in the course of a procedure, with what, and what it would be on a sound machine.
struct Reading {
    /// What of the reading's way through the time it is watched for.
    enum class As { last, mean, least, most, change, swing, time, count };
    struct Band {
        double below = 0.0; ///< in SI; endless for the last
        std::string say;
    };
    std::string id;
    std::string title;
    const Instrument* instrument = nullptr;
    std::optional<std::size_t> of; ///< index in the machine's readings
    std::string part;              ///< of a parameter that is gauged in place of one
    std::string parameter;
    As as = As::last;
    Condition passes; ///< of As::time
    std::vector<Band> words;
    std::optional<double> least; ///< in SI, of a sound machine
    std::optional<double> most;
    std::vector<std::string> sound_words;

    [[nodiscard]] bool has_sound() const { return least || most || !sound_words.empty(); }
    /// Whether a value in SI, as it is without the instrument's noise, is a sound machine's.
    [[nodiscard]] bool is_sound(std::optional<double> value) const;
    /// The place among `words` of a value in SI.
    [[nodiscard]] std::size_t word_of(double value) const;
};

struct Step;

struct Act {
    sim::Command command;
};
struct Wait {
    sim::Tick ticks = 0;
};
/// Takes readings while time goes by; of no ticks, at once.
struct Watch {
    sim::Tick ticks = 0;
    std::optional<Condition> until;
    std::vector<std::size_t> readings; ///< indices in the procedure's
};
struct Repeat {
    std::size_t times = 0;
    Condition until;
    std::vector<Step> steps;
    std::optional<std::size_t> count; ///< the reading that takes the number of rounds
};
struct Choose {
    Condition when;
    std::vector<Step> steps;
    std::vector<Step> otherwise;
};

/// One primitive step on the live machine.
struct Step {
    std::variant<Act, Wait, Watch, Repeat, Choose> what;
};

/// Steps and the readings taken in them.
struct Procedure {
    std::vector<Step> steps;
    std::vector<Reading> readings;

    [[nodiscard]] const Reading* find(std::string_view id) const;
    /// Whether all that was read, in SI and in the order of `readings`, is a sound machine's.
    [[nodiscard]] bool is_sound(std::span<const std::optional<double>> values) const;
};

/// What the files of procedures may name: a machine with its readings, and the instruments.
struct Vocabulary {
    std::shared_ptr<const sim::Rig> rig;
    std::vector<sim::Network::Reading> readings;
    const Instruments* instruments = nullptr;

    Vocabulary(std::shared_ptr<const sim::Rig> machine, const Instruments& tools);
};

/// Reads a list of steps, at most 2,000 in all and six deep.
///
/// throws:  AssetError naming file, pointer, what is wrong and what is allowed
Procedure read_procedure(const sim::JsonNode& steps, const Vocabulary& vocabulary);

/// All alterations that a list of steps makes to parameters, whichever way it goes.
std::vector<sim::Mend> mending_of(const Procedure& procedure);

} // namespace shop

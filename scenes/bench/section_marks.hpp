#pragma once

#include "scenes/bench/section_sheet.hpp"
#include "scenes/present/machine_view.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace scenes {

/// A number of a part that its card shows.
struct Fact {
    enum class Kind {
        reading, ///< `name` is a reading's
        value,   ///< a parameter as it is
        bore,    ///< an area, shown as the bore of a round hole
    };
    std::string_view label; ///< English; a test finds it as the first argument of the makers below
    Kind kind = Kind::reading;
    std::string_view part; ///< whose parameter; nothing for a reading
    std::string_view name;
    std::string_view unit = {}; ///< of a parameter
};

/// A part of the drawing that can be named, pointed at and framed.
struct Mark {
    std::string_view name; ///< the trade's word in English; a test finds it in `.name = "..."`
    int rank = 1;          ///< 1: named also where there is little room
    Spot spot;             ///< where its leader ends
    Spot half{2.0, 2.0};   ///< half the size of the box about `spot` that belongs to it
    std::vector<Fact> facts = {};
    std::string note = {};      ///< after the name: the scale it is drawn at
    bool shows_outside = false; ///< also seen with the machine shut
};

/// The lines of a part's card: label and figure with unit, from the live machine.
struct CardLine {
    std::string_view label;
    std::string figure;
};
std::vector<CardLine> card_lines(const Mark& mark, const MachineView& machine);

/// A parameter as it stands, for short lists.
constexpr Fact value_fact(std::string_view label, std::string_view part, std::string_view name,
                          std::string_view unit)
{
    return {label, Fact::Kind::value, part, name, unit};
}
/// An area as the bore of a round hole.
constexpr Fact bore_fact(std::string_view label, std::string_view part, std::string_view name)
{
    return {label, Fact::Kind::bore, part, name, "mm"};
}
constexpr Fact reading_fact(std::string_view label, std::string_view name)
{
    return {label, Fact::Kind::reading, {}, name};
}

struct SectionPlan;
struct TrimmerPlan;
std::vector<Mark> marks_of(const SectionPlan& plan);
std::vector<Mark> marks_of(const TrimmerPlan& plan);

} // namespace scenes

#include "scenes/bench/section_marks.hpp"

#include "scenes/bench/section_room.hpp"
#include "scenes/present/readout.hpp"
#include "scenes/view/number.hpp"

#include <algorithm>

namespace scenes {
namespace {

std::string figure_of(double si, const sim::Network::Reading& reading)
{
    const Readout readout = readout_of(reading);
    const std::string figure = fixed_text(readout.shown(si), readout.decimals);
    return readout.unit.empty() ? figure : figure + " " + readout.unit;
}

} // namespace

std::vector<CardLine> card_lines(const Mark& mark, const MachineView& machine)
{
    std::vector<CardLine> lines;
    for (const Fact& fact : mark.facts) {
        if (fact.kind == Fact::Kind::reading) {
            if (const auto* reading = machine.find(fact.name)) {
                lines.push_back({fact.label, figure_of(machine.reading(fact.name), *reading)});
            }
        } else if (machine.has_parameter(fact.part, fact.name)) {
            const double si = machine.parameter(fact.part, fact.name);
            lines.push_back(
                {fact.label, figure_of(fact.kind == Fact::Kind::bore ? bore_of(si) * 1e-3 : si,
                                       {std::string(fact.name), std::string(fact.unit)})});
        }
    }
    return lines;
}

} // namespace scenes

#include "scenes/bench/section_marks.hpp"

#include "scenes/bench/section_room.hpp"
#include "scenes/present/phrase.hpp"
#include "scenes/present/readout.hpp"

#include <algorithm>

namespace scenes {
std::vector<CardLine> card_lines(const Mark& mark, const MachineView& machine)
{
    std::vector<CardLine> lines;
    for (const Fact& fact : mark.facts) {
        if (fact.kind == Fact::Kind::reading) {
            if (const auto* reading = machine.find(fact.name)) {
                lines.push_back({translated(fact.label),
                                 readout_of(*reading).text(machine.reading(fact.name))});
            }
        } else if (machine.has_parameter(fact.part, fact.name)) {
            const double si = machine.parameter(fact.part, fact.name);
            lines.push_back({translated(fact.label),
                             readout_of(fact.unit).text(
                                 fact.kind == Fact::Kind::bore ? bore_of(si) * 1e-3 : si)});
        }
    }
    return lines;
}

} // namespace scenes

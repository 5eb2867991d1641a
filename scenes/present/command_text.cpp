#include "scenes/present/command_text.hpp"

#include "scenes/present/readout.hpp"
#include "scenes/present/time_words.hpp"
#include "scenes/view/number.hpp"

namespace scenes {
namespace {

template <class... F>
struct Overloaded : F... {
    using F::operator()...;
};
template <class... F>
Overloaded(F...) -> Overloaded<F...>;

std::string percent(double share)
{
    return fixed_text(share * 100.0, 0) + " %";
}

std::string setting_text(const sim::Control& control, double to)
{
    const bool is_share = control.unit.empty() && control.high - control.low <= 1.0;
    if (is_share) {
        return percent(to);
    }
    const std::string number = fixed_text(to, control.unit.empty() ? 2 : 0);
    return control.unit.empty() ? number : number + " " + unit_sign(control.unit);
}

} // namespace

std::string command_text(const sim::Rig& rig, const sim::Command& command,
                         const HiddenFaults& hidden)
{
    const auto text = Overloaded{
        [&](const sim::SetControl& set) {
            const sim::Control* control = rig.find_control(set.control);
            return control == nullptr ? set.control
                                      : filled(words::set_to, {translated(control->title),
                                                               setting_text(*control, set.to)});
        },
        [&](const sim::SetFault& fault) {
            if (hidden.is_hidden(fault.fault)) {
                return std::string(words::hidden_fault);
            }
            const sim::Fault* known = rig.find_fault(fault.fault);
            return filled(words::set_to, {known == nullptr ? std::string_view(fault.fault)
                                                           : translated(known->title),
                                          percent(fault.severity)});
        },
        [&](const sim::Do& doing) {
            const sim::Doing* known = rig.find_doing(doing.doing);
            return known == nullptr ? doing.doing : std::string(translated(known->title));
        },
        [](const sim::Mend& mend) {
            return filled(words::worked_on, {mend.part + "." + mend.parameter});
        },
        [](const sim::SetLeaps& leaps) {
            return std::string(leaps.are_allowed ? words::leaps_over : words::every_turn);
        },
    };
    return std::visit(text, command);
}

} // namespace scenes

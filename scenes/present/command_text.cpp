#include "scenes/present/command_text.hpp"

#include "scenes/view/number.hpp"

namespace scenes {
namespace {

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
    return control.unit.empty() ? number : number + " " + control.unit;
}

} // namespace

std::string command_text(const sim::Rig& rig, const sim::Command& command)
{
    if (const auto* set = std::get_if<sim::SetControl>(&command)) {
        const sim::Control* control = rig.find_control(set->control);
        return control == nullptr ? set->control
                                  : control->title + ": " + setting_text(*control, set->to);
    }
    if (const auto* fault = std::get_if<sim::SetFault>(&command)) {
        const sim::Fault* known = rig.find_fault(fault->fault);
        return (known == nullptr ? fault->fault : known->title) + ": " + percent(fault->severity);
    }
    const auto& doing = std::get<sim::Do>(command);
    const sim::Doing* known = rig.find_doing(doing.doing);
    return known == nullptr ? doing.doing : known->title;
}

} // namespace scenes

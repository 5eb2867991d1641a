#include "simulator.hpp"

#include "error.hpp"
#include "ids.hpp"
#include "words.hpp"

#include <algorithm>
#include <cmath>
#include <sstream>

namespace sim {

namespace {
double time_of(Tick tick)
{
    return static_cast<double>(tick) * tick_length;
}

std::string range_text(double value, double low, double high, const std::string& unit)
{
    std::ostringstream text;
    text << value << " is out of range; allowed: " << low << " to " << high
         << (unit.empty() ? "" : " ") << unit;
    return text.str();
}

std::string parameter_key(const std::string& part, const std::string& parameter)
{
    return part + "." + parameter;
}
} // namespace

Simulator::Simulator(std::shared_ptr<const Rig> rig, Weather weather,
                     std::optional<Tolerance> tolerance)
    : rig_(std::move(rig)),
      network_(rig_->parts),
      weather_(weather),
      trajectory_(network_, tolerance.value_or(rig_->tolerance)),
      severities_(rig_->faults.size(), 0.0),
      state_(network_.state_count())
{
    for (const Control& control : rig_->controls) {
        control_values_.push_back(control.start);
    }
    refresh();
    const auto shelf = network_.shelved(surroundings_);
    trajectory_.begin(0.0, shelf);
    fuel_account_ = audited(shelf, &StateInfo::fuel);
    air_account_ = audited(shelf, &StateInfo::air);
    readings_.assign(network_.readings().begin(), network_.readings().end());
    readings_.push_back({"audit.fuel_error", "mg", 0, readings_.size()});
    readings_.push_back({"audit.air_error", "mmol", 0, readings_.size()});
}

std::string Simulator::check(const Command& command) const
{
    return std::visit([&](const auto& what) { return reason_against(what); }, command);
}

std::string Simulator::reason_against(const SetControl& command) const
{
    const Control* control = rig_->find_control(command.control);
    if (control == nullptr) {
        return "there is no control \"" + command.control + "\"" +
               choices_hint(command.control, ids_of(rig_->controls));
    }
    if (!(command.to >= control->low && command.to <= control->high)) {
        return "control " + command.control + ": " +
               range_text(command.to, control->low, control->high, control->unit);
    }
    return "";
}

std::string Simulator::reason_against(const Do& command) const
{
    const Doing* doing = rig_->find_doing(command.doing);
    if (doing == nullptr) {
        return "there is no doing \"" + command.doing + "\"" +
               choices_hint(command.doing, ids_of(rig_->doings));
    }
    if (doing->has_amount() && !(command.to >= 0.0 && command.to <= doing->most)) {
        return command.doing + ": " + range_text(command.to, 0.0, doing->most, "");
    }
    return "";
}

std::string Simulator::reason_against(const SetFault& command) const
{
    if (rig_->find_fault(command.fault) == nullptr) {
        return "there is no fault \"" + command.fault + "\"" +
               choices_hint(command.fault, ids_of(rig_->faults));
    }
    if (!(command.severity >= 0.0 && command.severity <= 1.0)) {
        return "severity of " + command.fault + ": " + range_text(command.severity, 0.0, 1.0, "");
    }
    return "";
}

std::string Simulator::reason_against(const Mend& command) const
{
    const ParameterInfo* info = rig_->find_parameter(command.part, command.parameter);
    if (info == nullptr) {
        return "there is no parameter \"" + parameter_key(command.part, command.parameter) + "\"";
    }
    if (command.how == Mend::How::set &&
        !(command.amount >= info->low && command.amount <= info->high)) {
        return parameter_key(command.part, command.parameter) + ": " +
               range_text(command.amount, info->low, info->high, "in SI units");
    }
    return std::isfinite(command.amount) ? "" : "an amount must be a finite number";
}

std::string Simulator::reason_against(const SetLeaps& /*command*/) const
{
    return can_leap() ? "" : "this engine is not followed turn by turn: nothing to leap over";
}

void Simulator::post(Command command, Tick at)
{
    const std::string reason = check(command);
    if (!reason.empty()) {
        throw RequestError(reason);
    }
    if (at < now_) {
        throw RequestError("tick " + std::to_string(at) + " has passed; it is tick " +
                           std::to_string(now_));
    }
    const auto place = std::ranges::upper_bound(pending_, at, {}, &TimedCommand::at);
    pending_.insert(place, {at, std::move(command)});
}

void Simulator::advance(Tick to)
{
    for (;;) {
        const bool command_due = !pending_.empty() && pending_.front().at <= to;
        const Tick target = command_due ? pending_.front().at : to;
        trajectory_.reach(network_, time_of(target));
        now_ = target;
        if (!command_due) {
            return;
        }
        settle(target);
    }
}

void Simulator::settle(Tick at)
{
    const double time = time_of(at);
    trajectory_.land(network_, time);
    state_.assign(trajectory_.last().begin(), trajectory_.last().end());
    const double fuel = audited(state_, &StateInfo::fuel);
    const double air = audited(state_, &StateInfo::air);
    const auto due = std::ranges::upper_bound(pending_, at, {}, &TimedCommand::at);
    apply_all({pending_.begin(), due}, state_);
    done_.insert(done_.end(), pending_.begin(), due);
    pending_.erase(pending_.begin(), due);
    refresh();
    fuel_account_ += audited(state_, &StateInfo::fuel) - fuel;
    air_account_ += audited(state_, &StateInfo::air) - air;
    trajectory_.begin(time, state_);
}

MachineMoment Simulator::keep() const
{
    MachineMoment moment(trajectory_.keep());
    moment.now_ = now_;
    moment.done_count_ = done_.size();
    moment.fuel_account_ = fuel_account_;
    moment.air_account_ = air_account_;
    return moment;
}

void Simulator::restore(const MachineMoment& moment)
{
    done_.insert(done_.end(), pending_.begin(), pending_.end());
    const auto first_later =
        done_.begin() + static_cast<std::ptrdiff_t>(std::min(moment.done_count_, done_.size()));
    pending_.assign(first_later, done_.end());
    done_.erase(first_later, done_.end());
    std::ranges::transform(rig_->controls, control_values_.begin(), &Control::start);
    settings_.clear();
    std::ranges::fill(severities_, 0.0);
    mending_.clear();
    // What commands do to the state is in the moment already; this one is thrown away.
    apply_all(done_, state_);
    refresh();
    trajectory_.restore(moment.way_);
    now_ = moment.now_;
    fuel_account_ = moment.fuel_account_;
    air_account_ = moment.air_account_;
}

void Simulator::apply_all(std::span<const TimedCommand> commands, std::span<double> state)
{
    for (const TimedCommand& command : commands) {
        std::visit([&](const auto& what) { apply(what, state); }, command.command);
    }
}

void Simulator::apply(const SetControl& command, std::span<double> /*state*/)
{
    const Control* control = rig_->find_control(command.control);
    control_values_[static_cast<std::size_t>(control - rig_->controls.data())] = command.to;
}

void Simulator::apply(const Do& command, std::span<double> state)
{
    const Doing* doing = rig_->find_doing(command.doing);
    for (const Doing::Setting& setting : doing->settings) {
        settings_[parameter_key(setting.part, setting.parameter)] = setting.to;
    }
    for (const Doing::Jump& jump : doing->jumps) {
        state[network_.state_index(jump.state)] = jump.to;
    }
    if (!doing->fills.empty() && !network_.fill(doing->fills, command.to, state)) {
        throw RequestError(doing->id + " wants to fill " + doing->fills + ", which is no chamber");
    }
    if (!doing->adds_to.empty()) {
        double& sum = state[network_.state_index(doing->adds_to)];
        sum = std::min(sum + command.to, std::max(sum, doing->most));
    }
}

void Simulator::apply(const Mend& command, std::span<double> /*state*/)
{
    if (command.how == Mend::How::restore) {
        std::erase_if(mending_, [&](const Mend& earlier) {
            return earlier.part == command.part && earlier.parameter == command.parameter;
        });
    }
    mending_.push_back(command);
}

void Simulator::apply(const SetLeaps& command, std::span<double> /*state*/)
{
    trajectory_.allow_leaps(command.are_allowed);
}

void Simulator::apply(const SetFault& command, std::span<double> /*state*/)
{
    const Fault* fault = rig_->find_fault(command.fault);
    severities_[static_cast<std::size_t>(fault - rig_->faults.data())] = command.severity;
}

namespace {
double faulted(const FaultChange& change, double healthy, double severity)
{
    switch (change.how) {
    case FaultChange::How::scale:
        return healthy * (1.0 + severity * (change.amount - 1.0));
    case FaultChange::How::add:
        return healthy + severity * change.amount;
    case FaultChange::How::set:
        return healthy + severity * (change.amount - healthy);
    }
    return healthy;
}

bool is_restored(const std::vector<Mend>& mending, const FaultChange& change)
{
    return std::ranges::any_of(mending, [&](const Mend& mend) {
        return mend.how == Mend::How::restore && mend.part == change.part &&
               mend.parameter == change.parameter;
    });
}
} // namespace

double& Simulator::place(FuelBlend& fuel, const std::string& part, std::string_view name)
{
    if (part != "fuel") {
        return network_.parameter(part, name);
    }
    return std::ranges::find(fuel_parameters(), name, &ParameterInfo::id)->member(&fuel);
}

const ParameterInfo& Simulator::info(const std::string& part, std::string_view name) const
{
    return part == "fuel" ? *std::ranges::find(fuel_parameters(), name, &ParameterInfo::id)
                          : network_.parameter_info(part, name);
}

void Simulator::refresh()
{
    FuelBlend fuel = rig_->fuel;
    for (const PartSpec& spec : rig_->parts) {
        for (const auto& [name, value] : spec.parameters) {
            const auto set = settings_.find(parameter_key(spec.id, name));
            place(fuel, spec.id, name) = set == settings_.end() ? value : set->second;
        }
    }
    const Vector up = place_controls(fuel);
    place_faults(fuel);
    place_mending(fuel);
    surroundings_ = {weather_.pressure, weather_.temperature, up, fuel};
    network_.prepare(surroundings_);
}

Vector Simulator::place_controls(FuelBlend& fuel)
{
    constexpr double degree = 3.14159265358979 / 180.0;
    Angle forward;
    Angle side;
    for (std::size_t i = 0; i < rig_->controls.size(); ++i) {
        const Control& control = rig_->controls[i];
        if (!control.part.empty()) {
            place(fuel, control.part, control.parameter) = control_values_[i];
        } else {
            (control.parameter == "tilt_forward" ? forward : side).si = control_values_[i] * degree;
        }
    }
    return tilted_up(forward, side);
}

void Simulator::place_faults(FuelBlend& fuel)
{
    for (std::size_t i = 0; i < severities_.size(); ++i) {
        if (severities_[i] == 0.0) {
            continue;
        }
        for (const FaultChange& change : rig_->faults[i].changes) {
            if (is_restored(mending_, change)) {
                continue;
            }
            const ParameterInfo& range = info(change.part, change.parameter);
            double& value = place(fuel, change.part, change.parameter);
            value = std::clamp(faulted(change, value, severities_[i]), range.low, range.high);
        }
    }
}

void Simulator::place_mending(FuelBlend& fuel)
{
    for (const Mend& mend : mending_) {
        const ParameterInfo& range = info(mend.part, mend.parameter);
        double& value = place(fuel, mend.part, mend.parameter);
        switch (mend.how) {
        case Mend::How::restore: // the faults have passed it by
            break;
        case Mend::How::scale:
            value *= mend.amount;
            break;
        case Mend::How::add:
            value += mend.amount;
            break;
        case Mend::How::set:
            value = mend.amount;
            break;
        }
        value = std::clamp(value, range.low, range.high);
    }
}

std::size_t Simulator::reading_index(std::string_view name) const
{
    const auto found = std::ranges::find(readings_, name, &Network::Reading::name);
    if (found == readings_.end()) {
        std::vector<std::string> names;
        std::ranges::transform(readings_, std::back_inserter(names), &Network::Reading::name);
        throw RequestError("there is no reading \"" + std::string(name) + "\"" +
                           choices_hint(name, names));
    }
    return static_cast<std::size_t>(found - readings_.begin());
}

std::span<const double> Simulator::state()
{
    trajectory_.at(network_, seconds(), state_);
    return state_;
}

void Simulator::read(std::span<double> values)
{
    read_at(seconds(), values);
}

void Simulator::read_at(double time, std::span<double> values)
{
    trajectory_.at(network_, time, state_);
    network_.read(state_, values);
    values[readings_.size() - 2] = fuel_error();
    values[readings_.size() - 1] = air_error();
}

double Simulator::read(std::string_view name)
{
    const std::size_t index = reading_index(name);
    std::vector<double> values(readings_.size());
    read(values);
    return values[index];
}

double Simulator::control(std::string_view id) const
{
    const Control* control = rig_->find_control(id);
    if (control == nullptr) {
        throw RequestError("there is no control \"" + std::string(id) + "\"");
    }
    return control_values_[static_cast<std::size_t>(control - rig_->controls.data())];
}

double Simulator::severity(std::string_view id) const
{
    const Fault* fault = rig_->find_fault(id);
    if (fault == nullptr) {
        throw RequestError("there is no fault \"" + std::string(id) + "\"");
    }
    return severities_[static_cast<std::size_t>(fault - rig_->faults.data())];
}

double Simulator::parameter(std::string_view part, std::string_view name)
{
    if (rig_->find_parameter(part, name) == nullptr) {
        throw RequestError("there is no parameter \"" +
                           parameter_key(std::string(part), std::string(name)) + "\"");
    }
    return place(surroundings_.fuel, std::string(part), name);
}

RunSheet Simulator::sheet() const
{
    RunSheet sheet{rig_->id, done_};
    sheet.commands.insert(sheet.commands.end(), pending_.begin(), pending_.end());
    return sheet;
}

double Simulator::audited(std::span<const double> state, double StateInfo::*share) const
{
    double sum = 0.0;
    for (std::size_t i = 0; i < state.size(); ++i) {
        sum += network_.states()[i].*share * state[i];
    }
    return sum;
}

double Simulator::fuel_error()
{
    return audited(state(), &StateInfo::fuel) - fuel_account_;
}

double Simulator::air_error()
{
    return audited(state(), &StateInfo::air) - air_account_;
}

} // namespace sim

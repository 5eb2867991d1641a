#include "scenes/shop/procedure.hpp"

#include <algorithm>

namespace shop {

std::size_t Reading::word_of(double value) const
{
    std::size_t place = 0;
    while (place + 1 < words.size() && !(value < words[place].below)) {
        ++place;
    }
    return place;
}

bool Reading::is_sound(std::optional<double> value) const
{
    if (!has_sound()) {
        return true;
    }
    if (!value) {
        return false;
    }
    if (!sound_words.empty()) {
        return std::ranges::find(sound_words, words[word_of(*value)].say) != sound_words.end();
    }
    return !(least && *value < *least) && !(most && *value > *most);
}

const Reading* Procedure::find(std::string_view id) const
{
    const auto found = std::ranges::find(readings, id, &Reading::id);
    return found == readings.end() ? nullptr : &*found;
}

bool Procedure::is_sound(std::span<const std::optional<double>> values) const
{
    for (std::size_t r = 0; r < values.size(); ++r) {
        if (!readings[r].is_sound(values[r])) {
            return false;
        }
    }
    return true;
}

Vocabulary::Vocabulary(std::shared_ptr<const sim::Rig> machine, const Instruments& tools)
    : rig(std::move(machine)), readings(sim::Simulator(rig).readings()), instruments(&tools)
{
}

namespace {

void collect(const std::vector<Step>& steps, std::vector<sim::Mend>& mending)
{
    for (const Step& step : steps) {
        if (const auto* act = std::get_if<Act>(&step.what)) {
            if (const auto* mend = std::get_if<sim::Mend>(&act->command)) {
                mending.push_back(*mend);
            }
        } else if (const auto* repeat = std::get_if<Repeat>(&step.what)) {
            collect(repeat->steps, mending);
        } else if (const auto* choose = std::get_if<Choose>(&step.what)) {
            collect(choose->steps, mending);
            collect(choose->otherwise, mending);
        }
    }
}

} // namespace

std::vector<sim::Mend> mending_of(const Procedure& procedure)
{
    std::vector<sim::Mend> mending;
    collect(procedure.steps, mending);
    return mending;
}

} // namespace shop

#include "scenes/present/actions.hpp"

#include <algorithm>
#include <string_view>
#include <utility>

namespace scenes {
namespace {

/// How full "fill the tank" makes it: to the filler's neck, not the brim.
constexpr double full_tank = 0.9;
constexpr std::string_view release_prefix = "release_";

/// The doing that takes hold of what a doing "release_x" lets go; null for any other doing.
const sim::Doing* held_by(const sim::Doing& release, const std::vector<sim::Doing>& doings)
{
    if (!release.id.starts_with(release_prefix)) {
        return nullptr;
    }
    const std::string_view thing = std::string_view(release.id).substr(release_prefix.size() - 1);
    const auto found = std::ranges::find_if(doings, [&](const sim::Doing& doing) {
        return doing.id != release.id && doing.id.ends_with(thing);
    });
    return found == doings.end() ? nullptr : &*found;
}

} // namespace

std::vector<Action> actions_of(const sim::Rig& rig)
{
    std::vector<Action> actions;
    for (const sim::Doing& doing : rig.doings) {
        // A release belongs to what it lets go; what takes its amount from a hand is no button.
        if (doing.is_workshop || held_by(doing, rig.doings) != nullptr || !doing.adds_to.empty()) {
            continue;
        }
        Action action{doing.id, doing.title, "", doing.fills.empty() ? 0.0 : full_tank};
        for (const sim::Doing& release : rig.doings) {
            if (held_by(release, rig.doings) == &doing) {
                action.release = release.id;
            }
        }
        actions.push_back(std::move(action));
    }
    return actions;
}

} // namespace scenes

#pragma once

#include "sim/simulator.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace scenes {

/// Faults whose names nobody is to see yet.
class HiddenFaults {
public:
    void hide(std::string_view id) { ids_.emplace_back(id); }
    [[nodiscard]] const std::vector<std::string>& ids() const { return ids_; }
    void reveal() { ids_.clear(); }
    /// A fault that a person sets by hand is no secret, whatever it was before.
    void show(std::string_view id) { std::erase(ids_, id); }
    [[nodiscard]] bool is_hidden(std::string_view id) const;
    /// How many of them the machine has now: one that was undone is none.
    [[nodiscard]] std::size_t count(const sim::Simulator& machine) const;

private:
    std::vector<std::string> ids_;
};

/// A fault to be hidden: one that the machine does not have, at a severity that shows.
///
/// The seed chooses; nothing when the machine has every fault there is.
std::optional<sim::SetFault> surprise(const sim::Simulator& machine, std::uint64_t seed);

/// Faults that have all the words of a search, in the chosen language, wherever they stand: in the
/// title, the place on the machine, what it does or what is found. Case and accents do not count.
/// Those with the words in title or place come first; in each half they are sorted by place.
std::vector<const sim::Fault*> find_faults(const sim::Rig& rig, std::string_view search);

/// What is broken now, but for what is hidden, in the rig's order.
std::vector<const sim::Fault*> broken_faults(const sim::Simulator& machine,
                                             const HiddenFaults& hidden);

/// A text in small letters without accents, as a search compares them.
std::string folded(std::string_view text);

} // namespace scenes

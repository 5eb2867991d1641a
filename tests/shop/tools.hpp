#pragma once

#include "sim/error.hpp"
#include "small_order.hpp"

#include <doctest/doctest.h>

#include <string>

namespace tests {

inline const shop::Workshop& workshop(const std::string& rig)
{
    return *workshops().of(rig);
}

/// Steps of a procedure from JSON text, for a machine.
inline shop::Procedure procedure(const std::string& steps, const std::string& rig = "mower")
{
    const auto& shop = workshop(rig);
    return shop::read_procedure(sim::JsonNode::parse(steps, "steps"),
                                shop::Vocabulary(shop.rig, *shop.instruments));
}

/// What is said against something, without the file's name.
template <class Act>
std::string refusal_of(Act&& act)
{
    try {
        act();
    } catch (const std::runtime_error& error) {
        return error.what();
    }
    return "taken";
}

} // namespace tests

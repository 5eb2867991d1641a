#pragma once

#include "scenes/shop/order.hpp"

#include <string>

namespace tests {

inline shop::Workshops& workshops()
{
    static shop::Workshops all(sim::assets_folder());
    return all;
}

/// A small order of a mower whose bowl vent is plugged, changed in one place if wanted.
inline std::string order_text(const std::string& what = "", const std::string& with = "")
{
    std::string text = R"({"format": 1, "id": "small_order", "title": "A small order",
 "rig": "mower", "level": 1, "customer": "The caretaker", "complaint": "It does not run well.",
 "weather": {"temperature": "20 degC"}, "history": [],
 "checks": ["start_cold", "look_round", "bowl_drain_crack", "vent_probe", "tachometer_idle"],
 "repairs": ["clear_vents", "replace_cap", "replace_main_jet"],
 "minutes": 60, "money": 50, "labour": 90, "worth": 300, "solved": ["start_cold", "look_round"],
 "predict": [{"before": "bowl_drain_crack", "predict": "bowl"}],
 "marks": {"solved": 30, "cause": 20, "minutes": 10, "money": 10, "order": 10, "verified": 10,
           "harm": 5, "cautions": 5},
 "seed": 3,
 "answer": {"faults": [{"id": "bowl_vent_plugged", "severity": 1}], "causes": [],
            "look_alikes": [], "advice": "clean", "finding": "The bowl's vent was shut."}})";
    if (const std::size_t at = what.empty() ? std::string::npos : text.find(what);
        at != std::string::npos) {
        text.replace(at, what.size(), with);
    }
    return text;
}

inline std::shared_ptr<const shop::Order> small_order()
{
    return shop::parse_order(order_text(), "order", workshops());
}

} // namespace tests

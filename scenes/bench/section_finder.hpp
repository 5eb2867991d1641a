#pragma once

#include "scenes/bench/section_room.hpp"
#include "scenes/present/part_finder.hpp"

namespace scenes {

/// Sizes of a rig's parts in the section's millimetres.
class SectionFinder {
public:
    explicit SectionFinder(const sim::Rig& rig) : find_(rig, "the section drawing") {}

    /// unit:    SI
    [[nodiscard]] double value(std::string_view id, const std::string& parameter) const
    {
        return find_.value(id, parameter);
    }
    /// unit:    millimetres
    [[nodiscard]] double size(std::string_view id, const std::string& parameter) const
    {
        return value(id, parameter) * millimetres;
    }
    /// A place in the plane of the machine's length and height.
    [[nodiscard]] Spot point(std::string_view id, const std::string& name) const
    {
        const sim::Vector point = find_.point(id, name);
        return {point.x * millimetres, point.z * millimetres};
    }
    [[nodiscard]] RoomPlan room(std::string_view id) const
    {
        const sim::Box& box = find_.box(id);
        const Spot middle{box.centre.x * millimetres, box.centre.z * millimetres};
        const Spot half{box.size.x * millimetres / 2.0, box.size.z * millimetres / 2.0};
        return {middle - half, middle + half, box.size.y * millimetres, size(id, "zero_level")};
    }

private:
    static constexpr double millimetres = 1e3; ///< per metre

    PartFinder find_;
};

} // namespace scenes

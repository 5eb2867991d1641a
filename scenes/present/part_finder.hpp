#pragma once

#include "sim/error.hpp"
#include "sim/rig.hpp"

#include <algorithm>
#include <string>
#include <string_view>

namespace scenes {

/// Looks parts of a rig up and says clearly what is missing.
class PartFinder {
public:
    /// `needer` is what needs the parts, for messages.
    PartFinder(const sim::Rig& rig, std::string_view needer) : rig_(rig), needer_(needer) {}

    /// throws:  AssetError when the rig has no such part
    [[nodiscard]] const sim::PartSpec& part(std::string_view id) const
    {
        const auto found = std::ranges::find(rig_.parts, id, &sim::PartSpec::id);
        if (found == rig_.parts.end()) {
            throw missing("a part \"" + std::string(id) + "\"");
        }
        return *found;
    }
    /// unit:    SI
    /// throws:  AssetError when there is no such part or parameter
    [[nodiscard]] double value(std::string_view id, const std::string& parameter) const
    {
        const auto& parameters = part(id).parameters;
        const auto found = parameters.find(parameter);
        if (found == parameters.end()) {
            throw missing("\"" + parameter + "\" of part \"" + std::string(id) + "\"");
        }
        return found->second;
    }
    /// throws:  AssetError when there is no such part or point
    [[nodiscard]] sim::Vector point(std::string_view id, const std::string& name) const
    {
        const auto& points = part(id).points;
        const auto found = points.find(name);
        if (found == points.end()) {
            throw missing("the point \"" + name + "\" of part \"" + std::string(id) + "\"");
        }
        return found->second;
    }
    /// throws:  AssetError when there is no such part
    [[nodiscard]] const sim::Box& box(std::string_view id) const { return part(id).box; }

private:
    [[nodiscard]] sim::AssetError missing(const std::string& what) const
    {
        return {rig_.file, "/parts", needer_ + " needs " + what};
    }

    const sim::Rig& rig_;
    std::string needer_;
};

/// Whether a rig has a part of a kind.
inline bool has_kind(const sim::Rig& rig, std::string_view kind)
{
    return std::ranges::find(rig.parts, kind, &sim::PartSpec::kind) != rig.parts.end();
}

} // namespace scenes

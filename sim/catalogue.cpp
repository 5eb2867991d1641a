#include "part.hpp"

#include <algorithm>

namespace sim {

namespace {
std::vector<PartKind>& storage()
{
    static std::vector<PartKind> kinds;
    return kinds;
}
} // namespace

void add_part_kind(PartKind kind)
{
    auto& kinds = storage();
    kinds.insert(std::ranges::lower_bound(kinds, kind.id, {}, &PartKind::id), std::move(kind));
}

std::span<const PartKind> part_kinds()
{
    return storage();
}

const PartKind* find_part_kind(std::string_view id)
{
    const auto kinds = part_kinds();
    const auto found = std::ranges::find(kinds, id, &PartKind::id);
    return found == kinds.end() ? nullptr : &*found;
}

} // namespace sim

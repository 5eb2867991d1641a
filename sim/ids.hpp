#pragma once

#include <algorithm>
#include <iterator>
#include <string>
#include <string_view>
#include <vector>

// Lists of things that have an `id`.

namespace sim {

/// The thing with this id; null when there is none.
template <class T>
const T* find_by_id(const std::vector<T>& things, std::string_view id)
{
    const auto found = std::ranges::find(things, id, &T::id);
    return found == things.end() ? nullptr : &*found;
}

/// All ids, in order.
template <class T>
std::vector<std::string> ids_of(const std::vector<T>& things)
{
    std::vector<std::string> ids;
    std::ranges::transform(things, std::back_inserter(ids), &T::id);
    return ids;
}

} // namespace sim

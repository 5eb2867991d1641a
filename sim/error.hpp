#pragma once

#include <stdexcept>
#include <string>

namespace sim {

/// Something is wrong in a file a person wrote: says which file, where in it, and what would be
/// right.
class AssetError : public std::runtime_error {
public:
    AssetError(const std::string& file, const std::string& pointer, const std::string& reason)
        : std::runtime_error(file + (pointer.empty() ? "" : " at " + pointer) + ": " + reason)
    {
    }
};

/// A person asked for something that does not exist or cannot be done; one line says what and what
/// would be right.
class RequestError : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

/// The equations could not be carried on: names the time, the part's state and its value.
class NumericsError : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

} // namespace sim

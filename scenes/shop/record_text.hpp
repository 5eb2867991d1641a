#pragma once

#include <cstdint>
#include <string>
#include <string_view>

// What reading and writing records share.

namespace shop {

/// A number in hexadecimal digits.
std::string hex_of(std::uint64_t number);

/// The checksum after a line, from the one before it.
std::uint64_t chained(std::string_view body, std::uint64_t chain);

} // namespace shop

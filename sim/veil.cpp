#include "veil.hpp"

#include "error.hpp"

#include <array>
#include <cstdint>
#include <optional>

namespace sim {
namespace {

constexpr std::string_view digits = "0123456789abcdef";
constexpr std::size_t check_length = 8;

/// source:  FNV-1a, 64 bits; offset and prime from memory, tested against its published values
std::uint64_t checksum(std::string_view text)
{
    std::uint64_t sum = 0xcbf29ce484222325ULL;
    for (const char each : text) {
        sum ^= static_cast<unsigned char>(each);
        sum *= 0x100000001b3ULL;
    }
    return sum;
}

/// A stream of bytes that a start decides: equal texts in unequal company look unequal.
/// source:  S. Vigna, SplitMix64 (from memory)
class Stream {
public:
    explicit Stream(std::uint64_t start) : state_(start ^ 0x7374616e64706970ULL) {}
    unsigned char next()
    {
        state_ += 0x9e3779b97f4a7c15ULL;
        std::uint64_t mixed = state_;
        mixed = (mixed ^ (mixed >> 30U)) * 0xbf58476d1ce4e5b9ULL;
        mixed = (mixed ^ (mixed >> 27U)) * 0x94d049bb133111ebULL;
        return static_cast<unsigned char>(mixed ^ (mixed >> 31U));
    }

private:
    std::uint64_t state_;
};

std::optional<std::string> bytes_of(std::string_view veiled)
{
    if (veiled.size() % 2 != 0 || veiled.size() < 2 * check_length) {
        return std::nullopt;
    }
    std::string bytes;
    for (std::size_t i = 0; i < veiled.size(); i += 2) {
        const std::size_t high = digits.find(veiled[i]);
        const std::size_t low = digits.find(veiled[i + 1]);
        if (high == std::string_view::npos || low == std::string_view::npos) {
            return std::nullopt;
        }
        bytes += static_cast<char>(high * digits.size() + low);
    }
    return bytes;
}

std::string mixed(std::string_view text, std::uint64_t start)
{
    Stream stream(start);
    std::string out(text);
    for (char& each : out) {
        each = static_cast<char>(static_cast<unsigned char>(each) ^ stream.next());
    }
    return out;
}

} // namespace

std::string veil(std::string_view text)
{
    const std::uint64_t check = checksum(text);
    std::string bytes;
    for (std::size_t i = 0; i < check_length; ++i) {
        bytes += static_cast<char>(check >> (8 * i) & 0xffU);
    }
    bytes += mixed(text, check);
    std::string veiled;
    for (const char each : bytes) {
        const auto byte = static_cast<unsigned char>(each);
        veiled += digits[byte / digits.size()];
        veiled += digits[byte % digits.size()];
    }
    return veiled;
}

std::string unveil(std::string_view veiled)
{
    if (const std::optional<std::string> bytes = bytes_of(veiled)) {
        std::uint64_t check = 0;
        for (std::size_t i = check_length; i-- > 0;) {
            check = check << 8U | static_cast<unsigned char>((*bytes)[i]);
        }
        std::string text = mixed(std::string_view(*bytes).substr(check_length), check);
        if (checksum(text) == check) {
            return text;
        }
    }
    throw RequestError("was changed since it was written, or is not whole; allowed: what the bench "
                       "itself has saved there");
}

} // namespace sim

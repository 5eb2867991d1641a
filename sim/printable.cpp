#include "printable.hpp"

#include <array>

namespace sim {

namespace {

/// A character at the start of a text; `length` 0 when the bytes there are not UTF-8.
struct Character {
    char32_t code = 0;
    std::size_t length = 0;
};

/// Bytes of the character that begins with `lead`; 0 when none does.
std::size_t length_by_lead(unsigned char lead)
{
    if (lead < 0x80) {
        return 1;
    }
    if (lead < 0xc2 || lead > 0xf4) {
        return 0;
    }
    return lead < 0xe0 ? 2 : (lead < 0xf0 ? 3 : 4);
}

/// source:  F. Yergeau, RFC 3629, 2003, sections 3 and 4
Character first_character(std::string_view text)
{
    const auto lead = static_cast<unsigned char>(text.front());
    const std::size_t length = length_by_lead(lead);
    if (length == 0 || length > text.size()) {
        return {};
    }
    constexpr std::array<unsigned char, 5> lead_bits{0, 0x7f, 0x1f, 0x0f, 0x07};
    constexpr std::array<char32_t, 5> least{0, 0, 0x80, 0x800, 0x10000};
    char32_t code = lead & lead_bits[length];
    for (std::size_t i = 1; i < length; ++i) {
        const auto byte = static_cast<unsigned char>(text[i]);
        if ((byte & 0xc0U) != 0x80U) {
            return {};
        }
        code = code << 6U | (byte & 0x3fU);
    }
    const bool surrogate = code >= 0xd800 && code <= 0xdfff;
    return code < least[length] || surrogate || code > 0x10ffff ? Character{}
                                                                : Character{code, length};
}

bool is_harmless(char32_t code)
{
    const bool control = code < 0x20 || (code >= 0x7f && code < 0xa0);
    const bool line_break = code == 0x2028 || code == 0x2029;
    const bool direction = code == 0x200e || code == 0x200f || code == 0x061c ||
                           (code >= 0x202a && code <= 0x202e) || (code >= 0x2066 && code <= 0x2069);
    return !control && !line_break && !direction;
}

std::string hexadecimal(std::string_view start, char32_t value, std::size_t digits)
{
    constexpr std::string_view digit_names = "0123456789abcdef";
    std::string text(start);
    for (std::size_t place = digits; place > 0; --place) {
        text += digit_names[value >> 4U * (place - 1) & 0xfU];
    }
    return text;
}

} // namespace

std::string printable(std::string_view text)
{
    std::string shown;
    while (!text.empty()) {
        const Character next = first_character(text);
        if (next.length == 0 || (next.length == 1 && !is_harmless(next.code))) {
            shown += hexadecimal("\\x", static_cast<unsigned char>(text.front()), 2);
        } else if (!is_harmless(next.code)) {
            shown += hexadecimal("\\u", next.code, 4);
        } else {
            shown += text.substr(0, next.length);
        }
        text.remove_prefix(next.length == 0 ? 1 : next.length);
    }
    return shown;
}

std::string in_quotes(std::string_view text)
{
    constexpr std::size_t longest = 60;
    std::size_t end = text.size();
    if (end > longest) {
        end = longest;
        // A character is shown whole or not at all.
        while (end > longest - 4 && (static_cast<unsigned char>(text[end]) & 0xc0U) == 0x80U) {
            --end;
        }
    }
    return '"' + printable(text.substr(0, end)) + (end < text.size() ? "...\"" : "\"");
}

} // namespace sim

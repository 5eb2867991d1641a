#pragma once

#include <iomanip>
#include <sstream>
#include <string>

namespace shop {

/// A number for files and terminals: a point for the decimal sign whatever the language, never
/// "-0".
inline std::string plain_number(double value, int decimals = 0)
{
    std::ostringstream text;
    text << std::fixed << std::setprecision(decimals) << value + 0.0;
    return text.str();
}

} // namespace shop

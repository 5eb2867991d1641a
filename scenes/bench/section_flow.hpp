#pragma once

#include <algorithm>
#include <string_view>
#include <utility>
#include <vector>

namespace scenes {

/// How far what flows has come, so that marks go at the flow's own pace and never jump when it
/// changes.
class FlowClock {
public:
    /// The way that something has gone in all, at this speed since the frame before.
    ///
    /// unit:    millimetres of the drawing, and per second; `seconds` is the drawing's own time
    double travelled(std::string_view what, double speed, double seconds)
    {
        const auto found = std::ranges::find(ways_, what, &Way::what);
        if (found == ways_.end()) {
            ways_.push_back({what, seconds, 0.0});
            return 0.0;
        }
        constexpr double longest = 0.1;  // s; a frame that took longer does not leap
        constexpr double fastest = 90.0; // mm/s; beyond it marks would seem to go backwards
        const double time = std::clamp(seconds - found->seconds, 0.0, longest);
        found->seconds = seconds;
        found->way += time * std::clamp(speed, -fastest, fastest);
        return found->way;
    }

private:
    struct Way {
        std::string_view what;
        double seconds;
        double way;
    };
    std::vector<Way> ways_;
};

/// Mean speed of a flow in a round bore.
///
/// unit:    cubic metres per second and millimetres in, millimetres per second out
inline double speed_in(double flow, double bore)
{
    constexpr double quarter_pi = 0.785398163397448;
    return flow * 1e9 / (quarter_pi * std::max(bore * bore, 0.01));
}

} // namespace scenes

#pragma once

#include "scenes/ui/interface.hpp"

#include <string_view>

namespace scenes {

struct DialogSpec {
    std::string_view name;    ///< its title
    float width = 420.0F;     ///< pixels at scale 1; the height follows what is in it
    std::string_view id = {}; ///< when its title can change while it is open
};

/// A sheet in the middle of the window that blocks everything else while `is_open` stays true.
///
/// Keyboard focus stays inside and returns afterwards to where it was. Escape sets `is_open` to
/// false. Make it anew every frame, and its widgets only when it converts to true:
/// `if (Dialog dialog{ui, spec, is_open}) { ... }`.
class Dialog {
public:
    Dialog(Interface& ui, const DialogSpec& spec, bool& is_open);
    ~Dialog();
    Dialog(const Dialog&) = delete;
    Dialog& operator=(const Dialog&) = delete;

    explicit operator bool() const { return is_shown_; }

private:
    Interface::State& state_;
    bool& is_open_;
    bool is_shown_ = false;
};

} // namespace scenes

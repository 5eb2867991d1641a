#include "scenes/bench/display.hpp"

#include "sim/error.hpp"
#include "sim/printable.hpp"

#include <cstdlib>
#include <dlfcn.h>
#include <string>

namespace scenes {

void require_display()
{
    const char* name = std::getenv("DISPLAY");
    if (name == nullptr || *name == '\0') {
        throw sim::RequestError("there is no display: the environment variable DISPLAY is not set");
    }
    // The window library links this library itself; looking its functions up here saves the build
    // a dependency.
    void* library = dlopen("libX11.so.6", RTLD_LAZY);
    if (library == nullptr) {
        return;
    }
    using Open = void* (*)(const char*);
    const auto open = reinterpret_cast<Open>(dlsym(library, "XOpenDisplay"));
    // Never closed: a virtual display resets when its last client leaves, and the window's own
    // connection would be refused just then.
    if (open != nullptr && open(nullptr) == nullptr) {
        throw sim::RequestError("the display " + sim::in_quotes(name) + " cannot be opened");
    }
}

} // namespace scenes

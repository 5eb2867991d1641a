#pragma once

#include "scenes/app.hpp"
#include "scenes/command_line/check.hpp"
#include "scenes/command_line/list.hpp"
#include "scenes/command_line/orders.hpp"
#include "scenes/command_line/sound.hpp"
#include "scenes/command_line/tell_apart.hpp"
#include "scenes/command_line/trace.hpp"

#include <functional>
#include <ostream>
#include <string>
#include <variant>
#include <vector>

namespace scenes {

/// The answer to --help and --version.
struct PrintRequest {
    std::string text;
};

/// Everything that can be asked of the program.
using Request = std::variant<WindowRequest, PrintRequest, ListRequest, TraceRequest, CheckRequest,
                             TellApartRequest, OrderRequest, MarkRequest, ShotRequest, SoundRequest,
                             PicturesRequest>;

/// Reads the words after the program's name.
///
/// throws:  RequestError in one line when they make no sense
Request parse_command_line(const std::vector<std::string>& words);

/// What needs a screen; kept apart so that this folder builds and is tested without one.
struct ScreenCommands {
    std::function<int(const WindowRequest&)> open_window;
    std::function<int(const ShotRequest&)> take_shot;
    std::function<int(const PicturesRequest&)> take_pictures = {};
};

/// Does what the words ask for and gives the program's exit code.
///
/// 0 when it was done; 2 after one line on `errors` about something the person can mend; 1 after
/// one line about anything else, such as equations that could not be carried on.
int run_command_line(const std::vector<std::string>& words, std::ostream& out, std::ostream& errors,
                     const ScreenCommands& screen);

} // namespace scenes

#pragma once

#include "scenes/command_line/command_line.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace scenes {

/// The words as they were given, before anyone has looked what they mean.
struct GivenWords {
    std::string what;
    std::string rig;
    bool as_json = false;
    std::vector<std::string> faults;
    std::vector<std::string> checks;
    bool shows_readings = false;
    std::optional<std::string> threads;
    std::string order;
    std::optional<std::string> actions;
    std::optional<std::string> record;
    std::optional<std::string> student;
    std::optional<std::string> key;
    std::vector<std::string> records;
    std::optional<std::string> csv;
    std::optional<std::string> html;
    std::optional<std::string> xapi;
    std::optional<std::string> shown_rig;
    std::optional<std::string> sheet;
    std::optional<std::string> ambient;
    std::optional<std::string> length;
    bool may_leap = false;
    std::optional<std::string> every;
    std::optional<std::string> file;
    std::string scene;
    std::optional<std::string> at;
    std::optional<std::string> part;
    std::optional<std::string> boxes;
    std::optional<std::string> shown_order;
    std::optional<std::string> page;
    bool is_shut = false;
    std::optional<std::string> theme;
    std::optional<std::string> size;
    std::optional<std::string> scale;
    std::optional<std::string> pace;
    std::optional<std::string> language;
    std::optional<std::string> units;
    bool is_projector = false;
};

/// What is asked for by a command, or by an empty one for the window.
///
/// throws:  RequestError for a word that means nothing
Request request_from(std::string_view command, const GivenWords& words);

} // namespace scenes

#include "scenes/command_line/command_line.hpp"
#include "scenes/command_line/given_words.hpp"

#include "sim/error.hpp"
#include "sim/printable.hpp"
#include "sim/words.hpp"

#include <CLI/CLI.hpp>

#include <algorithm>

namespace scenes {

namespace {

constexpr const char* version_text = "standpipe " STANDPIPE_VERSION;

/// Adds an option; `value` is the word for its value in help and messages.
template <class T>
CLI::Option* add_option(CLI::App& command, const std::string& name, const std::string& value,
                        T& place, const std::string& description)
{
    return command.add_option(name, place, description)->type_name(value);
}

void add_appearance(CLI::App& command, GivenWords& words)
{
    add_option(command, "--theme", "THEME", words.theme, "paper or blackboard");
    add_option(command, "--size", "SIZE", words.size, "In pixels, such as 1280x720");
    add_option(command, "--scale", "PERCENT", words.scale, "Size of text, from 100 to 200");
    add_option(command, "--language", "LANGUAGE", words.language, "en or es");
    add_option(command, "--units", "UNITS", words.units, "si or us");
    command.add_flag("--projector", words.is_projector, "In the projector view");
}

void add_shown_rig(CLI::App& command, GivenWords& words, const std::string& description)
{
    add_option(command, "--rig", "RIG", words.shown_rig, description);
}

void add_sheet(CLI::App& command, GivenWords& words)
{
    add_option(command, "--sheet", "FILE", words.sheet,
               "A run sheet; the machine's default run without");
}

void add_list(CLI::App& program, GivenWords& words)
{
    CLI::App& list = *program.add_subcommand("list", "Print what there is");
    add_option(list, "WHAT", "", words.what, "rigs, faults, readings or commands");
    add_option(list, "RIG", "", words.rig, "The machine; for all but rigs");
    list.add_flag("--json", words.as_json, "As JSON");
}

void add_faults(CLI::App& command, GivenWords& words)
{
    add_option(command, "--fault", "ID[=SEVERITY]", words.faults,
               "A fault from the start, severity 0 to 1, else 1; may be repeated")
        ->allow_extra_args(false);
}

void add_trace(CLI::App& program, GivenWords& words)
{
    CLI::App& trace =
        *program.add_subcommand("trace", "Run a machine and write all its readings as CSV");
    add_option(trace, "RIG", "", words.rig, "The machine")->required();
    add_faults(trace, words);
    add_sheet(trace, words);
    add_option(trace, "--ambient", "TEMPERATURE", words.ambient, "\"20 degC\" by default");
    add_option(trace, "--for", "TIME", words.length, "Length of the run, such as \"120 s\"");
    add_option(trace, "--every", "TIME", words.every, "From row to row, \"0.1 s\" by default");
    trace.add_flag("--leaps", words.may_leap,
                   "Leap over turns of the engine that resemble each other");
    add_option(trace, "--out", "FILE", words.file, "The CSV file; standard output without");
}

void add_check(CLI::App& program, GivenWords& words)
{
    CLI::App& check = *program.add_subcommand(
        "check", "Do workshop checks on a machine and print what they read");
    add_option(check, "RIG", "", words.rig, "The machine")->required();
    add_option(check, "CHECK", "", words.checks, "The checks; all without");
    add_faults(check, words);
    add_option(check, "--ambient", "TEMPERATURE", words.ambient, "\"20 degC\" by default");
}

void add_tell_apart(CLI::App& program, GivenWords& words)
{
    CLI::App& command = *program.add_subcommand(
        "tell-apart", "Simulate all faults against all checks; print which cannot be told apart");
    add_option(command, "RIG", "", words.rig, "The machine")->required();
    add_option(command, "--checks", "ID,...", words.checks, "These checks only")->delimiter(',');
    add_option(command, "--faults", "ID,...", words.faults, "These faults only")->delimiter(',');
    add_option(command, "--ambient", "TEMPERATURE", words.ambient, "\"20 degC\" by default");
    command.add_flag("--readings", words.shows_readings, "Print what every check reads, as CSV");
    add_option(command, "--keep", "FILE", words.file,
               "The file that keeps what is worked out, so that it can be gone on with");
    add_option(command, "--threads", "NUMBER", words.threads, "As many as there are by default");
}

void add_order(CLI::App& program, GivenWords& words)
{
    CLI::App& order = *program.add_subcommand("order", "Check, play, seal or print a work order");
    add_option(order, "WHAT", "", words.what, "check, play, seal or worksheet");
    add_option(order, "FILE", "", words.order, "The order's file, or the id of one there is");
    add_option(order, "--actions", "FILE", words.actions, "What a student does; for play");
    add_option(order, "--record", "FILE", words.record, "A new record of it; for play");
    add_option(order, "--student", "NAME", words.student, "The name on the record");
    add_option(order, "--out", "FILE", words.file,
               "The sealed order, or the worksheet as HTML; standard output without");
    add_option(order, "--key", "FILE", words.key, "The answer key as HTML; for worksheet");
    add_option(order, "--language", "LANGUAGE", words.language, "en or es; for worksheet");
}

void add_mark(CLI::App& program, GivenWords& words)
{
    CLI::App& mark = *program.add_subcommand("mark", "Replay records of work orders and mark them");
    add_option(mark, "FILE", "", words.records, "The records")->required();
    add_option(mark, "--csv", "FILE", words.csv, "A class sheet as a table");
    add_option(mark, "--html", "FILE", words.html, "A class sheet to read and print");
    add_option(mark, "--xapi", "FILE", words.xapi, "xAPI statements for a learning system");
}

void add_shot(CLI::App& program, GivenWords& words)
{
    CLI::App& shot = *program.add_subcommand("shot", "Take a picture of a scene");
    add_option(shot, "SCENE", "", words.scene, "The scene: bench, order or shelf")->required();
    add_shown_rig(shot, words, "The machine; without, the sheet's or else the mower");
    add_sheet(shot, words);
    add_option(shot, "--at", "TIME", words.at, "On the machine's clock, \"30 s\" by default");
    add_option(shot, "--out", "FILE", words.file, "The PNG file")->required();
    add_option(shot, "--part", "NAME", words.part, "The part of the drawing to show large");
    shot.add_flag("--outside", words.is_shut, "The machine from outside, not cut open");
    add_option(shot, "--boxes", "FILE", words.boxes,
               "A CSV file for where the drawing's words stand, in pixels");
    add_option(shot, "--order", "FILE", words.shown_order,
               "The order's file, or the id of one there is; for the scene order");
    add_option(shot, "--actions", "FILE", words.actions,
               "What a student did on the order; without, good work");
    add_option(shot, "--page", "PAGE", words.page, "Of the order, such as checks or marks");
    add_appearance(shot, words);
}

void add_sound(CLI::App& program, GivenWords& words)
{
    CLI::App& sound = *program.add_subcommand("sound", "Write the engine's sound as a WAV file");
    add_option(sound, "RIG", "", words.rig, "The machine")->required();
    add_faults(sound, words);
    add_sheet(sound, words);
    add_option(sound, "--at", "TIME", words.at, "On the machine's clock, \"0 s\" by default");
    add_option(sound, "--for", "TIME", words.length, "Time to listen, \"10 s\" by default");
    add_option(sound, "--pace", "SHARE", words.pace, "Of real time, from 0.1 to 1 (default)");
    add_option(sound, "--out", "FILE", words.file, "The WAV file")->required();
}

void add_pictures(CLI::App& program, GivenWords& words)
{
    CLI::App& pictures =
        *program.add_subcommand("pictures", "Take the reference pictures of all scenes");
    add_option(pictures, "FOLDER", "", words.file, "Where they are written")->required();
    add_shown_rig(pictures, words, "Of this machine only");
}

/// Lets --version stand after each command, and options of the window only where there is none.
void finish(CLI::App& program)
{
    const std::vector<CLI::Option*> window_options{
        program.get_option("--theme"), program.get_option("--size"),
        program.get_option("--scale"), program.get_option("--language"),
        program.get_option("--units"), program.get_option("--projector"),
        program.get_option("--rig")};
    for (CLI::App* command : program.get_subcommands({})) {
        command->set_version_flag("--version", version_text, "Print the version and exit");
        for (CLI::Option* option : window_options) {
            command->excludes(option);
        }
    }
}

/// Refuses a first word that is no command in better words than the parser has.
void check_command(const std::vector<std::string>& words)
{
    const std::vector<std::string> commands{"list",  "trace",      "shot",  "sound", "pictures",
                                            "check", "tell-apart", "order", "mark"};
    if (!words.empty() && !words.front().starts_with('-') &&
        std::ranges::find(commands, words.front()) == commands.end()) {
        throw sim::RequestError("unknown command " + sim::in_quotes(words.front()) +
                                sim::choices_hint(words.front(), commands));
    }
}

} // namespace

Request parse_command_line(const std::vector<std::string>& words)
{
    check_command(words);
    GivenWords given;
    CLI::App program("A teaching bench for small-engine fuel systems. Without a command it opens "
                     "its window.",
                     "standpipe");
    program.set_version_flag("--version", version_text, "Print the version and exit");
    add_shown_rig(program, given, "The machine in the window, at first the mower");
    add_appearance(program, given);
    add_list(program, given);
    add_trace(program, given);
    add_check(program, given);
    add_tell_apart(program, given);
    add_order(program, given);
    add_mark(program, given);
    add_shot(program, given);
    add_sound(program, given);
    add_pictures(program, given);
    finish(program);
    program.require_subcommand(0,
                               1); // what follows a command is its own: "order check" is no check
    try {
        // It takes the last word first.
        program.parse(std::vector<std::string>{words.rbegin(), words.rend()});
    } catch (const CLI::CallForHelp&) {
        return PrintRequest{program.help()};
    } catch (const CLI::CallForVersion&) {
        return PrintRequest{std::string(version_text) + '\n'};
    } catch (const CLI::ParseError& error) {
        throw sim::RequestError(error.what());
    }
    const auto commands = program.get_subcommands();
    return request_from(commands.empty() ? "" : commands.front()->get_name(), given);
}

} // namespace scenes

#include "scenes/command_line/sound.hpp"

#include "scenes/present/engine_ear.hpp"
#include "scenes/present/firing_clock.hpp"
#include "scenes/present/sound_file.hpp"
#include "sim/error.hpp"
#include "sim/file_write.hpp"
#include "sim/printable.hpp"
#include "sim/run_sheet.hpp"

#include <cmath>

namespace scenes {
namespace {

constexpr double longest = 600.0; ///< s; 53 MB
/// From look to look, ticks: several a turn.
constexpr sim::Tick look_ticks = 2;

void check(const SoundRequest& request)
{
    if (request.length_seconds > longest) {
        throw sim::RequestError("--for: a sound takes 600 s at most");
    }
}

} // namespace

void write_sound(const SoundRequest& request)
{
    check(request);
    const auto rig = std::make_shared<const sim::Rig>(sim::load_rig(request.rig));
    const sim::RunSheet sheet =
        request.sheet ? sim::load_run_sheet(*request.sheet, *rig) : rig->default_sheet;
    sim::Simulator machine(rig);
    for (const sim::TimedCommand& timed : sheet.commands) {
        machine.post(timed.command, timed.at);
    }
    for (const sim::SetFault& fault : request.faults) {
        machine.post(fault, 0);
    }
    const EngineEar ear(machine);
    if (!ear.has_engine()) {
        throw sim::RequestError("the rig " + sim::in_quotes(request.rig) + " has no engine");
    }
    FiringClock clock(ear.turns_per_firing());
    std::vector<double> values(machine.readings().size());
    std::vector<Firing> firings;
    std::vector<EngineMoment> moments;
    const sim::Tick begin = std::llround(request.from_seconds / sim::tick_length);
    const sim::Tick end =
        begin + std::llround(request.length_seconds * request.pace / sim::tick_length);
    for (sim::Tick at = begin; at <= end; at += look_ticks) {
        machine.advance(at);
        machine.read(values);
        const double heard = static_cast<double>(at - begin) * sim::tick_length / request.pace;
        moments.push_back(ear.hear(values, heard, request.pace));
        clock.take(moments.back(), firings);
    }
    std::vector<float> samples(
        static_cast<std::size_t>(std::llround(request.length_seconds * sound_rate)));
    render({.first_sample = 0,
            .firings = firings,
            .moments = moments,
            .size = ear.size(),
            .rated_speed = ear.rated_speed()},
           samples);
    sim::atomic_write(request.file, wav_bytes(samples));
}

} // namespace scenes

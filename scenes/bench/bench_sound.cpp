#include "scenes/bench/bench_sound.hpp"

#include <algorithm>

namespace scenes {

bool BenchSound::open()
{
    if (!has_sound_device()) {
        return false;
    }
    player_ = std::make_unique<SoundPlayer>(*ring_);
    return true;
}

void BenchSound::take_run(const BenchModel& model)
{
    const sim::Simulator& machine = model.run().machine();
    run_number_ = model.run_number();
    feed_.listen_to(machine);
    ear_.emplace(machine);
    clock_.emplace(std::max(1.0, ear_->turns_per_firing()));
    captions_.forget();
    cord_.reset();
    for (const sim::PartSpec& part : machine.rig().parts) {
        if (part.kind == "recoil") {
            cord_ = machine.reading_index(part.id + ".cord");
        }
    }
    controls_.clear();
}

/// Whether a control has moved since the last call.
bool BenchSound::was_touched(const BenchModel& model)
{
    const auto& controls = model.rig().controls;
    bool has_moved = controls_.size() != controls.size();
    controls_.resize(controls.size());
    for (std::size_t i = 0; i < controls.size(); ++i) {
        const double at = model.run().machine().control(controls[i].id);
        has_moved = has_moved || at != controls_[i];
        controls_[i] = at;
    }
    return has_moved;
}

void BenchSound::go_on(const BenchModel& model, double loudness)
{
    if (run_number_ != model.run_number()) {
        take_run(model);
    }
    const std::span<const double> values = model.run().values();
    if (player_ != nullptr) {
        feed_.go_on(model.seconds(), values, model.pace.speed(), loudness, *ring_);
    }
    firings_.clear();
    const EngineMoment moment = ear_->hear(values, model.seconds());
    clock_->take(moment, firings_);
    captions_.take(model.seconds(), moment, firings_, cord_ ? values[*cord_] : 0.0,
                   was_touched(model));
}

} // namespace scenes

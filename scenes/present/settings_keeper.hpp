#pragma once

#include "scenes/present/settings_file.hpp"

#include <functional>

namespace scenes {

/// The settings in effect, and those that are remembered: an option of the command line is in
/// effect without being remembered, until its setting is changed by hand.
class SettingsKeeper {
public:
    /// Settings that are remembered nowhere: for pictures and tests.
    explicit SettingsKeeper(Settings settings) : now_(std::move(settings)), stored_(now_) {}
    /// Settings in a file; an empty path remembers nothing.
    SettingsKeeper(std::string path, const LoadedSettings& loaded);

    [[nodiscard]] const Settings& now() const { return now_; }
    /// Counts the changes.
    [[nodiscard]] int age() const { return age_; }

    using Change = std::function<void(Settings&)>;
    /// Changes what is in effect only.
    void override_with(const Change& change);
    /// Changes what is in effect and what is remembered.
    void change(const Change& change);

    /// Writes changes down once no more have come for a while.
    ///
    /// unit: real seconds since the last call
    void tend(double seconds);
    /// Writes changes down at once.
    void save();

    /// What the program does without, and troubles since; emptied by whoever tells them.
    [[nodiscard]] std::vector<Without>& without() { return without_; }

private:
    std::string path_;
    Settings now_;
    Settings stored_;
    std::vector<Without> without_;
    int age_ = 0;
    bool is_stale_ = false;
    double unchanged_ = 0.0; ///< s since the last change
};

} // namespace scenes

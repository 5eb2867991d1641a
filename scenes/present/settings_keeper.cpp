#include "scenes/present/settings_keeper.hpp"

#include "sim/error.hpp"

#include <utility>

namespace scenes {
namespace {

/// A slider that is dragged changes a setting many times a second; the disk sees the last one.
constexpr double settled = 0.5; // s

} // namespace

SettingsKeeper::SettingsKeeper(std::string path, const LoadedSettings& loaded)
    : path_(loaded.may_save ? std::move(path) : std::string()),
      now_(loaded.settings),
      stored_(loaded.settings),
      without_(loaded.without),
      is_stale_(!loaded.without.empty())
{
}

void SettingsKeeper::override_with(const Change& change)
{
    change(now_);
    ++age_;
}

void SettingsKeeper::change(const Change& change)
{
    change(now_);
    const Settings before = stored_;
    change(stored_);
    ++age_;
    is_stale_ = is_stale_ || !(stored_ == before);
    unchanged_ = 0.0;
}

void SettingsKeeper::tend(double seconds)
{
    unchanged_ += seconds;
    if (is_stale_ && unchanged_ >= settled) {
        save();
    }
}

void SettingsKeeper::save()
{
    if (!is_stale_ || path_.empty()) {
        return;
    }
    is_stale_ = false;
    try {
        save_settings(stored_, path_);
    } catch (const sim::RequestError& error) {
        without_.push_back({phrase("The settings are not remembered: {0}"), error.what()});
        path_.clear(); // told once
    }
}

} // namespace scenes

#include "scenes/present/draft_keeper.hpp"

#include "scenes/present/run_files.hpp"
#include "sim/file_write.hpp"
#include "sim/json_reader.hpp"
#include "sim/printable.hpp"
#include "sim/veil.hpp"

#include <fcntl.h>
#include <filesystem>
#include <stdexcept>
#include <sys/file.h>
#include <unistd.h>
#include <utility>

namespace scenes {
namespace {

namespace fs = std::filesystem;

/// More windows than anybody builds orders in at once.
constexpr int places = 9;
/// Seconds between two writings.
constexpr double least_wait = 0.5;

std::string first_free(const fs::path& stem)
{
    std::error_code ignored;
    std::string path = stem.string() + ".json";
    for (int i = 2; fs::exists(path, ignored); ++i) {
        path = stem.string() + "_" + std::to_string(i) + ".json";
    }
    return path;
}

} // namespace

std::string draft_text(const KeptDraft& draft, shop::Workshops& workshops)
{
    shop::Order order = order_of(draft.values, workshops);
    order.id = "draft";
    nlohmann::ordered_json json;
    json["format"] = 1;
    json["file"] = draft.path;
    json["saved"] = draft.is_saved;
    json["accepted"] = sim::veil(nlohmann::json(draft.values.accepted).dump()); // they name faults
    json["order"] = nlohmann::ordered_json::parse(shop::write_order(order));
    return json.dump(2) + "\n";
}

KeptDraft read_draft(const std::string& text, const std::string& name, shop::Workshops& workshops)
{
    const auto node = sim::JsonNode::parse(text, name);
    node.allow_keys({"format", "file", "saved", "accepted", "order"});
    node.require_format(1);
    KeptDraft draft;
    draft.values = draft_of(
        *shop::parse_order(node.at("order").dump(), name, workshops, shop::Wholeness::begun));
    draft.path = node.at("file").text();
    draft.is_saved = node.at("saved").truth();
    const auto accepted = sim::JsonNode::parse(sim::unveil(node.at("accepted").text()), name);
    for (const sim::JsonNode& warning : accepted.items()) {
        draft.values.accepted.push_back(warning.text());
    }
    return draft;
}

DraftKeeper::~DraftKeeper()
{
    let_go();
}

DraftKeeper::DraftKeeper(DraftKeeper&& other) noexcept
{
    *this = std::move(other);
}

DraftKeeper& DraftKeeper::operator=(DraftKeeper&& other) noexcept
{
    std::swap(folder_, other.folder_);
    std::swap(path_, other.path_);
    std::swap(lock_, other.lock_);
    std::swap(kept_, other.kept_);
    std::swap(waited_, other.waited_);
    std::swap(set_aside_, other.set_aside_);
    std::swap(set_aside_reason_, other.set_aside_reason_);
    std::swap(trouble_, other.trouble_);
    return *this;
}

void DraftKeeper::let_go()
{
    if (lock_ >= 0) {
        ::close(std::exchange(lock_, -1));
    }
}

/// The lock lies beside the draft, which is replaced whenever it is written. It ends with the
/// process, however that ends.
bool DraftKeeper::claim(const std::string& path)
{
    constexpr mode_t own = 0600;
    let_go();
    lock_ = ::open((path + ".lock").c_str(), O_RDWR | O_CREAT | O_CLOEXEC, own);
    if (lock_ >= 0 && ::flock(lock_, LOCK_EX | LOCK_NB) != 0) {
        let_go();
    }
    return lock_ >= 0;
}

std::optional<KeptDraft> DraftKeeper::look(const std::string& path, shop::Workshops& workshops)
{
    std::error_code trouble;
    if (!fs::exists(path, trouble)) {
        return std::nullopt;
    }
    try {
        return read_draft(sim::JsonNode::load(path).dump(), path, workshops);
    } catch (const std::runtime_error& error) { // edited, or of a machine there is no more
        const fs::path file(path);
        set_aside_ = first_free(file.parent_path() / (file.stem().string() + "_unreadable"));
        set_aside_reason_ = error.what();
        fs::rename(path, set_aside_, trouble);
        return std::nullopt;
    }
}

std::optional<KeptDraft> DraftKeeper::take(shop::Workshops& workshops)
{
    if (folder_.empty() || !path_.empty()) {
        return std::nullopt;
    }
    try {
        make_folder_for(folder_ + "/draft");
    } catch (const sim::RequestError& error) {
        trouble_ = error.what();
        return std::nullopt;
    }
    const auto place = [&](int i) { return folder_ + "/draft_" + std::to_string(i) + ".json"; };
    std::string first;
    for (int i = 1; i <= places; ++i) {
        const std::string path = place(i);
        std::error_code ignored;
        const bool is_of_use = first.empty() || fs::exists(path, ignored);
        if (!is_of_use || !claim(path)) {
            continue;
        }
        auto found = look(path, workshops);
        if (found && !found->is_saved) {
            path_ = path;
            kept_ = found;
            return found;
        }
        first = first.empty() ? path : first;
    }
    if (first.empty() || !claim(first)) {
        trouble_ = "no place is free in " + sim::in_quotes(folder_);
        return std::nullopt;
    }
    path_ = first;
    kept_ = look(first, workshops);
    return kept_;
}

bool DraftKeeper::is_due(double seconds)
{
    waited_ += seconds;
    const bool is_due = !path_.empty() && waited_ >= least_wait;
    waited_ = is_due ? 0.0 : waited_;
    return is_due;
}

bool DraftKeeper::keep(const KeptDraft& draft, shop::Workshops& workshops)
{
    if (path_.empty()) {
        return false;
    }
    if (kept_ && *kept_ == draft) {
        return true;
    }
    try {
        sim::atomic_write(path_, draft_text(draft, workshops));
        kept_ = draft;
        trouble_.clear();
        return true;
    } catch (const std::runtime_error& error) { // the disk is full, say
        trouble_ = error.what();
        return false;
    }
}

} // namespace scenes

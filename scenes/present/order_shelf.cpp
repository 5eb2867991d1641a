#include "scenes/present/order_shelf.hpp"

#include "scenes/present/run_files.hpp"
#include "scenes/shop/record.hpp"

#include <algorithm>
#include <filesystem>
#include <stdexcept>

namespace scenes {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view record_extension = ".jsonl";
/// Of "-2026-11-26-041845" at the end of a record's name.
constexpr std::size_t stamp_length = 17;

bool is_waiting(const ShelfRecord& record)
{
    return !record.is_handed_in && record.trouble.empty();
}

ShelfOrder order_at(const std::string& path, shop::Workshops& workshops, const std::string& records)
{
    ShelfOrder entry{path, fs::path(path).stem().string(), nullptr, ""};
    try {
        entry.order = shop::load_order(path, workshops);
        entry.is_begun = std::ranges::any_of(records_of(*entry.order, records), is_waiting);
    } catch (const std::runtime_error& error) { // the file's own troubles
        entry.trouble = error.what();
    }
    return entry;
}

/// "2026-11-26 04:18" of a record's name; empty when somebody gave it another name.
std::string begun_at(const fs::path& path, const std::string& order)
{
    const std::string stem = path.stem().string();
    if (stem.size() < order.size() + 1 + stamp_length) {
        return "";
    }
    const std::string stamp = stem.substr(order.size() + 1, stamp_length);
    return stamp.substr(0, 10) + " " + stamp.substr(11, 2) + ":" + stamp.substr(13, 2);
}

ShelfRecord record_at(const fs::path& path, const shop::Order& order)
{
    ShelfRecord entry{path.string(), "", 0, false, begun_at(path, order.id), ""};
    try {
        const shop::Record record = shop::load_record(path.string());
        entry.student = record.head.student;
        entry.actions = record.lines.size();
        entry.is_handed_in = !record.lines.empty() &&
                             std::holds_alternative<shop::HandIn>(record.lines.back().action);
        shop::require_own(record, path.filename().string(), order);
    } catch (const std::runtime_error& error) {
        entry.trouble = error.what();
    }
    return entry;
}

} // namespace

std::vector<ShelfOrder> orders_on_shelf(shop::Workshops& workshops,
                                        const std::vector<std::string>& files,
                                        const std::string& records)
{
    std::vector<ShelfOrder> shelf;
    for (const std::string& path : files) {
        shelf.push_back(order_at(path, workshops, records));
    }
    std::ranges::stable_sort(shelf, {}, [](const ShelfOrder& entry) {
        constexpr int last = 99;
        return entry.order ? entry.order->level : last;
    });
    return shelf;
}

std::vector<ShelfRecord> records_of(const shop::Order& order, const std::string& folder)
{
    std::vector<fs::path> paths;
    std::error_code trouble;
    fs::directory_iterator entry(folder, trouble);
    for (; !trouble && entry != fs::directory_iterator(); entry.increment(trouble)) {
        const std::string name = entry->path().filename().string();
        // What follows the order's id is a date, so that no longer id is taken for this one.
        if (name.starts_with(order.id + "-2") && name.ends_with(record_extension)) {
            paths.push_back(entry->path());
        }
    }
    std::ranges::sort(paths, std::ranges::greater());
    std::vector<ShelfRecord> records;
    for (const fs::path& path : paths) {
        records.push_back(record_at(path, order));
    }
    return records;
}

std::string new_record_path(const std::string& folder, const std::string& order, std::time_t now)
{
    return new_path(folder, order, now, record_extension);
}

} // namespace scenes

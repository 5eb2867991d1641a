#include "scenes/shop/table_store.hpp"

#include "scenes/present/own_folders.hpp"
#include "scenes/shop/asset_files.hpp"
#include "scenes/shop/record_text.hpp"
#include "sim/error.hpp"
#include "sim/printable.hpp"

#include <bit>
#include <cerrno>
#include <fcntl.h>
#include <filesystem>
#include <system_error>
#include <unistd.h>

namespace shop {
namespace {

constexpr mode_t readable_and_writable = 0666; // less what the user's mask takes away

/// Checksum of the program that runs; of its version where the system does not show the file.
std::uint64_t program_sum()
{
    static const std::uint64_t sum =
        seed_of(file_text("/proc/self/exe"), seed_of(STANDPIPE_VERSION));
    return sum;
}

std::string head_line(std::uint64_t key)
{
    return R"({"table":1,"key":")" + hex_of(key) + "\"}";
}

TableStore::Values read_values(const sim::JsonNode& list)
{
    TableStore::Values values;
    for (const sim::JsonNode& item : list.items()) {
        values.push_back(item.is_number() ? std::optional(item.number()) : std::nullopt);
    }
    return values;
}

} // namespace

TableStore::TableStore(std::string path, std::uint64_t key) : path_(std::move(path)), key_(key)
{
    if (path_.empty()) {
        return;
    }
    std::error_code ignored; // what matters is whether the file can be opened
    std::filesystem::create_directories(std::filesystem::path(path_).parent_path(), ignored);
    descriptor_ =
        ::open(path_.c_str(), O_RDWR | O_CREAT | O_APPEND | O_CLOEXEC, readable_and_writable);
    if (descriptor_ < 0) {
        throw sim::RequestError("cannot write " + sim::in_quotes(path_) + ": " +
                                std::generic_category().message(errno));
    }
    load();
}

TableStore::~TableStore()
{
    if (descriptor_ >= 0) {
        ::close(descriptor_);
    }
}

/// Takes what whole lines of this very situation hold; a file that has another head, or a line that
/// makes no sense, is cut off there.
void TableStore::load()
{
    const std::string text = file_text(path_);
    std::size_t good = 0;
    bool is_head = true;
    for (std::size_t end = text.find('\n'); end != std::string::npos; end = text.find('\n', good)) {
        const std::string line = text.substr(good, end - good);
        if (is_head && line != head_line(key_)) {
            break;
        }
        if (!is_head) {
            try {
                const sim::JsonNode node = sim::JsonNode::parse(line, path_);
                ByCheck& row = rows_[node.at("with").text()];
                for (const std::string& check : node.at("read").keys()) {
                    row[check] = read_values(node.at("read").at(check));
                }
            } catch (const sim::AssetError&) {
                break;
            }
        }
        is_head = false;
        good = end + 1;
    }
    if (good != text.size() && ::ftruncate(descriptor_, static_cast<off_t>(good)) != 0) {
        throw sim::RequestError("cannot write " + sim::in_quotes(path_) + ": " +
                                std::generic_category().message(errno));
    }
    if (good == 0) {
        write(head_line(key_) + "\n");
    }
}

TableStore::ByCheck TableStore::known(const std::string& hypothesis)
{
    const std::scoped_lock lock(mutex_);
    const auto found = rows_.find(hypothesis);
    return found == rows_.end() ? ByCheck{} : found->second;
}

void TableStore::add(const std::string& hypothesis, const ByCheck& read)
{
    nlohmann::ordered_json line;
    line["with"] = hypothesis;
    line["read"] = nlohmann::ordered_json::object();
    for (const auto& [check, values] : read) {
        auto list = nlohmann::ordered_json::array();
        for (const auto& value : values) {
            list.push_back(value ? nlohmann::ordered_json(*value) : nlohmann::ordered_json());
        }
        line["read"][check] = std::move(list);
    }
    const std::scoped_lock lock(mutex_);
    ByCheck& row = rows_[hypothesis];
    for (const auto& [check, values] : read) {
        row[check] = values;
    }
    if (descriptor_ >= 0) {
        write(line.dump() + "\n");
    }
}

void TableStore::write(const std::string& line)
{
    const auto count = ::write(descriptor_, line.data(), line.size());
    if (count != static_cast<ssize_t>(line.size())) {
        throw sim::RequestError("cannot write " + sim::in_quotes(path_) + ": " +
                                std::generic_category().message(errno));
    }
}

std::uint64_t situation_key(const Situation& situation)
{
    std::uint64_t key = seed_of(hex_of(situation.workshop->sum), program_sum());
    key = seed_of(hex_of(std::bit_cast<std::uint64_t>(situation.weather.temperature.si)), key);
    key = seed_of(hex_of(std::bit_cast<std::uint64_t>(situation.weather.pressure.si)), key);
    return seed_of(situation.history_text, key);
}

std::string table_store(const Order& order)
{
    const std::string folder = scenes::cache_folder();
    if (folder.empty()) {
        return "";
    }
    return folder + "/tables/" + order.workshop->rig->id + "-" +
           hex_of(situation_key(situation_of(order))) + ".jsonl";
}

} // namespace shop

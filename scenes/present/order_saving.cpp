#include "scenes/present/order_saving.hpp"

#include "scenes/present/builder_words.hpp"
#include "scenes/present/fault_list.hpp"
#include "scenes/present/run_files.hpp"
#include "sim/file_write.hpp"

#include <algorithm>
#include <cctype>
#include <filesystem>

namespace scenes {
namespace {

bool is_there(const std::string& folder, const std::string& id)
{
    std::error_code ignored;
    return std::filesystem::exists(std::filesystem::path(folder) / (id + ".json"), ignored);
}

std::string path_in(const std::string& folder, const std::string& id)
{
    return (std::filesystem::path(folder) / (id + ".json")).string();
}

} // namespace

std::string id_of_title(std::string_view title)
{
    constexpr std::size_t longest = 60;
    std::string id;
    for (const char each : folded(title)) {
        const auto letter = static_cast<unsigned char>(each);
        if (letter < 0x80U && std::isalnum(letter) != 0) {
            id.push_back(each);
        } else if (!id.empty() && id.back() != '_') {
            id.push_back('_');
        }
    }
    id.resize(std::min(id.size(), longest));
    while (!id.empty() && id.back() == '_') {
        id.pop_back();
    }
    return id.empty() ? "order" : id;
}

OrderName name_of(const DraftValues& values, const std::string& folder, const std::string& own_path)
{
    const std::string shipped = sim::assets_folder() + "/orders";
    OrderName name;
    name.id = id_of_title(values.title);
    name.path = path_in(folder, name.id);
    const auto is_taken = [&](const std::string& id) {
        return is_there(folder, id) && path_in(folder, id) != own_path;
    };
    name.is_shipped = is_there(shipped, name.id);
    name.is_taken = is_taken(name.id);
    name.free_id = name.id;
    for (int i = 2; is_there(shipped, name.free_id) || is_taken(name.free_id); ++i) {
        name.free_id = name.id + "_" + std::to_string(i);
    }
    return name;
}

std::vector<std::string> still_missing(const DraftValues& values)
{
    std::vector<std::string> missing;
    const auto want = [&](bool is_there, std::string_view what) {
        if (!is_there) {
            missing.emplace_back(what);
        }
    };
    want(!values.title.empty(), words::want_title);
    want(!values.answer.faults.empty(), words::want_hidden);
    want(!values.customer.empty(), words::want_customer);
    want(!values.complaint.empty(), words::want_complaint);
    want(!values.checks.empty(), words::want_checks);
    want(!values.repairs.empty(), words::want_repairs);
    want(!values.solved.empty(), words::want_solved);
    want(values.weights.sum() > 0.0, words::want_marks);
    want(!values.answer.finding.empty(), words::want_finding);
    return missing;
}

void save_order(const shop::Order& order, const std::string& path, shop::Workshops& workshops)
{
    const std::string text = shop::write_order(order);
    shop::parse_order(text, path, workshops);
    make_folder_for(path);
    sim::atomic_write(path, text);
}

} // namespace scenes

#include "scenes/shop/order_files.hpp"

#include "scenes/present/own_folders.hpp"
#include "scenes/shop/asset_files.hpp"
#include "sim/error.hpp"
#include "sim/printable.hpp"
#include "sim/rig.hpp"
#include "sim/words.hpp"

#include <filesystem>

namespace shop {
namespace {

std::string own_folder(const char* name)
{
    const std::string data = scenes::data_folder();
    return data.empty() ? "" : data + "/" + name;
}

} // namespace

std::string own_orders_folder()
{
    return own_folder("orders");
}

std::string records_folder()
{
    return own_folder("records");
}

std::string drafts_folder()
{
    return own_folder("drafts");
}

std::vector<std::string> order_files()
{
    std::vector<std::string> files = json_files(sim::assets_folder() + "/orders");
    if (const std::string own = own_orders_folder(); !own.empty()) {
        const auto more = json_files(own);
        files.insert(files.end(), more.begin(), more.end());
    }
    return files;
}

std::string order_file(const std::string& path_or_id)
{
    std::error_code ignored;
    if (std::filesystem::is_regular_file(path_or_id, ignored)) {
        return path_or_id;
    }
    std::vector<std::string> ids;
    for (const std::string& file : order_files()) {
        ids.push_back(std::filesystem::path(file).stem().string());
        if (ids.back() == path_or_id) {
            return file;
        }
    }
    throw sim::RequestError("there is no work order " + sim::in_quotes(path_or_id) +
                            sim::choices_hint(path_or_id, ids));
}

} // namespace shop

#include "scenes/shop/asset_files.hpp"

#include "sim/printable.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

namespace shop {

std::vector<std::string> json_files(const std::string& folder)
{
    std::error_code no_such_folder; // holds no files
    return sim::json_files(folder, no_such_folder);
}

std::string file_text(const std::string& path)
{
    std::ifstream file(path, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

sim::JsonNode load_named(const std::string& path)
{
    const sim::JsonNode node = sim::JsonNode::load(path);
    node.require_format(1);
    const std::string name = std::filesystem::path(path).stem().string();
    if (node.at("id").text() != name) {
        throw node.at("id").wrong("must be the file's own name, " + sim::in_quotes(name));
    }
    return node;
}

sim::Unit unit_named(const sim::JsonNode& node)
{
    const sim::Unit* unit = sim::find_unit(node.text());
    if (unit == nullptr) {
        throw node.wrong("unknown unit " + sim::in_quotes(node.text()) +
                         "; allowed: such as mL, kPa, rpm, s, mm, degC, %");
    }
    return *unit;
}

sim::Unit unit_of(std::string_view name)
{
    const sim::Unit* unit = sim::find_unit(name);
    return unit == nullptr ? sim::Unit{} : *unit;
}

std::vector<std::string> texts_at(const sim::JsonNode& node, std::string_view key)
{
    std::vector<std::string> texts;
    if (node.has(key)) {
        for (const sim::JsonNode& item : node.at(key).items()) {
            texts.push_back(item.text());
        }
    }
    return texts;
}

} // namespace shop

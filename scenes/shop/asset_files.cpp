#include "scenes/shop/asset_files.hpp"

#include "sim/printable.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <optional>
#include <sstream>

namespace shop {
namespace {

std::optional<sim::Unit> find_unit(std::string_view name)
{
    for (int d = 0; d <= static_cast<int>(sim::Dimension::angle); ++d) {
        if (const auto* unit = sim::find_unit(name, static_cast<sim::Dimension>(d))) {
            return *unit;
        }
    }
    return std::nullopt;
}

} // namespace

std::vector<std::string> json_files(const std::string& folder)
{
    std::vector<std::string> files;
    std::error_code trouble;
    for (const auto& entry : std::filesystem::directory_iterator(folder, trouble)) {
        if (entry.path().extension() == ".json") {
            files.push_back(entry.path().string());
        }
    }
    std::ranges::sort(files);
    return files;
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
    const auto unit = find_unit(node.text());
    if (!unit) {
        throw node.wrong("unknown unit " + sim::in_quotes(node.text()) +
                         "; allowed: such as mL, kPa, rpm, s, mm, degC, %");
    }
    return *unit;
}

sim::Unit unit_of(std::string_view name)
{
    return find_unit(name).value_or(sim::Unit{});
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

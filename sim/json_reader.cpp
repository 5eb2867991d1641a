#include "json_reader.hpp"

#include "json_parse.hpp"
#include "printable.hpp"
#include "words.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <filesystem>

namespace sim {

namespace {

constexpr std::size_t longest_list = 100'000;

/// The number in as few digits as tell it from its neighbours.
std::string shown_number(double value)
{
    std::array<char, 32> text{};
    char* const end = std::to_chars(text.data(), text.data() + text.size(), value).ptr;
    return {text.data(), end};
}

/// What a value is, in the words of the messages.
std::string_view kind_of(const nlohmann::json& value)
{
    using Type = nlohmann::json::value_t;
    switch (value.type()) {
    case Type::null:
        return "null";
    case Type::object:
        return "an object { }";
    case Type::array:
        return "a list [ ]";
    case Type::string:
        return "text";
    case Type::boolean:
        return "true or false";
    case Type::number_integer:
    case Type::number_unsigned:
    case Type::number_float:
        return "a number";
    case Type::binary:
    case Type::discarded:
        break;
    }
    return "something else";
}

} // namespace

std::vector<std::string> json_files(const std::string& folder, std::error_code& trouble)
{
    std::vector<std::string> files;
    for (const auto& entry : std::filesystem::directory_iterator(folder, trouble)) {
        if (entry.path().extension() == ".json") {
            files.push_back(entry.path().string());
        }
    }
    std::ranges::sort(files);
    return files;
}

JsonNode::JsonNode(std::shared_ptr<const nlohmann::json> root, const nlohmann::json* value,
                   std::string file, std::string pointer)
    : root_(std::move(root)), value_(value), file_(std::move(file)), pointer_(std::move(pointer))
{
}

JsonNode JsonNode::load(const std::string& path)
{
    return parse(read_json_file(path), path);
}

JsonNode JsonNode::parse(const std::string& text, const std::string& name)
{
    auto root = std::make_shared<const nlohmann::json>(parse_json(text, name));
    const nlohmann::json* value = root.get();
    return {std::move(root), value, name, ""};
}

AssetError JsonNode::wrong(const std::string& reason) const
{
    return {file_, shown_pointer(pointer_), printable(reason)};
}

const nlohmann::json& JsonNode::object() const
{
    if (!value_->is_object()) {
        throw wrong("must be an object { }, not " + std::string(kind_of(*value_)));
    }
    return *value_;
}

void JsonNode::allow_keys(std::initializer_list<std::string_view> allowed) const
{
    allow_keys(std::vector<std::string>(allowed.begin(), allowed.end()));
}

void JsonNode::allow_keys(const std::vector<std::string>& allowed) const
{
    for (const auto& [key, value] : object().items()) {
        if (std::ranges::find(allowed, key) == allowed.end()) {
            throw wrong("unknown key " + in_quotes(key) + choices_hint(key, allowed));
        }
    }
}

void JsonNode::require_format(int format) const
{
    const JsonNode node = at("format");
    if (node.number() != format) {
        throw node.wrong("this program reads format " + std::to_string(format));
    }
}

bool JsonNode::has(std::string_view key) const
{
    return object().contains(key);
}

JsonNode JsonNode::at(std::string_view key) const
{
    const auto found = object().find(key);
    if (found == object().end()) {
        throw wrong("key \"" + std::string(key) + "\" is missing");
    }
    return {root_, &*found, file_, pointer_ + pointer_step(key)};
}

std::vector<JsonNode> JsonNode::items() const
{
    if (!value_->is_array()) {
        throw wrong("must be a list [ ], not " + std::string(kind_of(*value_)));
    }
    if (value_->size() > longest_list) {
        throw wrong("holds more than " + std::to_string(longest_list) + " entries");
    }
    std::vector<JsonNode> nodes;
    nodes.reserve(value_->size());
    for (std::size_t i = 0; i < value_->size(); ++i) {
        nodes.push_back(JsonNode(root_, &value_->at(i), file_, pointer_ + "/" + std::to_string(i)));
    }
    return nodes;
}

std::vector<std::string> JsonNode::keys() const
{
    std::vector<std::string> found;
    for (const auto& [key, value] : object().items()) {
        found.push_back(key);
    }
    return found;
}

std::string JsonNode::text() const
{
    if (!value_->is_string()) {
        throw wrong("must be text in quotes, not " + std::string(kind_of(*value_)));
    }
    return value_->get<std::string>();
}

bool JsonNode::truth() const
{
    if (!value_->is_boolean()) {
        throw wrong("must be true or false, not " + std::string(kind_of(*value_)));
    }
    return value_->get<bool>();
}

double JsonNode::number() const
{
    if (!value_->is_number()) {
        throw wrong("must be a number, not " + std::string(kind_of(*value_)));
    }
    return value_->get<double>();
}

double JsonNode::number_between(double low, double high) const
{
    const double value = number();
    if (!(value >= low && value <= high)) {
        throw wrong(shown_number(value) + " is out of range; allowed: " + shown_number(low) +
                    " to " + shown_number(high));
    }
    return value;
}

double JsonNode::quantity(Dimension dimension) const
{
    if (value_->is_number() && dimension == Dimension::ratio) {
        return number();
    }
    if (!value_->is_string()) {
        throw wrong("wants " + std::string(dimension_name(dimension)) +
                    " as text with a unit; allowed: " + allowed_units(dimension));
    }
    try {
        return parse_quantity(value_->get<std::string>(), dimension);
    } catch (const std::invalid_argument& error) {
        throw wrong(error.what());
    }
}

Vector JsonNode::vector() const
{
    const auto parts = items();
    if (parts.size() != 3) {
        throw wrong("wants three lengths, got " + std::to_string(parts.size()));
    }
    return {parts[0].quantity(Dimension::length), parts[1].quantity(Dimension::length),
            parts[2].quantity(Dimension::length)};
}

bool JsonNode::is_number() const
{
    return value_->is_number();
}

bool JsonNode::is_text() const
{
    return value_->is_string();
}

bool JsonNode::is_object() const
{
    return value_->is_object();
}

std::string JsonNode::dump() const
{
    return value_->dump();
}

} // namespace sim

#include "scenes/present/catalogue.hpp"

#include "sim/json_reader.hpp"

#include <filesystem>

namespace scenes {

std::string places_of(std::string_view text)
{
    std::string places;
    for (char place = '0'; place <= '9'; ++place) {
        const std::string mark{'{', place, '}'};
        if (text.find(mark) != std::string_view::npos) {
            places += mark;
        }
    }
    return places;
}

Catalogue load_catalogue(const std::string& path)
{
    const sim::JsonNode node = sim::JsonNode::load(path);
    node.allow_keys({"format", "id", "title", "decimal_sign", "phrases"});
    node.require_format(1);
    Catalogue catalogue;
    catalogue.id = node.at("id").text();
    if (catalogue.id != std::filesystem::path(path).stem().string()) {
        throw node.at("id").wrong("must be the name of the file");
    }
    catalogue.title = node.at("title").text();
    const std::string sign = node.at("decimal_sign").text();
    if (sign != "." && sign != ",") {
        throw node.at("decimal_sign").wrong(R"(must be "." or ",")");
    }
    catalogue.decimal_sign = sign[0];
    const sim::JsonNode phrases = node.at("phrases");
    for (const std::string& english : phrases.keys()) {
        const sim::JsonNode entry = phrases.at(english);
        std::string text = entry.text();
        if (text.empty()) {
            throw entry.wrong("must not be empty");
        }
        if (places_of(text) != places_of(english)) {
            throw entry.wrong("must have the places \"" + places_of(english) +
                              "\" of its English, has \"" + places_of(text) + "\"");
        }
        catalogue.phrases.emplace(english, std::move(text));
    }
    return catalogue;
}

} // namespace scenes

#include "scenes/present/phrase.hpp"

#include "scenes/present/catalogue.hpp"
#include "sim/error.hpp"
#include "sim/rig.hpp"
#include "sim/words.hpp"

#include <algorithm>
#include <filesystem>
#include <memory>

namespace scenes {
namespace {

constexpr std::string_view english_id = "en";

/// The one thing here that outlives a call. Catalogues are never dropped: widgets hold on to texts.
struct Speech {
    std::vector<std::unique_ptr<const Catalogue>> catalogues;
    const Catalogue* chosen = nullptr; ///< null for English
    DecimalSign sign = DecimalSign::of_language;
    int age = 0;
};

Speech& speech()
{
    static Speech only;
    return only;
}

std::string_view without_sense(std::string_view english)
{
    return english.substr(0, english.find('|'));
}

std::vector<std::string> catalogue_files()
{
    std::vector<std::string> files;
    std::error_code trouble;
    const std::filesystem::directory_iterator folder(sim::assets_folder() + "/languages", trouble);
    if (!trouble) {
        for (const auto& entry : folder) {
            if (entry.path().extension() == ".json") {
                files.push_back(entry.path().string());
            }
        }
    }
    std::ranges::sort(files);
    return files;
}

const Catalogue& catalogue_of(std::string_view id)
{
    auto& known = speech().catalogues;
    const auto found =
        std::ranges::find_if(known, [&](const auto& catalogue) { return catalogue->id == id; });
    if (found != known.end()) {
        return **found;
    }
    std::vector<std::string> ids{std::string(english_id)};
    for (const std::string& file : catalogue_files()) {
        ids.push_back(std::filesystem::path(file).stem().string());
        if (ids.back() == id) {
            known.push_back(std::make_unique<const Catalogue>(load_catalogue(file)));
            return *known.back();
        }
    }
    throw sim::RequestError("there is no language \"" + std::string(id) + "\"" +
                            sim::choices_hint(id, ids));
}

} // namespace

Phrase::operator std::string_view() const
{
    const std::string_view said = translated(english_);
    return said == english_ ? without_sense(said) : said;
}

Phrase::operator std::string() const
{
    return std::string(std::string_view(*this));
}

std::string_view translated(std::string_view english)
{
    if (const Catalogue* chosen = speech().chosen) {
        const auto found = chosen->phrases.find(english);
        if (found != chosen->phrases.end()) {
            return found->second;
        }
    }
    return english;
}

std::vector<std::string_view> translated(std::span<const Phrase> phrases)
{
    return {phrases.begin(), phrases.end()};
}

std::string filled(std::string_view pattern, std::initializer_list<std::string_view> pieces)
{
    std::string text;
    while (!pattern.empty()) {
        const bool is_place = pattern.size() >= 3 && pattern[0] == '{' && pattern[2] == '}' &&
                              pattern[1] >= '0' && pattern[1] <= '9';
        const auto index = is_place ? static_cast<std::size_t>(pattern[1] - '0') : pieces.size();
        if (index < pieces.size()) {
            text += *(pieces.begin() + index);
            pattern.remove_prefix(3);
        } else {
            text += pattern.front();
            pattern.remove_prefix(1);
        }
    }
    return text;
}

std::vector<Language> languages()
{
    std::vector<Language> all{{std::string(english_id), "English"}};
    for (const std::string& file : catalogue_files()) {
        const std::string id = std::filesystem::path(file).stem().string();
        try {
            all.push_back({id, catalogue_of(id).title});
        } catch (const sim::AssetError&) {
            continue; // whoever chooses it by its id is told what is wrong
        }
    }
    return all;
}

void choose_language(std::string_view id)
{
    speech().chosen = id == english_id ? nullptr : &catalogue_of(id);
    age_wording();
}

std::string_view chosen_language()
{
    return speech().chosen == nullptr ? english_id : std::string_view(speech().chosen->id);
}

int wording_age()
{
    return speech().age;
}

void age_wording()
{
    ++speech().age;
}

void choose_decimal_sign(DecimalSign sign)
{
    speech().sign = sign;
    age_wording();
}

DecimalSign chosen_decimal_sign()
{
    return speech().sign;
}

char decimal_sign()
{
    return speech().sign == DecimalSign::of_language ? language_decimal_sign() : '.';
}

char language_decimal_sign()
{
    return speech().chosen == nullptr ? '.' : speech().chosen->decimal_sign;
}

} // namespace scenes

#include "scenes/shop/reason.hpp"

#include "scenes/view/number.hpp"

#include <array>

namespace shop {
namespace {

constexpr scenes::Phrase nothing = scenes::phrase("nothing|named as a cause");
constexpr scenes::Phrase two = scenes::phrase("{0} and {1}|two titles");

std::string listed(const Titles& titles)
{
    if (titles.empty()) {
        return nothing;
    }
    std::string text(scenes::translated(titles.front()));
    for (std::size_t i = 1; i < titles.size(); ++i) {
        const std::string_view next = scenes::translated(titles[i]);
        text = i + 1 == titles.size() ? scenes::filled(two, {text, next})
                                      : text + ", " + std::string(next);
    }
    return text;
}

std::string text_of(const Reason& reason)
{
    std::array<std::string, 4> words;
    for (std::size_t i = 0; i < reason.pieces.size(); ++i) {
        const auto* figure = std::get_if<double>(&reason.pieces[i]);
        words.at(i) = figure != nullptr ? scenes::fixed_text(*figure, 0)
                                        : listed(std::get<Titles>(reason.pieces[i]));
    }
    return scenes::filled(reason.sentence, {words[0], words[1], words[2], words[3]});
}

} // namespace

std::string text_of(std::span<const Reason> reasons)
{
    std::string text;
    for (const Reason& reason : reasons) {
        text += (text.empty() ? "" : " ") + text_of(reason);
    }
    return text;
}

} // namespace shop

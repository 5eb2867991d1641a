#pragma once

#include <initializer_list>
#include <span>
#include <string>
#include <string_view>
#include <vector>

// Every text that a person reads, in the language they have chosen. English is in the sources and
// in the assets; `assets/languages` holds the other languages, keyed by the English text.

namespace scenes {

/// A text by its English words; whoever reads it gets the chosen language.
///
/// What it gives stays valid for the life of the program, whatever language is chosen later.
class Phrase {
public:
    constexpr explicit Phrase(std::string_view english) : english_(english) {}

    [[nodiscard]] constexpr std::string_view english() const { return english_; }
    operator std::string_view() const; // NOLINT(google-explicit-constructor): a text by nature
    operator std::string() const;      // NOLINT(google-explicit-constructor)

private:
    std::string_view english_;
};

/// The way to write a text down in the sources: `phrase("Pull the cord")`, a literal and nothing
/// else, since a test looks for them.
///
/// Words whose sense a translator must be told carry it behind a bar, which nobody else sees:
/// `phrase("Open|a valve")`. What varies stands as {0}, {1}: see `filled`.
constexpr Phrase phrase(std::string_view english)
{
    return Phrase(english);
}

/// A text from an asset, in the chosen language; the text itself where the language lacks it.
///
/// The result lives as long as `english` and the program do.
std::string_view translated(std::string_view english);

/// The pattern with {0}, {1}... replaced by the pieces; a brace of another kind stays.
std::string filled(std::string_view pattern, std::initializer_list<std::string_view> pieces);

/// Several texts at once, for choices.
std::vector<std::string_view> translated(std::span<const Phrase> phrases);

// ---- which language

struct Language {
    std::string id;    ///< of ISO 639: "en", "es"
    std::string title; ///< in the language itself
};

/// English, and those in the assets, in the order of their ids.
std::vector<Language> languages();

/// Speaks this language from now on, everywhere.
///
/// throws:  RequestError when there is no such language; AssetError when its file is wrong
void choose_language(std::string_view id);

/// The id of the chosen language; English at first.
std::string_view chosen_language();

/// Grows with every change of what texts depend on, language, decimal sign or units: what was made
/// of texts before, such as a picture of them, is stale then.
int wording_age();
void age_wording();

// ---- numbers

enum class DecimalSign { of_language, point };
/// Whether numbers on the screen have the language's own decimal sign or a point.
void choose_decimal_sign(DecimalSign sign);
DecimalSign chosen_decimal_sign();
char decimal_sign();
/// The language's own, whatever is chosen.
char language_decimal_sign();

} // namespace scenes

#include "scenes/present/catalogue.hpp"
#include "scenes/present/phrase.hpp"
#include "sim/simulator.hpp"
#include "tests/laws/source_files.hpp"
#include "tests/shop/small_order.hpp"

#include <doctest/doctest.h>

#include <regex>
#include <set>

using namespace scenes;

TEST_SUITE_BEGIN("laws");

namespace {

/// What the literals that begin at a quote say, adjacent ones joined.
std::string literal_at(const std::string& text, std::size_t at)
{
    std::string said;
    while (at < text.size() && text[at] == '"') {
        for (++at; text[at] != '"'; ++at) {
            if (text[at] != '\\') {
                said += text[at];
            } else if (text[++at] == 'u') {
                const auto code = std::stoul(text.substr(at + 1, 4), nullptr, 16);
                said += code < 0x800
                            ? std::string{static_cast<char>(0xC0U | (code >> 6U)),
                                          static_cast<char>(0x80U | (code & 0x3FU))}
                            : std::string{static_cast<char>(0xE0U | (code >> 12U)),
                                          static_cast<char>(0x80U | ((code >> 6U) & 0x3FU)),
                                          static_cast<char>(0x80U | (code & 0x3FU))};
                at += 4;
            } else {
                said += text[at];
            }
        }
        at = text.find_first_not_of(" \t\n", at + 1);
    }
    return said;
}

/// All literals in a file that follow a pattern that ends before their quote.
void add_literals(const std::filesystem::path& file, const std::regex& before,
                  std::set<std::string>& keys)
{
    const std::string text = tests::text_of(file);
    for (std::sregex_iterator match(text.begin(), text.end(), before), end; match != end; ++match) {
        keys.insert(
            literal_at(text, static_cast<std::size_t>(match->position() + match->length()) - 1));
    }
}

void add_source_keys(std::set<std::string>& keys)
{
    for (const auto& file : tests::sources_under("scenes")) {
        if (file.filename() == "phrase.hpp") {
            continue; // its examples are none
        }
        add_literals(file, std::regex(R"(\bphrase\(\s*")"), keys);
        const std::string name = file.filename().string();
        if (name.starts_with("section_") && name.ends_with("marks.cpp")) {
            add_literals(file, std::regex(R"(\.name = ")"), keys);
            add_literals(file, std::regex(R"(\b(reading|value|bore)_fact\(\s*")"), keys);
        }
    }
}

std::string words_of(std::string part)
{
    std::ranges::replace(part, '_', ' ');
    return part;
}

void add_rig_keys(const sim::Rig& rig, std::set<std::string>& keys)
{
    keys.insert(rig.title);
    for (const sim::PartSpec& part : rig.parts) {
        keys.insert(part.title);
    }
    for (const sim::Control& control : rig.controls) {
        keys.insert(control.title);
    }
    for (const sim::Doing& doing : rig.doings) {
        keys.insert(doing.title);
    }
    for (const sim::Fault& fault : rig.faults) {
        keys.insert({fault.title, fault.where, fault.about, fault.found});
    }
}

void add_job_keys(const shop::Job& job, std::set<std::string>& keys)
{
    keys.insert({job.title, job.about});
    keys.insert(job.tools.begin(), job.tools.end());
    for (const shop::Reading& reading : job.procedure.readings) {
        keys.insert(reading.title);
        for (const shop::Reading::Band& band : reading.words) {
            keys.insert(band.say);
        }
    }
}

void add_workshop_keys(const shop::Workshop& workshop, std::set<std::string>& keys)
{
    for (const auto& [id, instrument] : *workshop.instruments) {
        keys.insert(instrument.title);
    }
    for (const shop::Caution& caution : workshop.cautions) {
        keys.insert({caution.title, caution.says});
    }
    for (const shop::Beginning& beginning : workshop.beginnings) {
        keys.insert(beginning.title);
    }
    for (const shop::Check& check : workshop.checks) {
        add_job_keys(check, keys);
        if (!check.disturbs.empty()) {
            keys.insert(check.disturbs);
        }
    }
    for (const shop::Repair& repair : workshop.repairs) {
        add_job_keys(repair, keys);
        if (repair.harm) {
            keys.insert(repair.harm->says);
        }
    }
}

std::vector<std::filesystem::path> assets_in(const std::string& folder)
{
    const std::filesystem::directory_iterator files(std::string(ASSETS_DIR) + "/" + folder);
    return {begin(files), end(files)};
}

/// What the workshop and its orders say. An order's finding stays out: it is sealed, and whoever
/// opened a language's file would read it there.
void add_shop_keys(std::set<std::string>& keys)
{
    for (const std::filesystem::path& beginnings : assets_in("beginnings")) {
        add_workshop_keys(*tests::workshops().of(beginnings.stem().string()), keys);
    }
    for (const std::filesystem::path& file : assets_in("orders")) {
        const auto order = shop::load_order(file.string(), tests::workshops());
        keys.insert({order->title, order->customer, order->complaint});
    }
}

/// Everything that a language must have.
std::set<std::string> all_keys()
{
    std::set<std::string> keys;
    add_source_keys(keys);
    add_shop_keys(keys);
    for (const std::string& id : sim::rig_ids()) {
        const auto rig = std::make_shared<const sim::Rig>(sim::load_rig(id));
        add_rig_keys(*rig, keys);
        const sim::Simulator machine(rig);
        for (const sim::Network::Reading& reading : machine.readings()) {
            const std::size_t dot = reading.name.find('.');
            keys.insert(words_of(reading.name.substr(0, dot)));
            keys.insert(words_of(reading.name.substr(dot + 1)));
        }
    }
    return keys;
}

std::string listed(const std::vector<std::string>& keys)
{
    std::string text;
    for (const std::string& key : keys) {
        text += "\n  \"" + key + "\"";
    }
    return text;
}

} // namespace

TEST_CASE("every phrase and title is in every language and none is left over")
{
    const std::set<std::string> wanted = all_keys();
    REQUIRE(wanted.contains("Pull the cord"));
    REQUIRE(wanted.contains("fuel tank"));
    REQUIRE(wanted.contains("Press the primer bulb"));
    REQUIRE(wanted.contains("The bulb stays in: the line"));
    std::size_t catalogues = 0;
    for (const auto& entry : std::filesystem::directory_iterator(ASSETS_DIR "/languages")) {
        CAPTURE(entry.path().string());
        const Catalogue catalogue = load_catalogue(entry.path().string()); // places to fill as well
        std::vector<std::string> missing;
        std::vector<std::string> unused;
        for (const std::string& key : wanted) {
            if (!catalogue.phrases.contains(key)) {
                missing.push_back(key);
            }
        }
        for (const auto& [key, text] : catalogue.phrases) {
            if (!wanted.contains(key)) {
                unused.push_back(key);
            }
        }
        CHECK_MESSAGE(missing.empty(), "missing:", listed(missing));
        CHECK_MESSAGE(unused.empty(), "unused:", listed(unused));
        ++catalogues;
    }
    CHECK(catalogues >= 1);
}

TEST_SUITE_END();

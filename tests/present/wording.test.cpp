#include "scenes/present/wording.hpp"

#include "scenes/present/phrase.hpp"
#include "scenes/shop/reason.hpp"
#include "sim/run_sheet.hpp"
#include "tests/temporary_folder.hpp"

#include <doctest/doctest.h>

#include <fstream>

using scenes::phrase;
using scenes::worded;

namespace {

/// Speaks Spanish as long as it lives.
struct InSpanish {
    InSpanish() { scenes::choose_language("es"); }
    ~InSpanish() { scenes::choose_language("en"); }
    InSpanish(const InSpanish&) = delete;
    InSpanish& operator=(const InSpanish&) = delete;
};

/// What the program says about a run sheet with these contents.
std::string trouble_with(const std::string& contents)
{
    const TemporaryFolder folder;
    const std::string path = folder.file("a.json");
    std::ofstream(path) << contents;
    const sim::Rig rig = sim::load_rig("mower");
    try {
        static_cast<void>(sim::load_run_sheet(path, rig));
    } catch (const std::runtime_error& error) {
        const std::string said = worded(error.what());
        const std::size_t name = said.find("a.json");
        return name == std::string::npos ? said : said.substr(name);
    }
    return "";
}

} // namespace

TEST_SUITE_BEGIN("present");

TEST_CASE("in English a trouble is told in the model's own words")
{
    CHECK(worded("cannot write \"/x/y\": Permission denied") ==
          "cannot write \"/x/y\": Permission denied");
    CHECK(worded("something nobody foresaw") == "something nobody foresaw");
    CHECK(trouble_with("{").starts_with("a.json: is not JSON: it ends too early, at line 1"));
}

TEST_CASE("what is wrong with a run sheet is told in the chosen language")
{
    const InSpanish spanish;
    CHECK(trouble_with("{").starts_with("a.json: no es JSON: termina antes de tiempo, en línea 1"));
    CHECK(trouble_with("{\"format\": 2}") ==
          "a.json en /format: formato desconocido 2; se admite: 1");
    CHECK(trouble_with(R"({"format": 1, "rig": "trimmer", "commands": []})") ==
          "a.json en /rig: la hoja es para la máquina \"trimmer\", no para \"mower\"");
    CHECK(trouble_with(R"({"format": 1, "rig": "mower", "commands": 3})") ==
          "a.json en /commands: debe ser una lista [ ], no un número");
    CHECK(trouble_with(
              R"({"format": 1, "rig": "mower", "commands": [{"at": "5 kPa", "do": "pull_cord"}]})")
              .starts_with("a.json en /commands/0/at: se espera un tiempo, hay \"5 kPa\""));
    CHECK(trouble_with(R"({"format": 1, "rig": "mower",
                           "commands": [{"at": "5 s", "do": "pull_cord", "too": 1}]})")
              .starts_with("a.json en /commands/0: clave desconocida \"too\""));
    CHECK(trouble_with(R"({"format": 1, "rig": "mower", "commands": [{"do": "pull_cord"}]})") ==
          "a.json en /commands/0: falta la clave \"at\"");
}

TEST_CASE("what cannot be written, and a model that cannot go on, are told in it too")
{
    const InSpanish spanish;
    CHECK(worded("cannot write \"/a: b\": Permission denied") ==
          "no se puede escribir \"/a: b\": permiso denegado");
    CHECK(worded("the model cannot go on at 3.5 s: state bowl.fuel at -1") ==
          "el modelo no puede seguir en 3.5 s: estado bowl.fuel en -1");
}

TEST_CASE("a list of titles is told in the chosen language, and what is no title stays")
{
    const InSpanish spanish;
    CHECK(worded("Even a sound machine does not pass: Put it to work, lightly and hard and Half "
                 "choke: better or worse?.") ==
          "Ni siquiera una máquina sana pasa: Cargarla, poco y mucho y Medio estrangulador: ¿mejor "
          "o peor?.");
    CHECK(worded("The bulb stays in: the line") == "El bulbo no vuelve: la línea");
    CHECK(worded("Even a sound machine does not pass: Start it cold, no title.") ==
          "Ni siquiera una máquina sana pasa: Start it cold, no title.");
    CHECK(worded("a | b: c") == "a | b: c");
}

TEST_CASE("why there are marks is told in the chosen language, figures and titles in place")
{
    const std::vector<shop::Reason> reasons{
        {phrase("You named: {0}. It was: {1}."),
         {shop::Titles{"Main jet plugged", "Float hangs up low", "Float has taken on fuel"},
          shop::Titles{}}},
        {phrase("Your estimate was fair.")},
        {phrase("Least told: {0} ({1} %)."), {shop::Titles{"Half choke: better or worse?"}, 12.4}}};
    CHECK(text_of(reasons) ==
          "You named: Main jet plugged, Float hangs up low and Float has taken on fuel. It "
          "was: nothing. Your estimate was fair. Least told: Half choke: "
          "better or worse? (12 %).");
    const InSpanish spanish;
    const std::string said = text_of(reasons);
    CHECK(said.starts_with("Usted nombró: Surtidor principal obstruido, "));
    CHECK(said.find(" y ") != std::string::npos);
    CHECK(said.find("Era: nada.") != std::string::npos);
    CHECK(said.ends_with("Medio estrangulador: ¿mejor o peor? (12 %)."));
}

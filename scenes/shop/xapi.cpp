#include "scenes/shop/class_sheet.hpp"
#include "scenes/shop/plain_number.hpp"
#include "scenes/shop/record_text.hpp"

#include <nlohmann/json.hpp>

// xAPI statements of marked work. Names of verbs are those of the registered vocabulary; everything
// else has names of its own, under "urn:standpipe:", since nothing here is on a network.

namespace shop {
namespace {

using Json = nlohmann::ordered_json;

constexpr const char* verbs = "http://adlnet.gov/expapi/verbs/";
/// Where students' names count, as an address that never leads anywhere.
/// source:  D. Eastlake, A. Panitz, RFC 2606, 1999: reserved names
constexpr const char* home_page = "https://standpipe.example/class";

/// A statement's own id, the same whenever a record is marked again, so that a learning system
/// takes it once.
/// source:  P. Leach, M. Mealling, R. Salz, RFC 4122, 2005, section 4.4: bits of version 4
std::string statement_id(const Marked& marked, std::size_t number)
{
    const std::uint64_t first = seed_of(marked.file, seed_of(marked.student));
    const std::uint64_t second = seed_of(std::to_string(number), first);
    std::string id = hex_of(first) + hex_of(second);
    id[12] = '4';
    id[16] = "89ab"[second >> 62U];
    for (const std::size_t at : {20U, 16U, 12U, 8U}) {
        id.insert(at, "-");
    }
    return id;
}

/// source:  ISO 8601: durations
std::string duration(double minutes)
{
    return "PT" + plain_number(60.0 * minutes) + "S";
}

Json verb(const std::string& name)
{
    return {{"id", verbs + name}, {"display", {{"en", name}}}};
}

Json actor(const Marked& marked)
{
    const std::string name =
        marked.student.empty() ? "record-" + hex_of(seed_of(marked.file)) : marked.student;
    return {{"objectType", "Agent"}, {"account", {{"homePage", home_page}, {"name", name}}}};
}

Json object(const std::string& id, const std::string& title, const char* kind)
{
    return {{"objectType", "Activity"},
            {"id", "urn:standpipe:" + id},
            {"definition",
             {{"name", {{"en", title}}},
              {"type", std::string("http://adlnet.gov/expapi/activities/") + kind}}}};
}

Json step(const Marked& marked, std::size_t number)
{
    const JobLine& line = marked.work.lines[number];
    Json statement;
    statement["id"] = statement_id(marked, number + 1);
    statement["actor"] = actor(marked);
    statement["verb"] = verb("interacted");
    statement["object"] =
        object("order:" + marked.order->id + ":step:" + std::to_string(number + 1),
               done_text(*marked.order, line), "interaction");
    statement["result"]["duration"] = duration(line.minutes);
    const std::string read = read_text(*marked.order, line);
    if (!read.empty()) {
        statement["result"]["response"] = read;
    }
    statement["context"]["contextActivities"]["parent"] =
        Json::array({object("order:" + marked.order->id, marked.order->title, "assessment")});
    return statement;
}

Json whole(const Marked& marked)
{
    Json statement;
    statement["id"] = statement_id(marked, 0);
    statement["actor"] = actor(marked);
    statement["verb"] = verb("completed");
    statement["object"] = object("order:" + marked.order->id, marked.order->title, "assessment");
    const double of = marked.marks.of();
    statement["result"] = {{"completion", true},
                           {"success", marked.marks.marks.front().got > 0.0},
                           {"duration", duration(sum_of(marked.work.lines, &JobLine::minutes))},
                           {"score",
                            {{"scaled", of > 0.0 ? marked.marks.got() / of : 0.0},
                             {"raw", marked.marks.got()},
                             {"min", 0},
                             {"max", of}}}};
    for (const Mark& mark : marked.marks.marks) {
        statement["result"]["extensions"]["urn:standpipe:mark:" + mark.id] = {
            {"got", mark.got}, {"of", mark.of}, {"says", text_of(mark.why)}};
    }
    return statement;
}

} // namespace

std::string xapi_statements(std::span<const Marked> all)
{
    Json statements = Json::array();
    for (const Marked& marked : all) {
        for (std::size_t i = 0; i < marked.work.lines.size(); ++i) {
            statements.push_back(step(marked, i));
        }
        statements.push_back(whole(marked));
    }
    return statements.dump(2) + "\n";
}

} // namespace shop

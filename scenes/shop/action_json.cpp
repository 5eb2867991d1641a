#include "scenes/shop/action_json.hpp"

#include "scenes/shop/asset_files.hpp"
#include "sim/printable.hpp"
#include "sim/words.hpp"

#include <algorithm>

namespace shop {
namespace {

struct Writer {
    nlohmann::ordered_json& json;

    void operator()(const Predict& action) const
    {
        json = {{"do", "predict"},
                {"check", action.check},
                {"reading", action.reading},
                {"guess", action.guess}};
    }
    void operator()(const DoCheck& action) const
    {
        json = {{"do", "check"}, {"check", action.check}, {"heeded", action.heeded}};
    }
    void operator()(const DoRepair& action) const
    {
        json = {{"do", "repair"}, {"repair", action.repair}, {"heeded", action.heeded}};
    }
    void operator()(const Suspect& action) const
    {
        json = {{"do", "suspect"}, {"causes", action.causes}};
    }
    void operator()(const Finding& action) const
    {
        json = {{"do", "finding"},
                {"causes", action.causes},
                {"advice", advice_words()[static_cast<std::size_t>(action.advice)]},
                {"minutes", action.minutes},
                {"money", action.money},
                {"note", action.note}};
    }
    void operator()(const HandIn& /*action*/) const { json = {{"do", "hand_in"}}; }
};

Finding read_finding(const sim::JsonNode& node)
{
    node.allow_keys({"do", "causes", "advice", "minutes", "money", "note"});
    const auto words = advice_words();
    const sim::JsonNode advice = node.at("advice");
    const auto found = std::ranges::find(words, advice.text());
    if (found == words.end()) {
        throw advice.wrong("unknown advice " + sim::in_quotes(advice.text()) +
                           sim::choices_hint(advice.text(), {words.begin(), words.end()}));
    }
    return {texts_at(node, "causes"), static_cast<Advice>(found - words.begin()),
            node.at("minutes").number_between(0.0, 10000.0),
            node.at("money").number_between(0.0, 1e6),
            node.has("note") ? node.at("note").text() : ""};
}

} // namespace

nlohmann::ordered_json action_json(const Action& action)
{
    nlohmann::ordered_json json;
    std::visit(Writer{json}, action);
    return json;
}

Action read_action(const sim::JsonNode& node)
{
    const std::string kind = node.at("do").text();
    if (kind == "predict") {
        node.allow_keys({"do", "check", "reading", "guess"});
        return Predict{node.at("check").text(), node.at("reading").text(), node.at("guess").text()};
    }
    if (kind == "check") {
        node.allow_keys({"do", "check", "heeded"});
        return DoCheck{node.at("check").text(), texts_at(node, "heeded")};
    }
    if (kind == "repair") {
        node.allow_keys({"do", "repair", "heeded"});
        return DoRepair{node.at("repair").text(), texts_at(node, "heeded")};
    }
    if (kind == "suspect") {
        node.allow_keys({"do", "causes"});
        return Suspect{texts_at(node, "causes")};
    }
    if (kind == "finding") {
        return read_finding(node);
    }
    if (kind == "hand_in") {
        node.allow_keys({"do"});
        return HandIn{};
    }
    throw node.at("do").wrong(
        "unknown action " + sim::in_quotes(kind) +
        sim::choices_hint(kind, {"predict", "check", "repair", "suspect", "finding", "hand_in"}));
}

std::vector<Action> load_actions(const std::string& path)
{
    const sim::JsonNode file = sim::JsonNode::load(path);
    file.allow_keys({"format", "actions"});
    file.require_format(1);
    std::vector<Action> actions;
    for (const sim::JsonNode& node : file.at("actions").items()) {
        actions.push_back(read_action(node));
    }
    return actions;
}

} // namespace shop

#include "scenes/shop/histories.hpp"

#include "sim/json_reader.hpp"
#include "sim/rig.hpp"

#include <filesystem>
#include <nlohmann/json.hpp>

namespace shop {
namespace {

using Json = nlohmann::ordered_json;

/// The steps of a beginning, those of the ones it comes after first; none when there is none.
Json steps_of(const Json& beginnings, const std::string& id)
{
    Json steps = Json::array();
    for (const Json& beginning : beginnings) {
        if (beginning.at("id") == id) {
            if (beginning.contains("after")) {
                steps = steps_of(beginnings, beginning.at("after").get<std::string>());
            }
            for (const Json& step : beginning.at("steps")) {
                steps.push_back(step);
            }
        }
    }
    return steps;
}

} // namespace

std::vector<History> ready_histories(const std::string& assets, const std::string& rig)
{
    const sim::JsonNode file = sim::JsonNode::load(assets + "/beginnings/" + rig + ".json");
    const Json beginnings = Json::parse(file.at("beginnings").dump());
    Json run = steps_of(beginnings, "running");
    for (const Json& step : steps_of(beginnings, "standing")) {
        run.push_back(step); // every control back, engine off
    }
    Json overnight = run;
    run.push_back({{"wait", "30 min"}});
    overnight.push_back({{"wait", "12 h"}});
    return {{History::Kind::shelf, "[]"},
            {History::Kind::has_run, run.dump()},
            {History::Kind::overnight, overnight.dump()}};
}

std::vector<std::string> rigs_with_workshop(const std::string& assets)
{
    std::vector<std::string> rigs = sim::rig_ids();
    std::erase_if(rigs, [&](const std::string& rig) {
        std::error_code ignored;
        return !std::filesystem::exists(assets + "/beginnings/" + rig + ".json", ignored);
    });
    return rigs;
}

} // namespace shop

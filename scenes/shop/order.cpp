#include "scenes/shop/order.hpp"

#include "scenes/shop/asset_files.hpp"
#include "sim/ids.hpp"
#include "sim/printable.hpp"
#include "sim/veil.hpp"
#include "sim/words.hpp"

#include <algorithm>
#include <array>
#include <sstream>

namespace shop {
namespace {

void require_one_of(const sim::JsonNode& node, std::string_view what,
                    const std::vector<std::string>& allowed)
{
    if (std::ranges::find(allowed, node.text()) == allowed.end()) {
        throw node.wrong("there is no " + std::string(what) + " " + sim::in_quotes(node.text()) +
                         sim::choices_hint(node.text(), allowed));
    }
}

/// A list of ids among those there are, each once; or "all".
std::vector<std::string> read_ids(const sim::JsonNode& node, std::string_view what,
                                  const std::vector<std::string>& allowed)
{
    if (node.is_text()) {
        if (node.text() != "all") {
            throw node.wrong("wants a list or \"all\", got " + sim::in_quotes(node.text()));
        }
        return allowed;
    }
    std::vector<std::string> ids;
    for (const sim::JsonNode& item : node.items()) {
        require_one_of(item, what, allowed);
        if (std::ranges::find(ids, item.text()) != ids.end()) {
            throw item.wrong(sim::in_quotes(item.text()) + " is listed twice");
        }
        ids.push_back(item.text());
    }
    return ids;
}

sim::Weather read_weather(const sim::JsonNode& node)
{
    node.allow_keys({"temperature", "pressure"});
    sim::Weather weather;
    weather.temperature.si = node.at("temperature").quantity(sim::Dimension::temperature);
    if (!(weather.temperature.si >= 233.15 && weather.temperature.si <= 333.15)) {
        throw node.at("temperature").wrong("is out of range; allowed: -40 degC to 60 degC");
    }
    if (node.has("pressure")) {
        weather.pressure.si = node.at("pressure").quantity(sim::Dimension::absolute_pressure);
        if (!(weather.pressure.si >= 5e4 && weather.pressure.si <= 1.1e5)) {
            throw node.at("pressure").wrong("is out of range; allowed: 50 kPa to 110 kPa");
        }
    }
    return weather;
}

constexpr auto weight_members = std::to_array<std::pair<const char*, double Order::Weights::*>>(
    {{"solved", &Order::Weights::solved},
     {"cause", &Order::Weights::cause},
     {"minutes", &Order::Weights::minutes},
     {"money", &Order::Weights::money},
     {"order", &Order::Weights::order},
     {"verified", &Order::Weights::verified},
     {"harm", &Order::Weights::harm},
     {"cautions", &Order::Weights::cautions}});

Order::Weights read_weights(const sim::JsonNode& node, Wholeness wholeness)
{
    std::vector<std::string> allowed;
    Order::Weights weights;
    for (const auto& [key, member] : weight_members) {
        allowed.emplace_back(key);
    }
    node.allow_keys(allowed);
    for (const auto& [key, member] : weight_members) {
        weights.*member = node.at(key).number_between(0.0, 1000.0);
    }
    if (wholeness == Wholeness::whole && !(weights.sum() > 0.0)) {
        throw node.wrong("something must count");
    }
    return weights;
}

Order::Answer read_answer(const sim::JsonNode& node, const sim::Rig& rig)
{
    node.allow_keys({"faults", "causes", "look_alikes", "advice", "finding"});
    const std::vector<std::string> faults = sim::ids_of(rig.faults);
    Order::Answer answer;
    for (const sim::JsonNode& item : node.at("faults").items()) {
        item.allow_keys({"id", "severity"});
        require_one_of(item.at("id"), "fault", faults);
        answer.faults.push_back(
            {item.at("id").text(),
             item.has("severity") ? item.at("severity").number_between(0.0, 1.0) : 1.0});
    }
    if (node.has("causes")) {
        answer.causes = read_ids(node.at("causes"), "fault", faults);
    }
    if (node.has("look_alikes")) {
        answer.look_alikes = read_ids(node.at("look_alikes"), "fault", faults);
    }
    const auto words = advice_words();
    require_one_of(node.at("advice"), "advice", {words.begin(), words.end()});
    answer.advice =
        static_cast<Advice>(std::ranges::find(words, node.at("advice").text()) - words.begin());
    answer.finding = node.at("finding").text();
    return answer;
}

/// The answer under its seal. Complaints about it would tell what is hidden.
Order::Answer read_sealed(const sim::JsonNode& node, const sim::Rig& rig)
{
    try {
        return read_answer(sim::JsonNode::parse(sim::unveil(node.text()), "sealed"), rig);
    } catch (const std::runtime_error&) {
    }
    throw node.wrong("the sealed answer was changed, or is for another rig; allowed: what the "
                     "program itself has sealed");
}

void read_budget(const sim::JsonNode& node, Order& order)
{
    order.minutes = node.at("minutes").number_between(1.0, 10000.0);
    order.money = node.at("money").number_between(0.0, 1e6);
    order.labour = node.at("labour").number_between(0.0, 10000.0);
    order.worth = node.at("worth").number_between(0.0, 1e6);
}

void read_predictions(const sim::JsonNode& list, Order& order)
{
    for (const sim::JsonNode& item : list.items()) {
        item.allow_keys({"before", "predict"});
        require_one_of(item.at("before"), "permitted check", order.checks);
        const Check& check = *order.workshop->find_check(item.at("before").text());
        require_one_of(item.at("predict"), "reading", sim::ids_of(check.procedure.readings));
        order.predictions.push_back({check.id, item.at("predict").text()});
    }
}

void read_solved(const sim::JsonNode& list, Order& order, Wholeness wholeness)
{
    order.solved = read_ids(list, "check", sim::ids_of(order.workshop->checks));
    for (const sim::JsonNode& item : list.items()) {
        const auto& readings = order.workshop->find_check(item.text())->procedure.readings;
        if (std::ranges::none_of(readings, &Reading::has_sound)) {
            throw item.wrong("has no reading that says what is sound");
        }
        if (!order.allows_check(item.text())) {
            throw item.wrong("must be among the permitted checks, or nobody could verify the work");
        }
    }
    if (wholeness == Wholeness::whole && order.solved.empty()) {
        throw list.wrong("wants one check at least");
    }
}

Order read_order(const sim::JsonNode& node, Workshops& workshops, Wholeness wholeness)
{
    node.allow_keys({"format",  "id",      "title",   "rig",     "level",   "customer", "complaint",
                     "weather", "history", "checks",  "repairs", "minutes", "money",    "labour",
                     "worth",   "solved",  "predict", "marks",   "seed",    "answer",   "sealed"});
    node.require_format(1);
    Order order;
    order.id = node.at("id").text();
    order.title = node.at("title").text();
    require_one_of(node.at("rig"), "rig", sim::rig_ids());
    order.workshop = workshops.of(node.at("rig").text());
    const Workshop& workshop = *order.workshop;
    order.level = static_cast<int>(node.at("level").number_between(1.0, 4.0));
    order.customer = node.at("customer").text();
    order.complaint = node.at("complaint").text();
    order.weather = read_weather(node.at("weather"));
    const Vocabulary vocabulary(workshop.rig, *workshop.instruments);
    order.history = read_procedure(node.at("history"), vocabulary);
    order.history_text = node.at("history").dump();
    order.checks = read_ids(node.at("checks"), "check", sim::ids_of(workshop.checks));
    order.repairs = read_ids(node.at("repairs"), "repair", sim::ids_of(workshop.repairs));
    read_budget(node, order);
    read_solved(node.at("solved"), order, wholeness);
    if (node.has("predict")) {
        read_predictions(node.at("predict"), order);
    }
    order.weights = read_weights(node.at("marks"), wholeness);
    order.seed = static_cast<std::uint64_t>(node.at("seed").number_between(0.0, 1e9));
    if (node.has("answer") == node.has("sealed")) {
        throw node.wrong("wants one of answer, sealed");
    }
    order.answer = node.has("answer") ? read_answer(node.at("answer"), *workshop.rig)
                                      : read_sealed(node.at("sealed"), *workshop.rig);
    return order;
}

nlohmann::ordered_json answer_json(const Order::Answer& answer)
{
    nlohmann::ordered_json json;
    json["faults"] = nlohmann::ordered_json::array();
    for (const sim::SetFault& fault : answer.faults) {
        json["faults"].push_back({{"id", fault.fault}, {"severity", fault.severity}});
    }
    json["causes"] = answer.causes;
    json["look_alikes"] = answer.look_alikes;
    json["advice"] = advice_words()[static_cast<std::size_t>(answer.advice)];
    json["finding"] = answer.finding;
    return json;
}

} // namespace

std::span<const std::string> advice_words()
{
    static const std::array<std::string, 5> words{"clean", "tighten", "adjust", "replace",
                                                  "not_worth"};
    return words;
}

double Order::Weights::sum() const
{
    double total = 0.0;
    for (const auto& [key, member] : weight_members) {
        total += this->*member;
    }
    return total;
}

bool Order::allows_check(std::string_view check) const
{
    return std::ranges::find(checks, check) != checks.end();
}

bool Order::allows_repair(std::string_view repair) const
{
    return std::ranges::find(repairs, repair) != repairs.end();
}

bool Order::is_cause(std::string_view fault) const
{
    return std::ranges::find(answer.faults, fault, &sim::SetFault::fault) != answer.faults.end() ||
           std::ranges::find(answer.causes, fault) != answer.causes.end();
}

Workshops::Workshops(std::string assets) : assets_(std::move(assets)) {}

std::shared_ptr<const Workshop> Workshops::of(const std::string& rig)
{
    auto& known = known_[rig];
    if (known == nullptr) {
        known = load_workshop(std::make_shared<const sim::Rig>(sim::load_rig(rig)), assets_);
    }
    return known;
}

std::shared_ptr<const Order> load_order(const std::string& path, Workshops& workshops)
{
    Order order = read_order(load_named(path), workshops, Wholeness::whole);
    order.sum = seed_of(file_text(path));
    return std::make_shared<const Order>(std::move(order));
}

std::shared_ptr<const Order> parse_order(const std::string& text, const std::string& name,
                                         Workshops& workshops, Wholeness wholeness)
{
    Order order = read_order(sim::JsonNode::parse(text, name), workshops, wholeness);
    order.sum = seed_of(text);
    return std::make_shared<const Order>(std::move(order));
}

std::string sealed_order(const std::string& text, const std::string& name, Workshops& workshops)
{
    const auto order = parse_order(text, name, workshops);
    auto json = nlohmann::ordered_json::parse(text);
    if (json.contains("answer")) {
        json.erase("answer");
        json["sealed"] = sim::veil(answer_json(order->answer).dump());
    }
    return json.dump(2) + "\n";
}

std::string write_order(const Order& order)
{
    nlohmann::ordered_json json;
    json["format"] = 1;
    json["id"] = order.id;
    json["title"] = order.title;
    json["rig"] = order.workshop->rig->id;
    json["level"] = order.level;
    json["customer"] = order.customer;
    json["complaint"] = order.complaint;
    const auto quantity = [](double value, const char* unit) {
        std::ostringstream text;
        text.precision(17);
        text << value << ' ' << unit;
        return text.str();
    };
    json["weather"] = {{"temperature", quantity(order.weather.temperature.si, "K")},
                       {"pressure", quantity(order.weather.pressure.si, "Pa")}};
    json["history"] = nlohmann::ordered_json::parse(order.history_text);
    json["checks"] = order.checks;
    json["repairs"] = order.repairs;
    json["minutes"] = order.minutes;
    json["money"] = order.money;
    json["labour"] = order.labour;
    json["worth"] = order.worth;
    json["solved"] = order.solved;
    json["predict"] = nlohmann::ordered_json::array();
    for (const Order::Ask& ask : order.predictions) {
        json["predict"].push_back({{"before", ask.check}, {"predict", ask.reading}});
    }
    for (const auto& [key, member] : weight_members) {
        json["marks"][key] = order.weights.*member;
    }
    json["seed"] = order.seed;
    json["sealed"] = sim::veil(answer_json(order.answer).dump());
    return json.dump(2) + "\n";
}

} // namespace shop

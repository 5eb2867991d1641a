#include "scenes/shop/asset_files.hpp"
#include "scenes/shop/procedure.hpp"

#include "sim/ids.hpp"
#include "sim/printable.hpp"
#include "sim/words.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

// Reading procedures; procedure_run.cpp runs them.

namespace shop {
namespace {

using As = Reading::As;
constexpr auto as_words = std::to_array<std::pair<const char*, As>>({{"last", As::last},
                                                                     {"mean", As::mean},
                                                                     {"least", As::least},
                                                                     {"most", As::most},
                                                                     {"change", As::change},
                                                                     {"swing", As::swing},
                                                                     {"time", As::time}});
constexpr std::size_t most_steps = 2000;
constexpr int most_depth = 6;
constexpr double longest_step = 10.0 * 86400.0;

class Reader {
public:
    Reader(const Vocabulary& vocabulary, Procedure& procedure)
        : vocabulary_(vocabulary), procedure_(procedure)
    {
    }

    std::vector<Step> steps(const sim::JsonNode& list, int depth = 0)
    {
        if (depth > most_depth) {
            throw list.wrong("steps are nested too deep; allowed: " + std::to_string(most_depth));
        }
        std::vector<Step> read;
        for (const sim::JsonNode& node : list.items()) {
            if (++count_ > most_steps) {
                throw node.wrong("too many steps; allowed: " + std::to_string(most_steps));
            }
            read.push_back({step(node, depth)});
        }
        return read;
    }

private:
    decltype(Step::what) step(const sim::JsonNode& node, int depth)
    {
        if (node.has("set") && !node.has("alter")) {
            return Act{control(node)};
        }
        if (node.has("do")) {
            return Act{doing(node)};
        }
        if (node.has("wait")) {
            node.allow_keys({"wait"});
            return Wait{ticks(node.at("wait"))};
        }
        if (node.has("watch")) {
            return watch(node);
        }
        if (node.has("read")) {
            node.allow_keys({"read"});
            return Watch{0, {}, readings(node.at("read"), true)};
        }
        if (node.has("repeat")) {
            return repeat(node, depth);
        }
        if (node.has("if")) {
            node.allow_keys({"if", "steps", "else"});
            Choose choose{condition(node.at("if")), steps(node.at("steps"), depth + 1), {}};
            if (node.has("else")) {
                choose.otherwise = steps(node.at("else"), depth + 1);
            }
            return choose;
        }
        if (node.has("restore") || node.has("alter")) {
            return Act{mend(node)};
        }
        if (node.has("leaps")) {
            node.allow_keys({"leaps"});
            return Act{sim::SetLeaps{node.at("leaps").truth()}};
        }
        throw node.wrong("is no step; allowed: set, do, wait, watch, read, repeat, if, restore, "
                         "alter, leaps");
    }

    sim::Command control(const sim::JsonNode& node) const
    {
        node.allow_keys({"set", "to"});
        const std::string id = node.at("set").text();
        const sim::Control* known = vocabulary_.rig->find_control(id);
        if (known == nullptr) {
            throw node.at("set").wrong("there is no control " + sim::in_quotes(id) +
                                       hint(id, vocabulary_.rig->controls));
        }
        return sim::SetControl{id, node.at("to").number_between(known->low, known->high)};
    }

    sim::Command doing(const sim::JsonNode& node) const
    {
        node.allow_keys({"do", "to"});
        const std::string id = node.at("do").text();
        const sim::Doing* known = vocabulary_.rig->find_doing(id);
        if (known == nullptr) {
            throw node.at("do").wrong("there is no doing " + sim::in_quotes(id) +
                                      hint(id, vocabulary_.rig->doings));
        }
        if (!known->has_amount()) {
            node.allow_keys({"do"});
            return sim::Do{id, 0.0};
        }
        return sim::Do{id, node.at("to").number_between(0.0, known->most)};
    }

    /// The parameter that a text such as "main_jet.bore" names.
    std::pair<sim::Mend, const sim::ParameterInfo*> parameter(const sim::JsonNode& node) const
    {
        const std::string name = node.text();
        const std::size_t dot = name.find('.');
        sim::Mend mend{name.substr(0, dot), dot == std::string::npos ? "" : name.substr(dot + 1)};
        const auto* info = vocabulary_.rig->find_parameter(mend.part, mend.parameter);
        if (info == nullptr) {
            throw node.wrong("the rig " + vocabulary_.rig->id + " has no parameter " +
                             sim::in_quotes(name) + "; allowed: part.parameter");
        }
        return {mend, info};
    }

    sim::Command mend(const sim::JsonNode& node) const
    {
        if (node.has("restore")) {
            node.allow_keys({"restore"});
            return parameter(node.at("restore")).first;
        }
        node.allow_keys({"alter", "scale", "add", "set"});
        auto [mend, info] = parameter(node.at("alter"));
        if (node.keys().size() != 2) {
            throw node.wrong("wants exactly one of scale, add, set");
        }
        if (node.has("scale")) {
            mend.how = sim::Mend::How::scale;
            mend.amount = node.at("scale").number_between(0.0, 1e6);
        } else if (node.has("add")) {
            mend.how = sim::Mend::How::add;
            mend.amount = node.at("add").quantity(info->dimension);
        } else {
            mend.how = sim::Mend::How::set;
            mend.amount = node.at("set").quantity(info->dimension);
            if (!(mend.amount >= info->low && mend.amount <= info->high)) {
                throw node.at("set").wrong("is out of the parameter's range");
            }
        }
        return mend;
    }

    static sim::Tick ticks(const sim::JsonNode& node)
    {
        const double seconds = node.quantity(sim::Dimension::duration);
        if (!(seconds >= sim::tick_length && seconds <= longest_step)) {
            throw node.wrong(sim::in_quotes(node.text()) +
                             " is out of range; allowed: 1 ms to 10 day");
        }
        return std::llround(seconds / sim::tick_length);
    }

    std::size_t machine_reading(const sim::JsonNode& node) const
    {
        const std::string name = node.text();
        const auto found =
            std::ranges::find(vocabulary_.readings, name, &sim::Network::Reading::name);
        if (found == vocabulary_.readings.end()) {
            std::vector<std::string> names;
            std::ranges::transform(vocabulary_.readings, std::back_inserter(names),
                                   &sim::Network::Reading::name);
            const std::string near = sim::nearest(name, names);
            throw node.wrong("there is no reading " + sim::in_quotes(name) +
                             (near.empty() ? "" : "; did you mean " + sim::in_quotes(near) + "?"));
        }
        return static_cast<std::size_t>(found - vocabulary_.readings.begin());
    }

    /// "above" or "below" of a node, about a reading of the machine.
    Condition limit(const sim::JsonNode& node, std::size_t reading) const
    {
        if (node.has("above") == node.has("below")) {
            throw node.wrong("wants one of above, below");
        }
        const bool is_above = node.has("above");
        const auto dimension = unit_of(vocabulary_.readings[reading].unit).dimension;
        return {reading, is_above, node.at(is_above ? "above" : "below").quantity(dimension)};
    }

    Condition condition(const sim::JsonNode& node) const
    {
        node.allow_keys({"reading", "above", "below"});
        return limit(node, machine_reading(node.at("reading")));
    }

    Watch watch(const sim::JsonNode& node)
    {
        node.allow_keys({"watch", "until", "read"});
        Watch watch{ticks(node.at("watch")), {}, readings(node.at("read"), false)};
        if (node.has("until")) {
            watch.until = condition(node.at("until"));
        }
        return watch;
    }

    Repeat repeat(const sim::JsonNode& node, int depth)
    {
        node.allow_keys({"repeat", "until", "steps", "count"});
        Repeat repeat;
        repeat.times = static_cast<std::size_t>(node.at("repeat").number_between(1.0, 1000.0));
        repeat.until = condition(node.at("until"));
        repeat.steps = steps(node.at("steps"), depth + 1);
        if (node.has("count")) {
            repeat.count = add(count(node.at("count")), node.at("count"));
        }
        return repeat;
    }

    std::vector<std::size_t> readings(const sim::JsonNode& list, bool is_at_once)
    {
        std::vector<std::size_t> places;
        for (const sim::JsonNode& node : list.items()) {
            places.push_back(add(reading(node, is_at_once), node));
        }
        return places;
    }

    std::size_t add(Reading reading, const sim::JsonNode& node)
    {
        if (procedure_.find(reading.id) != nullptr) {
            throw node.at("id").wrong("there is a reading " + sim::in_quotes(reading.id) +
                                      " already");
        }
        procedure_.readings.push_back(std::move(reading));
        return procedure_.readings.size() - 1;
    }

    /// What every reading has, its dimension given.
    Reading common(const sim::JsonNode& node, sim::Dimension dimension) const
    {
        Reading reading;
        reading.id = node.at("id").text();
        reading.title = node.at("title").text();
        const std::string tool = node.at("instrument").text();
        const auto found = vocabulary_.instruments->find(tool);
        if (found == vocabulary_.instruments->end()) {
            std::vector<std::string> ids;
            for (const auto& [id, instrument] : *vocabulary_.instruments) {
                ids.push_back(id);
            }
            throw node.at("instrument")
                .wrong("there is no instrument " + sim::in_quotes(tool) +
                       sim::choices_hint(tool, ids));
        }
        reading.instrument = &found->second;
        if (reading.instrument->unit.dimension != dimension) {
            throw node.at("instrument")
                .wrong("reads " +
                       std::string(sim::dimension_name(reading.instrument->unit.dimension)) +
                       ", but this is " + std::string(sim::dimension_name(dimension)));
        }
        read_words(node, dimension, reading);
        read_sound(node, dimension, reading);
        return reading;
    }

    Reading count(const sim::JsonNode& node) const
    {
        node.allow_keys({"id", "title", "instrument", "words", "sound"});
        Reading reading = common(node, sim::Dimension::ratio);
        reading.as = As::count;
        return reading;
    }

    Reading reading(const sim::JsonNode& node, bool is_at_once) const
    {
        node.allow_keys({"id", "title", "of", "measures", "as", "above", "below", "instrument",
                         "words", "sound"});
        if (node.has("of") == node.has("measures")) {
            throw node.wrong("wants one of of, measures");
        }
        const As as = node.has("as") ? kind(node.at("as")) : As::last;
        if (is_at_once && as != As::last) {
            throw node.at("as").wrong("what is read at once can only be last");
        }
        if (node.has("measures")) {
            const auto [mend, info] = parameter(node.at("measures"));
            Reading reading = common(node, info->dimension);
            reading.part = mend.part;
            reading.parameter = mend.parameter;
            return reading;
        }
        const std::size_t of = machine_reading(node.at("of"));
        const auto own = unit_of(vocabulary_.readings[of].unit).dimension;
        Reading reading = common(node, as == As::time ? sim::Dimension::duration : own);
        reading.of = of;
        reading.as = as;
        if (as == As::time) {
            reading.passes = limit(node, of);
        } else if (node.has("above") || node.has("below")) {
            throw node.wrong("above and below belong to a reading as time");
        }
        return reading;
    }

    static As kind(const sim::JsonNode& node)
    {
        std::vector<std::string> allowed;
        for (const auto& [word, as] : as_words) {
            if (node.text() == word) {
                return as;
            }
            allowed.emplace_back(word);
        }
        throw node.wrong("unknown way to read " + sim::in_quotes(node.text()) +
                         sim::choices_hint(node.text(), allowed));
    }

    static void read_words(const sim::JsonNode& node, sim::Dimension dimension, Reading& reading)
    {
        if (!node.has("words")) {
            return;
        }
        const auto items = node.at("words").items();
        for (std::size_t i = 0; i < items.size(); ++i) {
            const bool is_last = i + 1 == items.size();
            items[i].allow_keys({"below", "say"});
            if (items[i].has("below") == is_last) {
                throw items[i].wrong("all words but the last want below, the last takes none");
            }
            const double below = is_last ? std::numeric_limits<double>::infinity()
                                         : items[i].at("below").quantity(dimension);
            if (!reading.words.empty() && !(below > reading.words.back().below)) {
                throw items[i].at("below").wrong("must be above the one before");
            }
            reading.words.push_back({below, items[i].at("say").text()});
        }
        if (reading.words.size() < 2) {
            throw node.at("words").wrong("wants two words at least");
        }
    }

    static void read_sound(const sim::JsonNode& node, sim::Dimension dimension, Reading& reading)
    {
        if (!node.has("sound")) {
            return;
        }
        const sim::JsonNode sound = node.at("sound");
        if (!reading.words.empty()) {
            reading.sound_words = texts_at(node, "sound");
            for (const sim::JsonNode& word : sound.items()) {
                if (std::ranges::find(reading.words, word.text(), &Reading::Band::say) ==
                    reading.words.end()) {
                    throw word.wrong("is none of the reading's words");
                }
            }
            return;
        }
        sound.allow_keys({"least", "most"});
        if (sound.has("least")) {
            reading.least = sound.at("least").quantity(dimension);
        }
        if (sound.has("most")) {
            reading.most = sound.at("most").quantity(dimension);
        }
        if (reading.least && reading.most && !(*reading.least <= *reading.most)) {
            throw sound.at("most").wrong("must not be below least");
        }
    }

    template <class T>
    static std::string hint(const std::string& id, const std::vector<T>& things)
    {
        return sim::choices_hint(id, sim::ids_of(things));
    }

    const Vocabulary& vocabulary_;
    Procedure& procedure_;
    std::size_t count_ = 0;
};

} // namespace

Procedure read_procedure(const sim::JsonNode& steps, const Vocabulary& vocabulary)
{
    Procedure procedure;
    procedure.steps = Reader(vocabulary, procedure).steps(steps);
    return procedure;
}

} // namespace shop

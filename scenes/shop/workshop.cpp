#include "scenes/shop/workshop.hpp"

#include "scenes/shop/asset_files.hpp"
#include "scenes/shop/procedure_run.hpp"
#include "sim/error.hpp"
#include "sim/ids.hpp"
#include "sim/printable.hpp"
#include "sim/words.hpp"

#include <algorithm>

namespace shop {
namespace {

/// Refuses an id that names none of the things.
template <class T>
void require_known(const sim::JsonNode& node, std::string_view what, const std::vector<T>& things)
{
    if (sim::find_by_id(things, node.text()) == nullptr) {
        throw node.wrong("there is no " + std::string(what) + " " + sim::in_quotes(node.text()) +
                         sim::choices_hint(node.text(), sim::ids_of(things)));
    }
}

std::vector<Caution> load_cautions(const std::string& folder)
{
    std::vector<Caution> cautions;
    for (const std::string& path : json_files(folder)) {
        const sim::JsonNode node = load_named(path);
        node.allow_keys({"format", "id", "title", "says"});
        cautions.push_back({node.at("id").text(), node.at("title").text(), node.at("says").text()});
    }
    return cautions;
}

std::vector<Beginning> load_beginnings(const std::string& path, const Vocabulary& vocabulary)
{
    const sim::JsonNode file = sim::JsonNode::load(path);
    file.allow_keys({"format", "rig", "beginnings"});
    file.require_format(1);
    if (file.at("rig").text() != vocabulary.rig->id) {
        throw file.at("rig").wrong("must be the file's own name, " +
                                   sim::in_quotes(vocabulary.rig->id));
    }
    std::vector<Beginning> all;
    for (const sim::JsonNode& node : file.at("beginnings").items()) {
        node.allow_keys({"id", "title", "after", "steps"});
        Beginning beginning{node.at("id").text(), node.at("title").text(), "",
                            read_procedure(node.at("steps"), vocabulary)};
        if (sim::find_by_id(all, beginning.id) != nullptr) {
            throw node.at("id").wrong("there is a beginning " + sim::in_quotes(beginning.id) +
                                      " already");
        }
        if (node.has("after")) { // one that stands before it: so they cannot go round in a ring
            require_known(node.at("after"), "earlier beginning", all);
            beginning.after = node.at("after").text();
        }
        all.push_back(std::move(beginning));
    }
    return all;
}

/// The entry of "machines" for a rig, if there is one.
std::optional<sim::JsonNode> entry_for(const sim::JsonNode& file, const std::string& rig)
{
    for (const sim::JsonNode& machine : file.at("machines").items()) {
        for (const sim::JsonNode& id : machine.at("rigs").items()) {
            if (id.text() == rig) {
                return machine;
            }
        }
    }
    return std::nullopt;
}

void read_job(const sim::JsonNode& file, const sim::JsonNode& machine, const Vocabulary& vocabulary,
              const Workshop& workshop, Job& job)
{
    job.id = file.at("id").text();
    job.title = file.at("title").text();
    job.about = (machine.has("about") ? machine : file).at("about").text();
    job.tools = texts_at(file, "tools");
    job.cautions = texts_at(file, "cautions");
    if (file.has("cautions")) {
        for (const sim::JsonNode& caution : file.at("cautions").items()) {
            require_known(caution, "caution", workshop.cautions);
        }
    }
    job.minutes = machine.at("minutes").number_between(0.0, 10000.0);
    job.money = machine.has("money") ? machine.at("money").number_between(0.0, 1e6) : 0.0;
    job.procedure = read_procedure(machine.at("steps"), vocabulary);
}

std::vector<Check> load_checks(const std::string& folder, const Vocabulary& vocabulary,
                               const Workshop& workshop)
{
    std::vector<Check> checks;
    for (const std::string& path : json_files(folder)) {
        const sim::JsonNode file = load_named(path);
        file.allow_keys({"format", "id", "title", "about", "tools", "cautions", "machines"});
        const auto machine = entry_for(file, workshop.rig->id);
        if (!machine) {
            continue;
        }
        machine->allow_keys({"rigs", "about", "begins", "minutes", "money", "disturbs", "steps"});
        Check check;
        read_job(file, *machine, vocabulary, workshop, check);
        require_known(machine->at("begins"), "beginning", workshop.beginnings);
        check.begins = machine->at("begins").text();
        check.disturbs = machine->has("disturbs") ? machine->at("disturbs").text() : "";
        if (check.procedure.readings.empty()) {
            throw machine->at("steps").wrong("a check wants a reading at least");
        }
        checks.push_back(std::move(check));
    }
    return checks;
}

Repair::Kind read_kind(const sim::JsonNode& node)
{
    using Kind = Repair::Kind;
    const std::vector<std::string> words{"clean", "tighten", "adjust", "replace"};
    const auto found = std::ranges::find(words, node.text());
    if (found == words.end()) {
        throw node.wrong("unknown kind " + sim::in_quotes(node.text()) +
                         sim::choices_hint(node.text(), words));
    }
    constexpr std::array kinds{Kind::clean, Kind::tighten, Kind::adjust, Kind::replace};
    return kinds.at(static_cast<std::size_t>(found - words.begin()));
}

void require_work(const sim::JsonNode& steps, const Procedure& procedure)
{
    if (mending_of(procedure).empty()) {
        throw steps.wrong("wants a step that restores or alters something");
    }
}

std::vector<Repair> load_repairs(const std::string& folder, const Vocabulary& vocabulary,
                                 const Workshop& workshop)
{
    std::vector<Repair> repairs;
    for (const std::string& path : json_files(folder)) {
        const sim::JsonNode file = load_named(path);
        file.allow_keys(
            {"format", "id", "kind", "title", "about", "tools", "cautions", "machines"});
        const auto machine = entry_for(file, workshop.rig->id);
        if (!machine) {
            continue;
        }
        machine->allow_keys({"rigs", "about", "minutes", "money", "steps", "harm"});
        Repair repair;
        read_job(file, *machine, vocabulary, workshop, repair);
        repair.kind = read_kind(file.at("kind"));
        repair.begins = workshop.beginnings.front().id;
        require_work(machine->at("steps"), repair.procedure);
        if (machine->has("harm")) {
            const sim::JsonNode harm = machine->at("harm");
            harm.allow_keys({"chance", "says", "steps"});
            repair.harm =
                Repair::Harm{harm.at("chance").number_between(0.0, 1.0), harm.at("says").text(),
                             read_procedure(harm.at("steps"), vocabulary)};
            require_work(harm.at("steps"), repair.harm->procedure);
        }
        repairs.push_back(std::move(repair));
    }
    return repairs;
}

/// The instruments have no part in what there is to read.
std::uint64_t sum_of_files(const sim::Rig& rig, const std::string& assets)
{
    std::vector<std::string> paths{rig.file, assets + "/beginnings/" + rig.id + ".json"};
    for (const char* folder : {"/faults", "/checks"}) {
        const auto files = json_files(assets + folder);
        paths.insert(paths.end(), files.begin(), files.end());
    }
    std::uint64_t sum = seed_of("workshop");
    for (const std::string& path : paths) {
        sum = seed_of(file_text(path), sum);
    }
    return sum;
}

} // namespace

bool Repair::restores(std::string_view part, std::string_view parameter) const
{
    return std::ranges::any_of(mending_of(procedure), [&](const sim::Mend& mend) {
        return mend.how == sim::Mend::How::restore && mend.part == part &&
               mend.parameter == parameter;
    });
}

bool Repair::undoes(const sim::Fault& fault) const
{
    return std::ranges::all_of(fault.changes, [&](const sim::FaultChange& change) {
        return restores(change.part, change.parameter);
    });
}

const Caution* Workshop::find_caution(std::string_view id) const
{
    return sim::find_by_id(cautions, id);
}
const Beginning* Workshop::find_beginning(std::string_view id) const
{
    return sim::find_by_id(beginnings, id);
}
const Check* Workshop::find_check(std::string_view id) const
{
    return sim::find_by_id(checks, id);
}
const Repair* Workshop::find_repair(std::string_view id) const
{
    return sim::find_by_id(repairs, id);
}

std::shared_ptr<const Workshop> load_workshop(std::shared_ptr<const sim::Rig> rig,
                                              const std::string& assets)
{
    auto workshop = std::make_shared<Workshop>();
    workshop->rig = std::move(rig);
    workshop->instruments =
        std::make_shared<const Instruments>(load_instruments(assets + "/instruments"));
    const Vocabulary vocabulary(workshop->rig, *workshop->instruments);
    workshop->cautions = load_cautions(assets + "/cautions");
    const std::string beginnings = assets + "/beginnings/" + workshop->rig->id + ".json";
    workshop->beginnings = load_beginnings(beginnings, vocabulary);
    if (workshop->beginnings.empty()) {
        throw sim::AssetError(beginnings, "/beginnings", "wants one beginning at least");
    }
    workshop->checks = load_checks(assets + "/checks", vocabulary, *workshop);
    workshop->repairs = load_repairs(assets + "/repairs", vocabulary, *workshop);
    workshop->sum = sum_of_files(*workshop->rig, assets);
    return workshop;
}

std::vector<const Check*> checks_of(const Workshop& workshop, const std::vector<std::string>& ids)
{
    const std::vector<std::string> known = sim::ids_of(workshop.checks);
    std::vector<const Check*> checks;
    for (const std::string& id : ids.empty() ? known : ids) {
        checks.push_back(workshop.find_check(id));
        if (checks.back() == nullptr) {
            throw sim::RequestError("there is no check " + sim::in_quotes(id) + " for the rig " +
                                    sim::in_quotes(workshop.rig->id) +
                                    sim::choices_hint(id, known));
        }
    }
    return checks;
}

sim::Simulator with_faults(const Workshop& workshop, const sim::Weather& weather,
                           std::span<const sim::SetFault> faults,
                           std::optional<sim::Tolerance> tolerance)
{
    sim::Simulator machine(workshop.rig, weather, tolerance);
    for (const sim::SetFault& fault : faults) {
        machine.post(fault);
    }
    return machine;
}

void bring_to(const Workshop& workshop, std::string_view beginning, sim::Simulator& machine)
{
    const Beginning& wanted = *workshop.find_beginning(beginning);
    if (!wanted.after.empty()) {
        bring_to(workshop, wanted.after, machine);
    }
    ProcedureRun(wanted.procedure).finish(machine);
}

} // namespace shop

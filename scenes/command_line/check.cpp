#include "scenes/command_line/check.hpp"

#include "scenes/command_line/table.hpp"
#include "scenes/shop/observation.hpp"
#include "scenes/shop/procedure_run.hpp"
#include "scenes/shop/workshop.hpp"

namespace scenes {

std::string check_text(const CheckRequest& request)
{
    const auto rig = std::make_shared<const sim::Rig>(sim::load_rig(request.rig));
    const auto workshop = shop::load_workshop(rig, sim::assets_folder());
    const auto checks = checks_of(*workshop, request.checks);
    const sim::Simulator fresh =
        with_faults(*workshop, {.temperature = sim::Temperature{request.ambient}}, request.faults);
    std::vector<std::vector<std::string>> rows{{"check", "reading", "shows", "sound", ""}};
    for (const shop::Check* check : checks) {
        sim::Simulator machine = fresh;
        bring_to(*workshop, check->begins, machine);
        shop::ProcedureRun run(check->procedure);
        run.finish(machine);
        for (std::size_t i = 0; i < run.values().size(); ++i) {
            const shop::Reading& reading = check->procedure.readings[i];
            rows.push_back({check->id, reading.id,
                            observation_text(reading, observe_exactly(reading, run.values()[i])),
                            sound_text(reading), reading.is_sound(run.values()[i]) ? "" : "!"});
        }
    }
    return aligned(rows);
}

} // namespace scenes

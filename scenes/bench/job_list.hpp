#pragma once

#include "scenes/present/order_words.hpp"
#include "scenes/shop/workshop.hpp"
#include "scenes/ui/list.hpp"

#include <array>

// Lists of a workshop's checks and repairs.

namespace scenes {

/// Whether a job's title, or what it is about, has what is searched for, in the chosen language.
bool has_words(const shop::Job& job, const std::string& search);

/// Minutes, and parts where it takes any.
std::string cost_text(const shop::Job& job);

struct JobListSpec {
    std::string_view name;
    std::array<float, 3> shares{}; ///< of the width: title, state, cost; 0 for a line of its own
    float height = 0.0F;
};

/// Jobs with their titles, what `state` says of each, and what they cost.
template <class Job, class State>
ListAction job_list(Interface& ui, const std::vector<const Job*>& jobs, const JobListSpec& spec,
                    State state, std::size_t& chosen)
{
    const std::array columns{ListColumn{spec.name, spec.shares[0], false},
                             ListColumn{"", spec.shares[1], false},
                             ListColumn{"", spec.shares[2], true}};
    const auto cell = [&](std::size_t row, std::size_t column) {
        const Job& job = *jobs[row];
        return column == 0   ? std::string(translated(job.title))
               : column == 1 ? state(job)
                             : cost_text(job);
    };
    return list(ui,
                {.name = spec.name,
                 .columns = columns,
                 .row_count = jobs.size(),
                 .cell = cell,
                 .height = spec.height,
                 .has_head = false,
                 .empty_text = words::no_such_work},
                chosen);
}

} // namespace scenes

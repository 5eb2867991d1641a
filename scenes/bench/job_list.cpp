#include "scenes/bench/job_list.hpp"

#include "scenes/present/fault_list.hpp"
#include "scenes/present/job_sheet.hpp"
#include "scenes/view/number.hpp"

namespace scenes {

bool has_words(const shop::Job& job, const std::string& search)
{
    const std::string text = folded(translated(job.title)) + " " + folded(translated(job.about));
    return text.find(folded(search)) != std::string::npos;
}

std::string cost_text(const shop::Job& job)
{
    const std::string minutes = fixed_text(job.minutes, 0);
    return job.money > 0.0 ? filled(words::minutes_and_parts, {minutes, money_text(job.money)})
                           : filled(words::some_minutes, {minutes});
}

} // namespace scenes

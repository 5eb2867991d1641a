#include "scenes/present/job_sheet.hpp"

#include "scenes/present/order_words.hpp"
#include "scenes/present/reading_words.hpp"
#include "scenes/view/number.hpp"

#include <cmath>

namespace scenes {
namespace {

/// The guess at a reading that was made for the check at a line: the last one before it.
const shop::Predict* guess_before(const std::vector<shop::JobLine>& lines, std::size_t at,
                                  const std::string& check, const std::string& reading)
{
    for (std::size_t i = at; i-- > 0;) {
        const auto* guess = std::get_if<shop::Predict>(&lines[i].action);
        if (guess != nullptr && guess->check == check && guess->reading == reading) {
            return guess;
        }
        const auto* done = std::get_if<shop::DoCheck>(&lines[i].action);
        if (done != nullptr && done->check == check) {
            return nullptr; // it was made for that time
        }
    }
    return nullptr;
}

/// Writes lines of an attempt down, one after the other.
class Scribe {
public:
    explicit Scribe(const shop::Attempt& attempt)
        : lines_(attempt.lines()), shop_(*attempt.order().workshop)
    {
        for (at_ = 0; at_ < lines_.size(); ++at_) {
            std::visit([this](const auto& what) { write(what); }, lines_[at_].action);
        }
    }

    std::vector<SheetEntry> entries;

private:
    void work(std::string title)
    {
        const shop::JobLine& line = lines_[at_];
        entries.push_back({++count_,
                           std::move(title),
                           {},
                           fixed_text(line.minutes, 0),
                           line.money > 0.0 ? money_text(line.money) : ""});
    }

    void note(std::string title) { entries.push_back({0, std::move(title), {}, "", ""}); }

    /// Whether the line after this one says the same kind of thing anew.
    template <class What>
    [[nodiscard]] bool is_outdone() const
    {
        return at_ + 1 < lines_.size() && std::holds_alternative<What>(lines_[at_ + 1].action);
    }

    void write(const shop::Predict& /*guess*/)
    {
        // It stands beside what was read.
    }

    void write(const shop::DoCheck& action)
    {
        const shop::Check& check = *shop_.find_check(action.check);
        work(std::string(translated(check.title)));
        const auto& seen = lines_[at_].observations;
        for (std::size_t i = 0; i < seen.size(); ++i) {
            const shop::Reading& reading = check.procedure.readings[i];
            SheetReading row{std::string(translated(reading.title)), shown_text(reading, seen[i]),
                             sound_words(reading), ""};
            if (const auto* guess = guess_before(lines_, at_, check.id, reading.id)) {
                const bool is_right = place_of_reading(reading, seen[i]) == guess->guess;
                row.expected = filled(words::sheet_expected,
                                      {guess_text(reading, guess->guess),
                                       is_right ? words::as_expected : words::not_as_expected});
            }
            entries.back().readings.push_back(std::move(row));
        }
    }

    void write(const shop::DoRepair& action)
    {
        work(filled(words::sheet_repair, {translated(shop_.find_repair(action.repair)->title)}));
    }

    void write(const shop::Suspect& action)
    {
        if (!is_outdone<shop::Suspect>()) {
            note(action.causes.empty()
                     ? std::string(words::sheet_no_suspects)
                     : filled(words::sheet_suspects, {fault_titles(*shop_.rig, action.causes)}));
        }
    }

    void write(const shop::Finding& action)
    {
        if (!is_outdone<shop::Finding>()) {
            note(filled(words::sheet_finding, {fault_titles(*shop_.rig, action.causes)}));
            if (!action.note.empty()) {
                entries.back().readings.push_back({action.note, "", "", ""});
            }
        }
    }

    void write(const shop::HandIn& /*action*/) { note(std::string(words::sheet_handed_in)); }

    const std::vector<shop::JobLine>& lines_;
    const shop::Workshop& shop_;
    std::size_t at_ = 0;
    int count_ = 0;
};

} // namespace

std::vector<SheetEntry> job_sheet(const shop::Attempt& attempt)
{
    return Scribe(attempt).entries;
}

std::string money_text(double amount)
{
    const bool is_whole = std::abs(amount - std::round(amount)) < 0.005;
    return fixed_text(amount, is_whole ? 0 : 2);
}

std::string fault_titles(const sim::Rig& rig, const std::vector<std::string>& ids)
{
    std::string text;
    for (const std::string& id : ids) {
        if (const sim::Fault* fault = rig.find_fault(id)) {
            text += (text.empty() ? "" : ", ") + std::string(translated(fault->title));
        }
    }
    return text;
}

double price_of(const shop::Order& order, double minutes, double parts)
{
    return minutes / 60.0 * order.labour + parts;
}

} // namespace scenes

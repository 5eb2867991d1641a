#pragma once

#include "scenes/shop/order.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

// A work order while an instructor makes it.

namespace scenes {

/// What has been put down of an order so far; anything of it may still be empty or wrong.
struct DraftValues {
    std::string rig;
    std::string title;
    int level = 1;
    std::string customer;
    std::string complaint;
    double temperature = 293.15; ///< K
    double pressure = 101325.0;  ///< Pa, absolute
    std::string history = "[]";  ///< steps, as JSON text
    std::vector<std::string> checks;
    std::vector<std::string> repairs;
    double minutes = 60.0;
    double money = 60.0;
    double labour = 90.0;
    double worth = 300.0;
    std::vector<std::string> solved;
    std::vector<shop::Order::Ask> predictions;
    shop::Order::Weights weights;
    std::uint64_t seed = 1;
    shop::Order::Answer answer;
    std::vector<std::string> accepted; ///< warnings of a trial that are as the instructor means it

    bool operator==(const DraftValues&) const = default;
};

/// An order for a machine with nothing put down yet: all checks and repairs are permitted.
DraftValues empty_draft(const shop::Workshop& workshop);
/// An order there is, to be changed or to make another of.
DraftValues draft_of(const shop::Order& order);
/// An order for a machine as it stands on the bench: what is wrong with it becomes what is hidden.
DraftValues draft_of(const shop::Workshop& workshop, const sim::Simulator& machine);

/// The order that a draft comes to.
///
/// throws:  AssetError when its history is no list of steps; RequestError for a rig there is not
shop::Order order_of(const DraftValues& values, shop::Workshops& workshops);

/// Whether an id is in a list, and putting it in or taking it out; lists stay in the order of
/// `all`.
bool has_id(const std::vector<std::string>& ids, std::string_view id);
void set_id(std::vector<std::string>& ids, const std::vector<std::string>& all,
            const std::string& id, bool is_in);

/// Takes out of a draft what no longer fits the rest of it: checks to pass that are not permitted,
/// predictions before such, faults that count as the cause and are hidden themselves.
void tidy(DraftValues& values);

/// A draft that is edited step by step, each of which can be undone and done again.
class OrderDraft {
public:
    /// Whether all of it is in a file, or can be had from where it came.
    explicit OrderDraft(DraftValues values, bool is_saved = true) : now_(std::move(values))
    {
        if (is_saved) {
            mark_saved();
        }
    }

    [[nodiscard]] const DraftValues& now() const { return now_; }
    /// Takes other values over. Changes in a row with the same name, such as letters typed into one
    /// field, are undone together; a change without a name stands alone.
    void change(DraftValues next, std::string_view name = {});
    /// The next change is a step of its own, whatever its name.
    void end_step() { name_.clear(); }

    [[nodiscard]] bool can_undo() const { return !past_.empty(); }
    [[nodiscard]] bool can_redo() const { return !undone_.empty(); }
    void undo();
    void redo();

    /// Whether everything put down is in a file.
    [[nodiscard]] bool is_saved() const { return now_ == saved_; }
    void mark_saved() { saved_ = now_; }

private:
    DraftValues now_;
    std::optional<DraftValues> saved_;
    std::vector<DraftValues> past_;
    std::vector<DraftValues> undone_;
    std::string name_; ///< of the last change; empty when the next is a step of its own
};

} // namespace scenes

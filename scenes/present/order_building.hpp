#pragma once

#include "scenes/present/draft_keeper.hpp"
#include "scenes/present/order_saving.hpp"
#include "scenes/present/order_trial.hpp"

namespace scenes {

/// An instructor's work on an order: the draft, trying it out beside the window, and saving it.
class OrderBuilding {
public:
    explicit OrderBuilding(shop::Workshops& workshops) : workshops_(workshops) {}

    [[nodiscard]] bool has_draft() const { return draft_.has_value(); }
    /// Begins with a draft; `path` is the person's own file that it came from, empty for a new one.
    void begin(DraftValues values, std::string path = {});
    /// Goes on with a draft as it was left, and gives how it stands now, to be left again.
    void go_on(KeptDraft draft);
    [[nodiscard]] KeptDraft kept() const { return {draft_->now(), path_, draft_->is_saved()}; }
    /// valid:   has_draft()
    [[nodiscard]] OrderDraft& draft() { return *draft_; }
    [[nodiscard]] const OrderDraft& draft() const { return *draft_; }
    /// The machine and workshop of the draft.
    [[nodiscard]] const shop::Workshop& workshop() const
    {
        return *workshops_.of(draft_->now().rig);
    }

    /// Tries the draft out as it stands; a trial under way is broken off.
    ///
    /// throws:  AssetError when the draft is no order yet
    void try_out();
    void break_off();
    /// The trial under way; null when there is none.
    [[nodiscard]] const OrderTrial* under_way() const;
    /// What the last finished trial said, and of which order; null before the first.
    [[nodiscard]] std::shared_ptr<const shop::Review> review() const { return review_; }
    [[nodiscard]] const shop::Order* tried_order() const { return tried_order_.get(); }
    /// Why the last trial came to nothing; empty while nothing is wrong.
    [[nodiscard]] const std::string& trouble() const { return trouble_; }
    /// Whether that review is of the draft as it stands.
    [[nodiscard]] bool is_tried() const;
    /// Takes what a trial under way has come to; to be called every frame.
    void tend();

    /// The warnings that have not been taken as meant.
    [[nodiscard]] std::vector<std::string> open_warnings() const;
    /// Takes all warnings as they are, the look-alikes among them as right answers, and tries the
    /// order out again if that changes it.
    void accept_warnings();

    /// Whether it may be saved: tried out as it stands, nothing against it, warnings accepted.
    [[nodiscard]] bool can_save() const;
    [[nodiscard]] OrderName name(const std::string& folder) const;
    /// Saves it under an id and goes on with that file.
    ///
    /// valid:   can_save()
    /// throws:  RequestError when it cannot be written
    void save(const std::string& folder, const std::string& id);
    /// The order as it stands.
    ///
    /// throws:  AssetError when the draft is no order yet
    [[nodiscard]] std::shared_ptr<const shop::Order> order() const;

private:
    shop::Workshops& workshops_;
    std::optional<OrderDraft> draft_;
    std::string path_;
    std::unique_ptr<OrderTrial> trial_;
    DraftValues on_trial_;                                ///< what the trial under way is of
    std::vector<std::unique_ptr<OrderTrial>> broken_off_; ///< until they stand still
    std::shared_ptr<const shop::Review> review_;
    std::shared_ptr<const shop::Order> tried_order_;
    DraftValues tried_; ///< what the review is of
    std::string trouble_;
};

} // namespace scenes

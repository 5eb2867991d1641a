#include "scenes/present/order_building.hpp"

#include "scenes/command_line/long_work.hpp"
#include "scenes/shop/table_store.hpp"
#include "sim/error.hpp"

#include <filesystem>
#include <utility>

namespace scenes {
namespace {

/// What decides how a trial comes out.
DraftValues without_accepted(DraftValues values)
{
    values.accepted.clear();
    return values;
}

} // namespace

void OrderBuilding::begin(DraftValues values, std::string path)
{
    go_on({.values = std::move(values), .path = std::move(path)});
}

void OrderBuilding::go_on(KeptDraft draft)
{
    break_off();
    std::error_code ignored;
    // A file that is gone by now holds nothing.
    const bool is_there = draft.path.empty() || std::filesystem::exists(draft.path, ignored);
    draft_.emplace(std::move(draft.values), draft.is_saved && is_there);
    path_ = std::move(draft.path);
    review_.reset();
    tried_order_.reset();
    trouble_.clear();
}

std::shared_ptr<const shop::Order> OrderBuilding::order() const
{
    shop::Order order = order_of(draft_->now(), workshops_);
    order.id = id_of_title(order.title);
    return shop::parse_order(shop::write_order(order), order.id, workshops_);
}

void OrderBuilding::try_out()
{
    break_off();
    trouble_.clear();
    auto order = this->order();
    const std::string store = shop::table_store(*order);
    on_trial_ = without_accepted(draft_->now());
    trial_ = std::make_unique<OrderTrial>(std::move(order), store, usual_threads());
}

void OrderBuilding::break_off()
{
    if (trial_) {
        trial_->cancel();
        broken_off_.push_back(std::move(trial_));
    }
}

const OrderTrial* OrderBuilding::under_way() const
{
    return trial_.get();
}

void OrderBuilding::tend()
{
    std::erase_if(broken_off_, [](const std::unique_ptr<OrderTrial>& trial) {
        return trial->stage() == OrderTrial::Stage::over;
    });
    if (trial_ && trial_->stage() == OrderTrial::Stage::over) {
        trouble_ = trial_->trouble();
        if (auto review = trial_->review()) {
            review_ = std::move(review);
            tried_order_ = trial_->order();
            tried_ = std::move(on_trial_);
        }
        trial_.reset();
    }
}

bool OrderBuilding::is_tried() const
{
    return review_ != nullptr && without_accepted(draft_->now()) == tried_;
}

std::vector<std::string> OrderBuilding::open_warnings() const
{
    std::vector<std::string> open;
    if (review_) {
        for (const std::string& warning : review_->warnings) {
            if (!has_id(draft_->now().accepted, warning)) {
                open.push_back(warning);
            }
        }
    }
    return open;
}

void OrderBuilding::accept_warnings()
{
    DraftValues next = draft_->now();
    for (std::string& warning : open_warnings()) {
        next.accepted.push_back(std::move(warning));
    }
    if (review_) {
        for (const std::string& id : review_->unmeant) {
            if (workshop().rig->find_fault(id) != nullptr && !has_id(next.answer.look_alikes, id)) {
                next.answer.look_alikes.push_back(id);
            }
        }
    }
    const bool was_tried = is_tried();
    draft_->change(std::move(next));
    if (was_tried && !is_tried()) {
        try_out();
    }
}

bool OrderBuilding::can_save() const
{
    return is_tried() && review_->is_good() && open_warnings().empty() &&
           still_missing(draft_->now()).empty();
}

OrderName OrderBuilding::name(const std::string& folder) const
{
    return name_of(draft_->now(), folder, path_);
}

void OrderBuilding::save(const std::string& folder, const std::string& id)
{
    if (folder.empty()) {
        throw sim::RequestError("there is no folder for work orders of one's own here");
    }
    shop::Order order = order_of(draft_->now(), workshops_);
    order.id = id;
    const std::string path = (std::filesystem::path(folder) / (id + ".json")).string();
    save_order(order, path, workshops_);
    path_ = path;
    draft_->mark_saved();
}

} // namespace scenes

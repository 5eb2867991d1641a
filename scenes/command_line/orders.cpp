#include "scenes/command_line/orders.hpp"

#include "scenes/command_line/long_work.hpp"
#include "scenes/command_line/table.hpp"
#include "scenes/present/phrase.hpp"
#include "scenes/shop/action_json.hpp"
#include "scenes/shop/asset_files.hpp"
#include "scenes/shop/class_sheet.hpp"
#include "scenes/shop/order_files.hpp"
#include "scenes/shop/plain_number.hpp"
#include "scenes/shop/record.hpp"
#include "scenes/shop/review.hpp"
#include "scenes/shop/worksheet.hpp"
#include "sim/error.hpp"
#include "sim/file_write.hpp"
#include "sim/printable.hpp"
#include "sim/rig.hpp"

#include <filesystem>
#include <map>

namespace scenes {
namespace {

/// The table of an order; nothing when the person interrupts.
std::optional<shop::Table> table_of(const shop::Order& order, std::ostream& progress)
{
    LongWork work(progress, "faults simulated");
    return shop::simulate_table(
        order, usual_threads(), shop::table_store(order),
        [&](std::size_t done, std::size_t all) { work.progress(done, all); }, work.is_cancelled());
}

std::string sheet_text(const shop::Order& order, const std::vector<shop::JobLine>& lines)
{
    std::vector<std::vector<std::string>> rows{{"minutes", "parts", "done", "read"}};
    for (const shop::JobLine& line : lines) {
        rows.push_back({shop::plain_number(line.minutes), shop::plain_number(line.money),
                        done_text(order, line), read_text(order, line)});
    }
    return aligned(rows);
}

std::string marks_text(const shop::Marks& marks)
{
    std::vector<std::vector<std::string>> rows{{"mark", "got", "of", "why"}};
    for (const shop::Mark& mark : marks.marks) {
        rows.push_back({mark.id, shop::plain_number(mark.got, 1), shop::plain_number(mark.of),
                        text_of(mark.why)});
    }
    rows.push_back(
        {"in all", shop::plain_number(marks.got(), 1), shop::plain_number(marks.of()), ""});
    return aligned(rows);
}

bool check_order(const std::shared_ptr<const shop::Order>& order, std::ostream& out,
                 std::ostream& progress)
{
    const auto table = table_of(*order, progress);
    if (!table) {
        return false;
    }
    const shop::Review review = shop::review(order, *table);
    out << "Good work on " << order->title << ", " << shop::plain_number(review.good.minutes)
        << " minutes of " << shop::plain_number(order->minutes) << ", parts for "
        << shop::plain_number(review.good.money) << " of " << shop::plain_number(order->money)
        << ":\n"
        << sheet_text(*order, review.good.lines) << '\n'
        << marks_text(review.marks) << '\n';
    for (const std::string& warning : review.warnings) {
        out << "Note: " << warning << '\n';
    }
    for (const std::string& refusal : review.refusals) {
        out << "Cannot be given: " << refusal << '\n';
    }
    if (review.is_good()) {
        out << "The order can be given.\n";
    }
    return review.is_good();
}

/// The record that a played order is kept in: one gone on with, replayed as far as it goes, or a
/// new one.
shop::RecordKeeper keeper_for(const OrderRequest& request, shop::Attempt& attempt)
{
    if (!std::filesystem::exists(*request.record)) {
        return shop::RecordKeeper::begin(*request.record,
                                         {attempt.order().id, attempt.order().sum, attempt.seed(),
                                          request.student.value_or("")});
    }
    shop::Record record;
    auto keeper = shop::RecordKeeper::resume(*request.record, record);
    shop::replay(record, *request.record, attempt);
    return keeper;
}

/// Refuses actions that are not those a record holds already.
void require_same(const OrderRequest& request, const std::vector<shop::Action>& actions,
                  const std::vector<shop::JobLine>& done)
{
    for (std::size_t i = 0; i < done.size(); ++i) {
        if (i >= actions.size() || !(actions[i] == done[i].action)) {
            throw sim::RequestError(*request.record + " line " + std::to_string(i + 2) +
                                    ": holds another action than " + *request.actions +
                                    "; wanted is a new record, or the actions it was begun with");
        }
    }
}

void play_actions(const OrderRequest& request, shop::Attempt& attempt)
{
    const auto actions = shop::load_actions(*request.actions);
    std::optional<shop::RecordKeeper> keeper;
    if (request.record) {
        keeper = keeper_for(request, attempt);
        require_same(request, actions, attempt.lines());
    }
    attempt.finish();
    for (std::size_t i = attempt.lines().size(); i < actions.size(); ++i) {
        const std::string reason = attempt.reason_against(actions[i]);
        if (!reason.empty()) {
            throw sim::RequestError(*request.actions + " at /actions/" + std::to_string(i) + ": " +
                                    reason);
        }
        attempt.perform(actions[i]);
        if (keeper) {
            keeper->append(attempt.lines().back());
        }
    }
}

bool play_order(const OrderRequest& request, const std::shared_ptr<const shop::Order>& order,
                std::ostream& out, std::ostream& progress)
{
    if (!request.actions) {
        throw sim::RequestError("order play wants --actions FILE");
    }
    shop::Attempt attempt(order, order->seed);
    play_actions(request, attempt);
    out << sheet_text(*order, attempt.lines()) << '\n';
    if (!attempt.is_handed_in()) {
        out << "Not handed in, so not marked.\n";
        return false;
    }
    const auto table = table_of(*order, progress);
    if (!table) {
        return false;
    }
    out << marks_text(shop::mark(attempt, *table, shop::good_path(order, *table)));
    return true;
}

/// Orders, tables and good paths, each worked out once for a whole class.
class Markers {
public:
    explicit Markers(std::ostream& progress) : workshops_(sim::assets_folder()), progress_(progress)
    {
    }

    /// Nothing when the person interrupts.
    std::optional<shop::Marked> mark(const std::string& path)
    {
        const shop::Record record = shop::load_record(path);
        auto& known = known_[record.head.order];
        if (known.order == nullptr) {
            known.order = shop::load_order(shop::order_file(record.head.order), workshops_);
        }
        shop::require_own(record, path, *known.order);
        shop::Attempt attempt(known.order, record.head.seed);
        shop::replay(record, path, attempt);
        if (!attempt.is_handed_in()) {
            throw sim::RequestError(path + ": has not been handed in yet");
        }
        if (!known.table) {
            known.table = table_of(*known.order, progress_);
            if (!known.table) {
                return std::nullopt;
            }
            known.good = shop::good_path(known.order, *known.table);
            known.good_course = course_of(*known.order, *known.table, known.good.lines);
        }
        return shop::Marked{record.head.student,
                            path,
                            known.order,
                            course_of(*known.order, *known.table, attempt.lines()),
                            shop::mark(attempt, *known.table, known.good),
                            known.good_course};
    }

private:
    struct Known {
        std::shared_ptr<const shop::Order> order;
        std::optional<shop::Table> table;
        shop::Path good;
        shop::Course good_course;
    };
    shop::Workshops workshops_;
    std::ostream& progress_;
    std::map<std::string, Known> known_;
};

void write_out(const std::optional<std::string>& path, const std::string& text, std::ostream& out)
{
    if (path) {
        sim::atomic_write(*path, text);
    } else {
        out << text;
    }
}

/// The worksheet needs nothing simulated; the key does.
bool print_order(const OrderRequest& request, const std::shared_ptr<const shop::Order>& order,
                 std::ostream& out, std::ostream& progress)
{
    choose_language(request.language);
    write_out(request.out, shop::worksheet_html(*order), out);
    if (request.key) {
        const auto table = table_of(*order, progress);
        if (!table) {
            return false;
        }
        sim::atomic_write(*request.key, shop::answer_key_html(*order, shop::review(order, *table)));
    }
    return true;
}

} // namespace

bool do_order(const OrderRequest& request, std::ostream& out, std::ostream& progress)
{
    shop::Workshops workshops(sim::assets_folder());
    const std::string path = shop::order_file(request.file);
    if (request.what == OrderRequest::What::seal) {
        write_out(request.out, shop::sealed_order(shop::file_text(path), path, workshops), out);
        return true;
    }
    const auto order = shop::load_order(path, workshops);
    if (request.what == OrderRequest::What::worksheet) {
        return print_order(request, order, out, progress);
    }
    return request.what == OrderRequest::What::check ? check_order(order, out, progress)
                                                     : play_order(request, order, out, progress);
}

bool mark_records(const MarkRequest& request, std::ostream& out, std::ostream& progress)
{
    Markers markers(progress);
    std::vector<shop::Marked> all;
    bool is_all_well = true;
    for (const std::string& path : request.records) {
        try {
            auto marked = markers.mark(path);
            if (!marked) {
                return false;
            }
            out << path << ": " << (marked->student.empty() ? "(no name)" : marked->student) << ", "
                << marked->order->title << '\n'
                << marks_text(marked->marks) << '\n';
            all.push_back(std::move(*marked));
        } catch (const sim::NumericsError&) {
            throw;
        } catch (const std::runtime_error& error) {
            progress << "standpipe: refused: " << sim::printable(error.what()) << '\n'
                     << std::flush;
            is_all_well = false;
        }
    }
    if (request.csv) {
        sim::atomic_write(*request.csv, shop::class_csv(all));
    }
    if (request.html) {
        sim::atomic_write(*request.html, shop::class_html(all));
    }
    if (request.xapi) {
        sim::atomic_write(*request.xapi, shop::xapi_statements(all));
    }
    return is_all_well;
}

} // namespace scenes

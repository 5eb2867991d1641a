#pragma once

#include "scenes/shop/workshop.hpp"

namespace shop {

/// What is best done for the customer.
enum class Advice { clean, tighten, adjust, replace, not_worth };

/// The words for kinds of advice in files, in the order of the enumerators.
std::span<const std::string> advice_words();

/// What an instructor sets: a machine with something wrong, a complaint, what may be done, and how
/// it is marked.
struct Order {
    struct Ask {
        std::string check;
        std::string reading;
        bool operator==(const Ask&) const = default;
    };
    /// How much each thing counts; what they add up to is the whole mark.
    struct Weights {
        double solved = 30.0;
        double cause = 20.0;
        double minutes = 10.0;
        double money = 10.0;
        double order = 10.0;
        double verified = 10.0;
        double harm = 5.0;
        double cautions = 5.0;

        [[nodiscard]] double sum() const;
        bool operator==(const Weights&) const = default;
    };
    /// What the student is to find out.
    struct Answer {
        std::vector<sim::SetFault> faults;
        std::vector<std::string> causes;      ///< other faults that count as the same cause
        std::vector<std::string> look_alikes; ///< faults that the checks need not tell from it
        Advice advice = Advice::clean;
        std::string finding;
        bool operator==(const Answer&) const = default;
    };
    std::string id;
    std::string title;
    int level = 1;
    std::string customer;
    std::string complaint;
    sim::Weather weather;
    Procedure history; ///< done before the student comes
    std::string history_text;
    std::vector<std::string> checks; ///< that may be done
    std::vector<std::string> repairs;
    double minutes = 0.0;            ///< budget of bench minutes
    double money = 0.0;              ///< and of parts
    double labour = 0.0;             ///< price of an hour
    double worth = 0.0;              ///< of the machine, when it runs
    std::vector<std::string> solved; ///< checks that must find it sound afterwards
    std::vector<Ask> predictions;    ///< to be made before a check
    Weights weights;
    std::uint64_t seed = 1;
    Answer answer;
    std::uint64_t sum = 0; ///< checksum of the file
    std::shared_ptr<const Workshop> workshop;

    [[nodiscard]] bool allows_check(std::string_view check) const;
    [[nodiscard]] bool allows_repair(std::string_view repair) const;
    /// Price of work: its parts, and its minutes at the order's labour.
    [[nodiscard]] double price(const Job& job) const
    {
        return job.money + job.minutes / 60.0 * labour;
    }
    /// Whether naming a fault as the cause is right.
    [[nodiscard]] bool is_cause(std::string_view fault) const;
};

/// The workshops of machines, each loaded once.
class Workshops {
public:
    /// With the assets of a folder.
    explicit Workshops(std::string assets);
    /// throws:  RequestError when there is no such rig; AssetError when a file is wrong
    std::shared_ptr<const Workshop> of(const std::string& rig);
    [[nodiscard]] const std::string& assets() const { return assets_; }

private:
    std::string assets_;
    std::map<std::string, std::shared_ptr<const Workshop>> known_;
};

/// Reads a work order, sealed or not.
///
/// throws:  AssetError naming file, pointer, what is wrong and what is allowed; what is sealed is
///          not told
std::shared_ptr<const Order> load_order(const std::string& path, Workshops& workshops);
/// How much of an order must be put down: all that a student needs, or anything yet.
enum class Wholeness { whole, begun };
/// The same from text; `name` stands for the file in messages.
std::shared_ptr<const Order> parse_order(const std::string& text, const std::string& name,
                                         Workshops& workshops,
                                         Wholeness wholeness = Wholeness::whole);

/// An order's file with its answer encoded, so that it is not read by accident; a sealed one as it
/// is.
///
/// throws:  AssetError when the order is wrong
std::string sealed_order(const std::string& text, const std::string& name, Workshops& workshops);

/// The order as JSON text that `parse_order` reads back, its answer sealed.
std::string write_order(const Order& order);

} // namespace shop

#include "scenes/shop/record.hpp"

#include "scenes/shop/action_json.hpp"
#include "scenes/shop/record_text.hpp"
#include "sim/error.hpp"
#include "sim/printable.hpp"

#include <array>
#include <charconv>
#include <fstream>
#include <limits>
#include <sstream>
#include <utility>

// Reading records; record_keeper.cpp writes them. A record is a text file of one JSON object a
// line. Each ends in a checksum that all lines before it have a part in: what was changed, left out
// or put in afterwards is seen. The key is in the sources: it stops tampering by hand, not a
// programmer.

namespace shop {

std::string hex_of(std::uint64_t number)
{
    std::array<char, 16> digits{};
    const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), number, 16);
    return {digits.data(), end.ptr};
}

std::uint64_t chained(std::string_view body, std::uint64_t chain)
{
    return seed_of(body, chain ^ 0x5374616e64706970ULL);
}

namespace {

constexpr std::string_view sum_key = ",\"sum\":\"";

std::uint64_t read_hex(const sim::JsonNode& node)
{
    const std::string text = node.text();
    std::uint64_t number = 0;
    const auto end = std::from_chars(text.data(), text.data() + text.size(), number, 16);
    if (end.ec != std::errc{} || end.ptr != text.data() + text.size()) {
        throw node.wrong("must be a number in hexadecimal digits");
    }
    return number;
}

RecordHead read_head(const sim::JsonNode& node)
{
    node.allow_keys({"record", "order", "order_sum", "seed", "student", "sum"});
    if (node.at("record").number() != 1.0) {
        throw node.at("record").wrong("unknown format; allowed: 1");
    }
    return {node.at("order").text(), read_hex(node.at("order_sum")), read_hex(node.at("seed")),
            node.at("student").text()};
}

RecordLine read_line(const sim::JsonNode& node, std::size_t count)
{
    node.allow_keys({"n", "action", "read", "sum"});
    if (node.at("n").number() != static_cast<double>(count)) {
        throw node.at("n").wrong("must be " + std::to_string(count));
    }
    RecordLine line{read_action(node.at("action")), {}};
    for (const sim::JsonNode& item : node.at("read").items()) {
        item.allow_keys({"number", "word"});
        Observation seen;
        if (item.has("number")) {
            seen.number = item.at("number").number();
        } else if (item.has("word")) {
            seen.word = static_cast<std::size_t>(item.at("word").number_between(0.0, 1000.0));
        }
        line.observations.push_back(seen);
    }
    return line;
}

std::string whole_file(const std::string& path)
{
    std::ifstream file(path, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    if (!file || !text) {
        throw sim::RequestError("cannot read " + sim::in_quotes(path));
    }
    return text.str();
}

/// Reads one whole line into a record.
void take_line(const std::string& text, const std::string& name, Record& record, bool is_first)
{
    const sim::JsonNode node = sim::JsonNode::parse(text, name);
    const std::size_t end = text.rfind(sum_key);
    if (end == std::string::npos || !node.has("sum")) {
        throw node.wrong("has no checksum at its end");
    }
    record.chain = chained(text.substr(0, end) + "}", record.chain);
    if (read_hex(node.at("sum")) != record.chain) {
        throw node.at("sum").wrong("does not fit: this line or one before it was changed, added or "
                                   "taken out");
    }
    if (is_first) {
        record.head = read_head(node);
    } else {
        record.lines.push_back(read_line(node, record.lines.size() + 1));
    }
}

} // namespace

Record load_record(const std::string& path)
{
    const std::string text = whole_file(path);
    Record record;
    std::size_t number = 0;
    for (std::size_t from = 0; from < text.size();) {
        const std::size_t end = text.find('\n', from);
        if (end == std::string::npos) {
            break; // a crash cut it short
        }
        ++number;
        take_line(text.substr(from, end - from), path + " line " + std::to_string(number), record,
                  number == 1);
        from = record.whole_bytes = end + 1;
    }
    if (number == 0) {
        throw sim::AssetError(path, "", "is no record: it has no whole line");
    }
    return record;
}

void require_own(const Record& record, const std::string& name, const Order& order)
{
    if (record.head.order != order.id) {
        throw sim::RequestError(name + ": is a record of the order " +
                                sim::in_quotes(record.head.order) + ", not of " +
                                sim::in_quotes(order.id));
    }
    if (record.head.sum != order.sum) {
        throw sim::RequestError(name + ": was made with another state of the order " +
                                sim::in_quotes(order.id) + "; wanted is the file it was made with");
    }
}

Replay::Replay(Record record, std::string name, const Order& order)
    : record_(std::move(record)), name_(std::move(name))
{
    require_own(record_, name_, order);
}

std::string Replay::place() const
{
    return name_ + " line " + std::to_string(done_ + 2);
}

void Replay::begin_next(Attempt& attempt) const
{
    const Action& action = record_.lines[done_].action;
    const std::string reason = attempt.reason_against(action);
    if (!reason.empty()) {
        throw sim::RequestError(place() + ": cannot be done again: " + reason);
    }
    attempt.begin(action);
}

void Replay::compare(const Attempt& attempt) const
{
    if (attempt.lines().back().observations != record_.lines[done_].observations) {
        throw sim::RequestError(
            place() + ": what is read now is not what the record says; it was made with another "
                      "version of the program, or of its checks");
    }
}

bool Replay::advance(Attempt& attempt, sim::Tick ticks)
{
    attempt.advance(ticks);
    while (!attempt.is_busy()) {
        if (attempt.lines().size() > done_) {
            compare(attempt);
            ++done_;
        }
        if (done_ == record_.lines.size()) {
            return true;
        }
        if (attempt.lines().size() == done_) {
            begin_next(attempt);
        }
    }
    return false;
}

void replay(const Record& record, const std::string& name, Attempt& attempt)
{
    Replay pieces(record, name, attempt.order());
    while (!pieces.advance(attempt, std::numeric_limits<sim::Tick>::max())) {
    }
}

} // namespace shop

#pragma once

#include "scenes/shop/attempt.hpp"

namespace shop {

/// What a record says of an attempt before its first action.
struct RecordHead {
    std::string order;     ///< id
    std::uint64_t sum = 0; ///< checksum of the order's file
    std::uint64_t seed = 0;
    std::string student; ///< whatever the class agreed; may be empty
};

/// An action of a record with what was read then.
struct RecordLine {
    Action action;
    std::vector<Observation> observations;
};

struct Record {
    RecordHead head;
    std::vector<RecordLine> lines;
    std::size_t whole_bytes = 0; ///< up to the end of the last whole line
    std::uint64_t chain = 0;     ///< checksum after the last line
};

/// Reads a record. A last line that a crash cut short is left out; anything else that is not as the
/// program wrote it is refused.
///
/// throws:  AssetError naming file and line, and what is wrong
Record load_record(const std::string& path);

/// A record that grows: each finished action is appended and brought to the disk at once.
class RecordKeeper {
public:
    /// Begins a new file.
    ///
    /// throws:  RequestError when there is one already or it cannot be written
    static RecordKeeper begin(const std::string& path, const RecordHead& head);
    /// Goes on with a file, dropping a last line that was cut short.
    ///
    /// throws:  RequestError when it cannot be written or another program writes it;
    ///          AssetError when it is no record
    static RecordKeeper resume(const std::string& path, Record& record);
    RecordKeeper(const RecordKeeper&) = delete;
    RecordKeeper& operator=(const RecordKeeper&) = delete;
    RecordKeeper(RecordKeeper&& other) noexcept;
    RecordKeeper& operator=(RecordKeeper&& other) noexcept;
    ~RecordKeeper();

    /// throws:  RequestError when it cannot be written
    void append(const JobLine& line);
    [[nodiscard]] const std::string& path() const { return path_; }

private:
    RecordKeeper(std::string path, int descriptor, std::uint64_t chain, std::size_t count)
        : path_(std::move(path)), descriptor_(descriptor), chain_(chain), count_(count)
    {
    }
    void write(const std::string& text);

    std::string path_;
    int descriptor_ = -1;
    std::uint64_t chain_ = 0;
    std::size_t count_ = 0;
};

/// Refuses a record of another order, or of another state of it.
///
/// throws:  RequestError
void require_own(const Record& record, const std::string& name, const Order& order);

/// An attempt that does again what a record holds, in pieces of the machine's time.
class Replay {
public:
    /// `name` stands for the record in messages.
    ///
    /// throws:  RequestError when the record is of another order
    Replay(Record record, std::string name, const Order& order);

    /// Goes on for so much of the machine's time at most; true when everything is done. The attempt
    /// is given anew each time and must be the same one, fresh at first.
    ///
    /// throws:  RequestError when an action cannot be done again, or what is read now is not what
    ///          the record says was read; NumericsError
    bool advance(Attempt& attempt, sim::Tick ticks);
    /// How many actions there are, and how many are done.
    [[nodiscard]] std::size_t count() const { return record_.lines.size(); }
    [[nodiscard]] std::size_t done() const { return done_; }

private:
    [[nodiscard]] std::string place() const;
    void begin_next(Attempt& attempt) const;
    void compare(const Attempt& attempt) const;

    Record record_;
    std::string name_;
    std::size_t done_ = 0;
};

/// The same at once.
///
/// throws:  RequestError, NumericsError
void replay(const Record& record, const std::string& name, Attempt& attempt);

} // namespace shop

#pragma once

#include "scenes/shop/table.hpp"

#include <map>
#include <mutex>

namespace shop {

/// What checks have read in simulations of one situation, kept in a file that grows.
///
/// Valid for one program, one set of files and one situation: a file of another is begun anew.
class TableStore {
public:
    using Values = std::vector<std::optional<double>>;
    using ByCheck = std::map<std::string, Values, std::less<>>;

    /// With an empty path it remembers, but keeps nothing.
    ///
    /// throws:  RequestError when the file cannot be written
    TableStore(std::string path, std::uint64_t key);
    TableStore(const TableStore&) = delete;
    TableStore& operator=(const TableStore&) = delete;
    TableStore(TableStore&&) = delete;
    TableStore& operator=(TableStore&&) = delete;
    ~TableStore();

    /// What is known of a hypothesis.
    [[nodiscard]] ByCheck known(const std::string& hypothesis);
    /// Adds to it and brings it to the disk.
    void add(const std::string& hypothesis, const ByCheck& read);

private:
    void load();
    void write(const std::string& line);

    std::mutex mutex_;
    std::string path_;
    std::uint64_t key_;
    int descriptor_ = -1;
    std::map<std::string, ByCheck> rows_;
};

/// What decides whether stored readings are still true: the program itself, its files, the weather
/// and what was done to the machine.
std::uint64_t situation_key(const Situation& situation);

} // namespace shop

#pragma once

#include "error.hpp"
#include "geometry.hpp"
#include "units.hpp"

#include <initializer_list>
#include <memory>
#include <nlohmann/json.hpp>
#include <string>
#include <string_view>
#include <system_error>
#include <vector>

// Reading files people wrote. Every complaint names the file, the JSON pointer, what is wrong and
// what would be right. Only the sources of files that read JSON include this.

namespace sim {

/// The .json files of a folder, sorted; those found so far where there is trouble.
std::vector<std::string> json_files(const std::string& folder, std::error_code& trouble);

/// One value in a file, with the way to it.
class JsonNode {
public:
    /// Reads and parses a whole file.
    ///
    /// throws:  AssetError when it cannot be read, is over 4 MB, is not JSON (with line and
    /// column),
    ///          is nested over 64 levels deep or gives a key twice
    static JsonNode load(const std::string& path);
    /// The same from text that is already here; `name` stands for the file in messages.
    static JsonNode parse(const std::string& text, const std::string& name);

    /// Refuses keys outside the list, naming the nearest allowed one and all that are allowed.
    void allow_keys(std::initializer_list<std::string_view> allowed) const;
    void allow_keys(const std::vector<std::string>& allowed) const;

    /// Refuses a file whose "format" is not `format`.
    void require_format(int format) const;
    [[nodiscard]] bool has(std::string_view key) const;
    [[nodiscard]] JsonNode at(std::string_view key) const;
    /// The entries of a list of at most 100,000.
    [[nodiscard]] std::vector<JsonNode> items() const;
    [[nodiscard]] std::vector<std::string> keys() const;

    [[nodiscard]] std::string text() const;
    /// A plain finite number.
    [[nodiscard]] double number() const;
    [[nodiscard]] double number_between(double low, double high) const;
    /// true or false.
    [[nodiscard]] bool truth() const;
    /// Text with a unit, or a plain number for a ratio; in SI.
    [[nodiscard]] double quantity(Dimension dimension) const;
    /// Three lengths.
    [[nodiscard]] Vector vector() const;
    [[nodiscard]] bool is_number() const;
    [[nodiscard]] bool is_text() const;
    [[nodiscard]] bool is_object() const;
    /// The value as text that `parse` reads back.
    [[nodiscard]] std::string dump() const;

    /// The complaint about this value, its text made printable.
    [[nodiscard]] AssetError wrong(const std::string& reason) const;

private:
    JsonNode(std::shared_ptr<const nlohmann::json> root, const nlohmann::json* value,
             std::string file, std::string pointer);
    [[nodiscard]] const nlohmann::json& object() const;

    std::shared_ptr<const nlohmann::json> root_;
    const nlohmann::json* value_;
    std::string file_;
    std::string pointer_;
};

} // namespace sim

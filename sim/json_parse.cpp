#include "json_parse.hpp"

#include "error.hpp"
#include "printable.hpp"

#include <algorithm>
#include <cerrno>
#include <filesystem>
#include <fstream>
#include <functional>
#include <set>
#include <system_error>
#include <vector>

namespace sim {

namespace {

constexpr std::size_t largest_file = 4U << 20U;
constexpr std::size_t deepest_nesting = 64;

/// "line 3, column 7" of a byte in a text.
std::string place_of(std::string_view text, std::size_t byte)
{
    const std::string_view before = text.substr(0, byte);
    const std::size_t newline = before.rfind('\n');
    const std::size_t line_start = newline == std::string_view::npos ? 0 : newline + 1;
    return "line " + std::to_string(std::ranges::count(before, '\n') + 1) + ", column " +
           std::to_string(before.size() - line_start + 1);
}

/// Follows the parser to know where it is, and refuses what it would let pass: very deep nesting
/// and a key given twice.
class Watch {
public:
    explicit Watch(std::string file) : file_(std::move(file)) {}

    bool operator()(int /*depth*/, nlohmann::json::parse_event_t event, nlohmann::json& value)
    {
        using Event = nlohmann::json::parse_event_t;
        switch (event) {
        case Event::object_start:
        case Event::array_start:
            enter(event == Event::array_start);
            break;
        case Event::key:
            take_key(value.get<std::string>());
            break;
        case Event::object_end:
        case Event::array_end:
            frames_.pop_back();
            count();
            break;
        case Event::value:
            count();
            break;
        }
        return true;
    }

    [[nodiscard]] std::string pointer() const
    {
        std::string pointer;
        for (const Frame& frame : frames_) {
            pointer += frame.is_list ? "/" + std::to_string(frame.index) : pointer_step(frame.key);
        }
        return pointer;
    }

private:
    struct Frame {
        bool is_list = false;
        std::size_t index = 0;
        std::string key;
        std::set<std::string> keys;
    };

    void enter(bool is_list)
    {
        if (frames_.size() == deepest_nesting) {
            throw AssetError(file_, "",
                             "is nested more than " + std::to_string(deepest_nesting) +
                                 " levels deep");
        }
        frames_.push_back({is_list, 0, "", {}});
    }

    void take_key(const std::string& key)
    {
        Frame& frame = frames_.back();
        if (!frame.keys.insert(key).second) {
            frames_.pop_back();
            throw AssetError(file_, shown_pointer(pointer()),
                             "key " + in_quotes(key) + " is given twice");
        }
        frame.key = key;
    }

    void count()
    {
        if (!frames_.empty()) {
            ++frames_.back().index;
        }
    }

    std::string file_;
    std::vector<Frame> frames_;
};

} // namespace

std::string pointer_step(std::string_view key)
{
    std::string step = "/";
    for (const char c : key) {
        if (c == '~') {
            step += "~0";
        } else if (c == '/') {
            step += "~1";
        } else {
            step += c;
        }
    }
    return step;
}

std::string shown_pointer(std::string_view pointer)
{
    constexpr std::size_t longest = 200;
    return pointer.empty() ? "/" : printable(pointer.substr(0, longest));
}

std::string read_json_file(const std::string& path)
{
    std::error_code trouble;
    const auto status = std::filesystem::status(path, trouble);
    if (!std::filesystem::exists(status)) {
        const bool missing = status.type() == std::filesystem::file_type::not_found;
        throw AssetError(
            path, "", "cannot be read: " + (missing ? "there is no such file" : trouble.message()));
    }
    if (!std::filesystem::is_regular_file(status)) {
        throw AssetError(path, "", "cannot be read: it is not a regular file");
    }
    errno = 0;
    std::ifstream stream(path, std::ios::binary);
    if (!stream) {
        throw AssetError(path, "", "cannot be read: " + std::generic_category().message(errno));
    }
    const auto size = std::filesystem::file_size(path, trouble);
    std::string text(std::min<std::uintmax_t>(size, largest_file + 1), '\0');
    stream.read(text.data(), static_cast<std::streamsize>(text.size()));
    if (stream.bad()) {
        throw AssetError(path, "", "cannot be read to its end");
    }
    text.resize(static_cast<std::size_t>(stream.gcount()));
    return text;
}

nlohmann::json parse_json(const std::string& text, const std::string& name)
{
    if (text.size() > largest_file) {
        throw AssetError(name, "", "is over 4 MB; no file of this program is that long");
    }
    // The parser takes a zero byte for the end and would not look at what follows.
    if (const std::size_t zero = text.find('\0'); zero != std::string::npos) {
        throw AssetError(name, "", "is not JSON: there is a zero byte at " + place_of(text, zero));
    }
    Watch watch(name);
    try {
        return nlohmann::json::parse(text, std::ref(watch));
    } catch (const nlohmann::json::parse_error& error) {
        if (error.byte > text.size()) {
            throw AssetError(name, "",
                             "is not JSON: it ends too early, at " + place_of(text, text.size()));
        }
        throw AssetError(name, "", "is not JSON at " + place_of(text, error.byte - 1));
    } catch (const nlohmann::json::out_of_range&) {
        throw AssetError(name, shown_pointer(watch.pointer()),
                         "the number is too large to be read");
    }
}

} // namespace sim

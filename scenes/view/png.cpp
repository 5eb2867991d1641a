#include "scenes/view/png.hpp"

#include "sim/error.hpp"
#include "sim/printable.hpp"

#include <filesystem>
#include <fstream>
#include <iterator>
#include <unistd.h>

namespace scenes {
namespace {

std::string read_whole(const std::string& path)
{
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

} // namespace

std::string png_bytes(const sf::Image& picture)
{
    const std::filesystem::path file = std::filesystem::temp_directory_path() /
                                       ("standpipe-shot-" + std::to_string(::getpid()) + ".png");
    const bool is_saved = picture.saveToFile(file.string());
    const std::string bytes = is_saved ? read_whole(file.string()) : std::string();
    std::error_code ignored;
    std::filesystem::remove(file, ignored);
    if (bytes.empty()) {
        throw sim::RequestError("the picture cannot be prepared in " +
                                sim::in_quotes(file.parent_path().string()));
    }
    return bytes;
}

} // namespace scenes

#include "scenes/app.hpp"
#include "scenes/command_line/command_line.hpp"

#include <iostream>

int main(int count, char** words)
{
    const std::vector<std::string> after_name(words + (count > 0 ? 1 : 0), words + count);
    return scenes::run_command_line(
        after_name, std::cout, std::cerr,
        {scenes::open_window, scenes::take_shot, scenes::take_pictures});
}

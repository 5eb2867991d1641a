#pragma once

#include <span>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

namespace shop {

/// A text of the assets for a page, in the language chosen.
std::string text_of(std::string_view english);

/// A column of a printed table.
struct PrintColumn {
    std::string title;
    int percent = 0;        ///< of the width
    bool is_figure = false; ///< set to the right
};

/// A page that is read on a screen and prints on A4 and letter paper: black on white, no scripts,
/// nothing from elsewhere. Heads of tables stand again on each sheet, rows are not broken.
///
/// source:  WHATWG HTML Living Standard; W3C CSS Paged Media Module Level 3. It is XML too.
class PrintPage {
public:
    /// With a line above the title, such as what kind of paper it is.
    PrintPage(std::string_view title, std::string_view kind);

    void heading(std::string_view text);
    void paragraph(std::string_view text);
    void quotation(std::string_view text);
    /// Name and value, line by line.
    void facts(std::span<const std::pair<std::string, std::string>> facts);
    /// unit:    least height of a row in millimetres; 0 for as high as its words
    /// valid:   every row as long as `columns`; a line break in a cell stays one
    void table(std::span<const PrintColumn> columns, std::span<const std::vector<std::string>> rows,
               int row_height = 0);
    void list(std::span<const std::string> texts);
    /// Names with room to write beside them, side by side.
    void blanks(std::span<const std::string> names);
    /// Boxes to tick with a pen.
    void ticks(std::span<const std::string> names);
    /// Empty lines to write on.
    void lines(int count);
    /// What follows begins on a sheet of its own.
    void new_sheet();

    /// The page as it is so far.
    [[nodiscard]] std::string text() const;

private:
    std::ostringstream out_;
};

} // namespace shop

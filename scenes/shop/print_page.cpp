#include "scenes/shop/print_page.hpp"

#include "scenes/present/phrase.hpp"
#include "scenes/shop/class_sheet.hpp"

namespace shop {
namespace {

constexpr std::string_view style = R"(
@page{margin:13mm}
body{font:10.5pt/1.4 sans-serif;color:#111;background:#fff;max-width:186mm;margin:8mm auto;padding:0 4mm}
h1{font-size:18pt;line-height:1.2;margin:0 0 4mm}
h2{font-size:12.5pt;margin:6mm 0 1.5mm;border-bottom:.5mm solid #111;break-after:avoid}
p{margin:1mm 0 2mm}p.kind{margin:0;font-weight:600;color:#444}
blockquote{margin:1mm 0 2mm;padding-left:4mm;border-left:1mm solid #777;font-size:11.5pt}
table{border-collapse:collapse;width:100%;table-layout:fixed;margin:1mm 0 2mm}
thead{display:table-header-group}tr{break-inside:avoid}
th,td{text-align:left;vertical-align:top;padding:.8mm 1.2mm;border:.25mm solid #777;overflow-wrap:break-word}
th{font-weight:600;border-bottom:.5mm solid #111}
th.n,td.n{text-align:right;font-variant-numeric:tabular-nums}
table.facts td{border:0;border-bottom:.25mm solid #999}table.facts td:first-child{width:34%;color:#444}
ul{margin:1mm 0 2mm;padding-left:5mm}li{margin:0 0 1mm;break-inside:avoid}
div.blanks{display:flex;gap:6mm;margin:2mm 0 4mm}
div.blanks span{flex:1;border-bottom:.3mm solid #111;padding-bottom:1mm}
div.ticks{display:flex;flex-wrap:wrap;gap:2mm 7mm;margin:2mm 0}
div.ticks i{display:inline-block;width:3.6mm;height:3.6mm;border:.35mm solid #111;margin-right:2mm;vertical-align:-.5mm}
div.line{height:10mm;border-bottom:.25mm solid #777}
.sheet{break-before:page}
@media print{body{margin:0;max-width:none;padding:0}}
)";

std::string cell_text(std::string_view text)
{
    std::string out;
    for (const char each : html_text(text)) {
        out += each == '\n' ? std::string("<br/>") : std::string(1, each);
    }
    return out;
}

} // namespace

std::string text_of(std::string_view english)
{
    return std::string(scenes::translated(english));
}

PrintPage::PrintPage(std::string_view title, std::string_view kind)
{
    out_ << "<!DOCTYPE html>\n<html lang=\"" << html_text(scenes::chosen_language())
         << "\"><head><meta charset=\"utf-8\"/><title>" << html_text(kind) << ": "
         << html_text(title) << "</title><style>" << style
         << "</style></head><body>\n<p class=\"kind\">" << html_text(kind) << "</p>\n<h1>"
         << html_text(title) << "</h1>\n";
}

void PrintPage::heading(std::string_view text)
{
    out_ << "<h2>" << html_text(text) << "</h2>\n";
}

void PrintPage::paragraph(std::string_view text)
{
    out_ << "<p>" << cell_text(text) << "</p>\n";
}

void PrintPage::quotation(std::string_view text)
{
    out_ << "<blockquote>" << cell_text(text) << "</blockquote>\n";
}

void PrintPage::facts(std::span<const std::pair<std::string, std::string>> facts)
{
    out_ << "<table class=\"facts\">\n";
    for (const auto& [name, value] : facts) {
        out_ << "<tr><td>" << html_text(name) << "</td><td>" << cell_text(value) << "</td></tr>\n";
    }
    out_ << "</table>\n";
}

void PrintPage::table(std::span<const PrintColumn> columns,
                      std::span<const std::vector<std::string>> rows, int row_height)
{
    const auto set = [](const PrintColumn& column) {
        return column.is_figure ? " class=\"n\"" : "";
    };
    out_ << "<table>\n<thead><tr>";
    for (const PrintColumn& column : columns) {
        out_ << "<th" << set(column) << " style=\"width:" << column.percent << "%\">"
             << html_text(column.title) << "</th>";
    }
    out_ << "</tr></thead>\n<tbody>\n";
    for (const auto& row : rows) {
        out_ << "<tr";
        if (row_height > 0) {
            out_ << " style=\"height:" << row_height << "mm\"";
        }
        out_ << ">";
        for (std::size_t c = 0; c < columns.size(); ++c) {
            out_ << "<td" << set(columns[c]) << ">" << cell_text(row[c]) << "</td>";
        }
        out_ << "</tr>\n";
    }
    out_ << "</tbody></table>\n";
}

void PrintPage::list(std::span<const std::string> texts)
{
    if (texts.empty()) {
        return; // a list without entries is not valid
    }
    out_ << "<ul>\n";
    for (const std::string& text : texts) {
        out_ << "<li>" << cell_text(text) << "</li>\n";
    }
    out_ << "</ul>\n";
}

void PrintPage::blanks(std::span<const std::string> names)
{
    out_ << "<div class=\"blanks\">";
    for (const std::string& name : names) {
        out_ << "<span>" << html_text(name) << ":</span>";
    }
    out_ << "</div>\n";
}

void PrintPage::ticks(std::span<const std::string> names)
{
    out_ << "<div class=\"ticks\">";
    for (const std::string& name : names) {
        out_ << "<span><i></i>" << html_text(name) << "</span>";
    }
    out_ << "</div>\n";
}

void PrintPage::lines(int count)
{
    for (int i = 0; i < count; ++i) {
        out_ << "<div class=\"line\"></div>\n";
    }
}

void PrintPage::new_sheet()
{
    out_ << "<div class=\"sheet\"></div>\n";
}

std::string PrintPage::text() const
{
    return out_.str() + "</body></html>\n";
}

} // namespace shop

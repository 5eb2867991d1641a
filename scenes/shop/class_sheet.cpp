#include "scenes/shop/class_sheet.hpp"
#include "scenes/shop/plain_number.hpp"

#include "scenes/command_line/csv.hpp"

#include <sstream>

namespace shop {
namespace {

std::string finding_text(const Marked& marked)
{
    std::string text;
    for (const JobLine& line : marked.work.lines) {
        if (std::holds_alternative<Finding>(line.action)) {
            text = done_text(*marked.order, line);
        }
    }
    return text;
}

std::string name_of(const Marked& marked)
{
    return marked.student.empty() ? "(no name)" : marked.student;
}

constexpr std::string_view page_head = R"(<!DOCTYPE html>
<html lang="en"><head><meta charset="utf-8"><title>Class sheet</title><style>
body{font:11pt/1.45 sans-serif;color:#1d1b16;background:#fff;margin:2em auto;max-width:60em;padding:0 1em}
h1{font-size:1.5em}h2{font-size:1.15em;margin:2em 0 .3em;border-bottom:2px solid #1d1b16}
table{border-collapse:collapse;width:100%;margin:.6em 0}th,td{text-align:left;vertical-align:top;
padding:.25em .6em .25em 0;border-bottom:1px solid #b8b2a4}th{font-weight:600}
td.n,th.n{text-align:right;white-space:nowrap}section{break-inside:avoid-page}
.harm{font-weight:600}p.small{font-size:.9em}
svg{width:100%;margin:.8em 0;font-size:12px;fill:#1d1b16}svg path{fill:none;stroke:#1d1b16}
svg .grid{stroke:#d9d4c7}svg .own{stroke-width:3}svg .good{stroke-width:1.6;stroke-dasharray:7 4}
svg rect{stroke:#1d1b16;fill:#fff}svg .repair rect{fill:#1d1b16}svg .repair text{fill:#fff}
@media print{body{margin:0;max-width:none}h2{break-after:avoid}tr{break-inside:avoid}}
</style></head><body>
)";

void put_path(std::ostringstream& page, const Order& order, const std::vector<JobLine>& lines)
{
    page << "<table><tr><th class=n>No.</th><th>Done</th><th>Read</th><th class=n>Minutes</th><th "
            "class=n>Parts</th></tr>\n";
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const JobLine& line = lines[i];
        page << "<tr><td class=n>" << i + 1 << "</td><td>" << html_text(done_text(order, line))
             << (line.did_harm ? " <span class=harm>(did damage)</span>" : "") << "</td><td>"
             << html_text(read_text(order, line)) << "</td><td class=n>"
             << plain_number(line.minutes) << "</td><td class=n>" << plain_number(line.money)
             << "</td></tr>\n";
    }
    page << "</table>\n";
}

void put_student(std::ostringstream& page, const Marked& marked)
{
    page << "<section><h2>" << html_text(name_of(marked)) << ": " << html_text(marked.order->title)
         << " &ndash; " << plain_number(marked.marks.got()) << " of "
         << plain_number(marked.marks.of())
         << "</h2>\n<table><tr><th>Mark</th><th class=n>Got</th><th "
            "class=n>Of</th><th>Why</th></tr>\n";
    for (const Mark& mark : marked.marks.marks) {
        page << "<tr><td>" << html_text(mark.id) << "</td><td class=n>" << plain_number(mark.got, 1)
             << "</td><td class=n>" << plain_number(mark.of) << "</td><td>"
             << html_text(text_of(mark.why)) << "</td></tr>\n";
    }
    page << "</table>\n" << course_svg(marked.work, marked.good) << "</section>\n";
    put_path(page, *marked.order, marked.work.lines);
}

} // namespace

std::string html_text(std::string_view text)
{
    std::string out;
    for (const char each : text) {
        switch (each) {
        case '&':
            out += "&amp;";
            break;
        case '<':
            out += "&lt;";
            break;
        case '>':
            out += "&gt;";
            break;
        case '"':
            out += "&quot;";
            break;
        default:
            out += each;
        }
    }
    return out;
}

std::string class_csv(std::span<const Marked> all)
{
    std::vector<std::string> head{"student", "order", "marks", "of"};
    if (!all.empty()) {
        for (const Mark& mark : all.front().marks.marks) {
            head.push_back(mark.id);
        }
    }
    head.insert(head.end(),
                {"minutes", "parts", "good minutes", "good parts", "finding", "record"});
    std::string text = scenes::csv_line(head);
    for (const Marked& marked : all) {
        std::vector<std::string> cells{marked.student, marked.order->id,
                                       plain_number(marked.marks.got(), 1),
                                       plain_number(marked.marks.of(), 1)};
        for (const Mark& mark : marked.marks.marks) {
            cells.push_back(plain_number(mark.got, 1));
        }
        cells.insert(cells.end(), {plain_number(sum_of(marked.work.lines, &JobLine::minutes)),
                                   plain_number(sum_of(marked.work.lines, &JobLine::money)),
                                   plain_number(sum_of(marked.good.lines, &JobLine::minutes)),
                                   plain_number(sum_of(marked.good.lines, &JobLine::money)),
                                   finding_text(marked), marked.file});
        text += scenes::csv_line(cells);
    }
    return text;
}

std::string class_html(std::span<const Marked> all)
{
    std::ostringstream page;
    page << page_head << "<h1>Class sheet</h1>\n<table><tr><th>Student</th><th>Work order</th>"
         << "<th class=n>Marks</th><th class=n>Of</th><th class=n>Minutes</th>"
         << "<th class=n>Parts</th></tr>\n";
    for (const Marked& marked : all) {
        page << "<tr><td>" << html_text(name_of(marked)) << "</td><td>"
             << html_text(marked.order->title) << "</td><td class=n>"
             << plain_number(marked.marks.got()) << "</td><td class=n>"
             << plain_number(marked.marks.of()) << "</td><td class=n>"
             << plain_number(sum_of(marked.work.lines, &JobLine::minutes)) << "</td><td class=n>"
             << plain_number(sum_of(marked.work.lines, &JobLine::money)) << "</td></tr>\n";
    }
    page << "</table>\n<p class=small>In the drawings the thick curve is the doubt about the cause "
            "that this work's readings leave, the dashed one that of good work; below, what was "
            "done "
            "when: checks are open boxes, repairs dark ones, numbered as in the tables.</p>\n";
    const Order* shown = nullptr;
    for (const Marked& marked : all) {
        put_student(page, marked);
        if (shown != marked.order.get()) {
            shown = marked.order.get();
            page << "<h2>Good work on: " << html_text(shown->title) << "</h2>\n<p class=small>"
                 << html_text(shown->answer.finding) << "</p>\n";
            put_path(page, *shown, marked.good.lines);
        }
    }
    page << "</body></html>\n";
    return page.str();
}

} // namespace shop

#include "scenes/present/label_layout.hpp"

#include <algorithm>
#include <cmath>

namespace scenes {

LabelGround::LabelGround(const LabelBox& page, double cell)
    : page_(page),
      cell_(cell),
      rows_(std::max(1, static_cast<int>(std::ceil(page.height / cell)))),
      columns_(std::max(1, static_cast<int>(std::ceil(page.width / cell)))),
      cells_(static_cast<std::size_t>(rows_) * static_cast<std::size_t>(columns_), Cover::paper)
{
}

std::size_t LabelGround::index(int row, int column) const
{
    return static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_) +
           static_cast<std::size_t>(column);
}

// Rows are cut through the middles of the cells; between the first and second crossing, the third
// and fourth and so on a row is inside.
void LabelGround::cover(std::span<const LabelPoint> polygon, Cover cover)
{
    if (polygon.size() < 3) {
        return;
    }
    const auto [top, bottom] = std::ranges::minmax(polygon, {}, &LabelPoint::y);
    const int first = std::max(0, static_cast<int>((top.y - page_.top) / cell_));
    const int last = std::min(rows_ - 1, static_cast<int>((bottom.y - page_.top) / cell_));
    std::vector<double> crossings;
    for (int row = first; row <= last; ++row) {
        const double y = page_.top + cell_ * (row + 0.5);
        crossings.clear();
        for (std::size_t i = 0; i < polygon.size(); ++i) {
            const LabelPoint a = polygon[i];
            const LabelPoint b = polygon[(i + 1) % polygon.size()];
            if ((a.y > y) != (b.y > y)) {
                crossings.push_back(a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y));
            }
        }
        std::ranges::sort(crossings);
        for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) {
            const double left = (crossings[i] - page_.left) / cell_;
            const double right = (crossings[i + 1] - page_.left) / cell_;
            const int from = static_cast<int>(std::clamp(left, 0.0, columns_ - 1.0));
            const int to = static_cast<int>(std::clamp(right, -1.0, columns_ - 1.0));
            for (int column = from; column <= to; ++column) {
                cells_[index(row, column)] = cover;
            }
        }
    }
}

void LabelGround::cover(const LabelBox& box, Cover cover)
{
    const LabelPoint corners[] = {{box.left, box.top},
                                  {box.right(), box.top},
                                  {box.right(), box.bottom()},
                                  {box.left, box.bottom()}};
    this->cover(corners, cover);
}

void LabelGround::settle()
{
    const auto wide = static_cast<std::size_t>(columns_) + 1;
    for (int kind = 0; kind < 3; ++kind) {
        std::vector<int>& sum = sums_[kind];
        sum.assign(wide * (static_cast<std::size_t>(rows_) + 1), 0);
        const auto counted = static_cast<Cover>(kind + 1);
        for (int row = 0; row < rows_; ++row) {
            int along = 0;
            for (int column = 0; column < columns_; ++column) {
                along += cells_[index(row, column)] == counted ? 1 : 0;
                const std::size_t here = (static_cast<std::size_t>(row) + 1) * wide +
                                         static_cast<std::size_t>(column) + 1;
                sum[here] = sum[here - wide] + along;
            }
        }
    }
}

LabelGround::Cover LabelGround::cover_at(LabelPoint point) const
{
    const int row = static_cast<int>(std::floor((point.y - page_.top) / cell_));
    const int column = static_cast<int>(std::floor((point.x - page_.left) / cell_));
    const bool is_on_page = row >= 0 && row < rows_ && column >= 0 && column < columns_;
    return is_on_page ? cells_[index(row, column)] : Cover::words;
}

double LabelGround::share(const LabelBox& box, Cover cover) const
{
    if (box.left < page_.left || box.top < page_.top || box.right() > page_.right() ||
        box.bottom() > page_.bottom()) {
        return cover == Cover::words ? 1.0 : 0.0;
    }
    const auto cell = [&](double from, int most) {
        return static_cast<std::size_t>(std::clamp(static_cast<int>(from / cell_), 0, most));
    };
    const std::size_t left = cell(box.left - page_.left, columns_ - 1);
    const std::size_t top = cell(box.top - page_.top, rows_ - 1);
    const std::size_t right = cell(box.right() - page_.left, columns_ - 1) + 1;
    const std::size_t bottom = cell(box.bottom() - page_.top, rows_ - 1) + 1;
    const auto wide = static_cast<std::size_t>(columns_) + 1;
    const std::vector<int>& sum = sums_[static_cast<int>(cover) - 1];
    const int count = sum[bottom * wide + right] - sum[top * wide + right] -
                      sum[bottom * wide + left] + sum[top * wide + left];
    return static_cast<double>(count) / static_cast<double>((right - left) * (bottom - top));
}

} // namespace scenes

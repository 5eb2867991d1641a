#include "turn_jacobian.hpp"

#include <Eigen/LU>
#include <Eigen/QR>

#include <algorithm>
#include <cmath>

namespace sim {

namespace {
/// A state is disturbed by these shares of its scale and of itself: once a good deal, to find what
/// lies at an edge; then so little that no other edge is met.
constexpr double share_of_scale = 1e-2;
constexpr double share_of_value = 1e-5;
constexpr double small_share = 3e-4;
/// A state whose slope is below this is pulled back within some turns.
constexpr double pulled_back = -0.3;
/// One whose slope is smaller than this is hardly pulled back.
constexpr double hardly = 0.02;
/// A tolerance of a state that makes no larger share of a tolerance of any is not felt.
constexpr double not_at_all = 1e-6;

using Matrix = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

/// Of the change of the states and the time over a turn, by the state it begins with.
using Slopes = std::vector<double>;

/// By a turn with one state disturbed; nothing when it cannot be followed.
std::optional<Slopes> disturb(Network& network, TurnMap& map, std::span<const double> from,
                              std::span<const double> change, std::size_t column, double step)
{
    std::vector<double> state(from.begin(), from.end());
    state[column] += step;
    Slopes result(change.size());
    if (!network.states()[column].allows(state[column]) || !map.change(network, state, result)) {
        return {};
    }
    for (std::size_t i = 0; i < result.size(); ++i) {
        result[i] = (result[i] - change[i]) / step;
    }
    return result;
}

double large_step(const StateInfo& info, double value)
{
    return share_of_scale * info.scale + share_of_value * std::abs(value);
}

/// How far a state is to be moved to stand clear of an edge, on the side from which it is pulled
/// back: a valve's leaf or a meniscus keeps it there, and what the other side does is no guide.
double clear_of_edge(Network& network, TurnMap& map, std::span<const double> from,
                     std::span<const double> change, std::size_t column)
{
    const double step = large_step(network.states()[column], from[column]);
    for (const double way : {step, -step}) {
        const auto slopes = disturb(network, map, from, change, column, way);
        if (slopes && (*slopes)[column] < pulled_back) {
            return way;
        }
    }
    return 0.0;
}

/// Whether a state is hardly pulled back, though others feel it: it may stand beside an edge.
bool stands_free(std::span<const double> slopes, std::span<const double> weights,
                 std::size_t column)
{
    const std::size_t n = weights.size();
    double felt = 0.0;
    for (std::size_t row = 0; row < n; ++row) {
        felt = std::max(felt, std::abs(slopes[row * n + column]) * weights[column] / weights[row]);
    }
    return std::abs(slopes[column * n + column]) < hardly && felt > not_at_all;
}

/// All slopes at a point, row by row; false when a disturbed turn cannot be followed.
bool find_slopes(Network& network, TurnMap& map, std::span<const double> from,
                 std::span<const double> change, std::span<double> slopes)
{
    const std::size_t n = change.size();
    for (std::size_t i = 0; i < from.size(); ++i) {
        const double step = small_share * large_step(network.states()[i], from[i]);
        auto column = disturb(network, map, from, change, i, step);
        column = column ? column : disturb(network, map, from, change, i, -step);
        if (!column) {
            return false;
        }
        for (std::size_t row = 0; row < n; ++row) {
            slopes[row * n + i] = (*column)[row];
        }
    }
    return true;
}

/// Takes from every column what would change the sums of the states with these shares in them,
/// most of it from the rows of most weight.
void keep_sums(std::span<const double> fuel, std::span<const double> air,
               std::span<const double> weights, Eigen::Map<Matrix>& jacobian)
{
    const auto n = jacobian.rows();
    const auto weight = Eigen::Map<const Eigen::VectorXd>(weights.data(), n).asDiagonal();
    Eigen::MatrixX2d shares(n, 2);
    shares << weight * Eigen::Map<const Eigen::VectorXd>(fuel.data(), n),
        weight * Eigen::Map<const Eigen::VectorXd>(air.data(), n);
    // An orthonormal basis of the two; a sum that no state has a share in adds nothing to it.
    const Eigen::ColPivHouseholderQR<Eigen::MatrixX2d> qr(shares);
    const Eigen::MatrixXd basis = qr.householderQ() * Eigen::MatrixXd::Identity(n, qr.rank());
    jacobian -= weight * basis * (basis.transpose() * (weight.inverse() * jacobian));
}
} // namespace

std::shared_ptr<const TurnJacobian> TurnJacobian::find(Network& network, TurnMap& map,
                                                       std::span<const double> from,
                                                       std::span<const double> weights)
{
    const std::size_t n = weights.size();
    std::vector<double> base(from.begin(), from.end());
    std::vector<double> change(n);
    auto result = std::make_shared<TurnJacobian>();
    result->slopes.resize(n * n);
    if (!map.change(network, base, change) ||
        !find_slopes(network, map, base, change, result->slopes)) {
        return {};
    }
    for (std::size_t i = 0; i < from.size(); ++i) {
        if (stands_free(result->slopes, weights, i)) {
            base[i] += clear_of_edge(network, map, from, change, i);
        }
    }
    if (!std::ranges::equal(base, from) &&
        !(map.change(network, base, change) &&
          find_slopes(network, map, base, change, result->slopes))) {
        return {};
    }

    Eigen::Map<Matrix> jacobian(result->slopes.data(), static_cast<Eigen::Index>(n),
                                static_cast<Eigen::Index>(n));
    std::vector<double> fuel(n);
    std::vector<double> air(n);
    for (std::size_t i = 0; i < from.size(); ++i) {
        fuel[i] = network.states()[i].fuel;
        air[i] = network.states()[i].air;
    }
    keep_sums(fuel, air, weights, jacobian);
    return result;
}

struct TurnSolver::Factors {
    Eigen::VectorXd weights;
    Eigen::PartialPivLU<Matrix> lu;
};

TurnSolver::TurnSolver(const TurnJacobian& jacobian, double reach, std::span<const double> weights)
    : factors_(std::make_unique<Factors>())
{
    const auto n = static_cast<Eigen::Index>(weights.size());
    factors_->weights = Eigen::Map<const Eigen::VectorXd>(weights.data(), n);
    const Eigen::Map<const Matrix> slopes(jacobian.slopes.data(), n, n);
    factors_->lu.compute(Matrix::Identity(n, n) -
                         reach * factors_->weights.cwiseInverse().asDiagonal() * slopes *
                             factors_->weights.asDiagonal());
}

TurnSolver::~TurnSolver() = default;

void TurnSolver::solve(std::span<double> right_side) const
{
    Eigen::Map<Eigen::VectorXd> b(right_side.data(), static_cast<Eigen::Index>(right_side.size()));
    b = factors_->weights.cwiseProduct(factors_->lu.solve(b.cwiseQuotient(factors_->weights)));
}

} // namespace sim

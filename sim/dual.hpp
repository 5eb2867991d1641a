#pragma once

#include <array>
#include <cmath>
#include <cstddef>

namespace sim {

/// A value together with its exact derivatives to N inputs (forward-mode differentiation).
///
/// Every law is written once as a template on the scalar; with `double` it gives the flow, with
/// `Dual<N>` the flow and its row of the Jacobian. There is no difference quotient anywhere.
/// source:  A. Griewank, A. Walther, Evaluating Derivatives, 2nd ed. 2008, ch. 3 (from memory)
template <std::size_t N>
struct Dual {
    double value = 0.0;
    std::array<double, N> slope{};

    constexpr Dual() = default;
    constexpr Dual(double v) : value(v) {} // NOLINT(google-explicit-constructor): laws mix numbers
};

template <std::size_t N>
constexpr Dual<N> chain(const Dual<N>& x, double value, double derivative)
{
    Dual<N> r(value);
    for (std::size_t i = 0; i < N; ++i) {
        r.slope[i] = derivative * x.slope[i];
    }
    return r;
}

template <std::size_t N>
constexpr Dual<N> chain(const Dual<N>& x, double dx, const Dual<N>& y, double dy, double value)
{
    Dual<N> r(value);
    for (std::size_t i = 0; i < N; ++i) {
        r.slope[i] = dx * x.slope[i] + dy * y.slope[i];
    }
    return r;
}

template <std::size_t N>
constexpr Dual<N> operator+(const Dual<N>& x, const Dual<N>& y)
{
    return chain(x, 1.0, y, 1.0, x.value + y.value);
}
template <std::size_t N>
constexpr Dual<N> operator-(const Dual<N>& x, const Dual<N>& y)
{
    return chain(x, 1.0, y, -1.0, x.value - y.value);
}
template <std::size_t N>
constexpr Dual<N> operator*(const Dual<N>& x, const Dual<N>& y)
{
    return chain(x, y.value, y, x.value, x.value * y.value);
}
template <std::size_t N>
constexpr Dual<N> operator/(const Dual<N>& x, const Dual<N>& y)
{
    const double inverse = 1.0 / y.value;
    const double ratio = x.value / y.value; // to the last bit what plain numbers give
    return chain(x, inverse, y, -ratio * inverse, ratio);
}
template <std::size_t N>
constexpr Dual<N> operator-(const Dual<N>& x)
{
    return chain(x, -x.value, -1.0);
}
template <std::size_t N>
constexpr Dual<N> operator+(const Dual<N>& x, double y)
{
    Dual<N> r = x;
    r.value += y;
    return r;
}
template <std::size_t N>
constexpr Dual<N> operator+(double x, const Dual<N>& y)
{
    return y + x;
}
template <std::size_t N>
constexpr Dual<N> operator-(const Dual<N>& x, double y)
{
    return x + (-y);
}
template <std::size_t N>
constexpr Dual<N> operator-(double x, const Dual<N>& y)
{
    return chain(y, x - y.value, -1.0);
}
template <std::size_t N>
constexpr Dual<N> operator*(const Dual<N>& x, double y)
{
    return chain(x, x.value * y, y);
}
template <std::size_t N>
constexpr Dual<N> operator*(double x, const Dual<N>& y)
{
    return y * x;
}
template <std::size_t N>
constexpr Dual<N> operator/(const Dual<N>& x, double y)
{
    return chain(x, x.value / y, 1.0 / y);
}
template <std::size_t N>
constexpr Dual<N> operator/(double x, const Dual<N>& y)
{
    const double ratio = x / y.value;
    return chain(y, ratio, -ratio / y.value);
}

template <std::size_t N>
Dual<N> sqrt(const Dual<N>& x)
{
    const double root = std::sqrt(x.value);
    return chain(x, root, 0.5 / root);
}
template <std::size_t N>
Dual<N> exp(const Dual<N>& x)
{
    const double e = std::exp(x.value);
    return chain(x, e, e);
}
template <std::size_t N>
Dual<N> log(const Dual<N>& x)
{
    return chain(x, std::log(x.value), 1.0 / x.value);
}
template <std::size_t N>
Dual<N> abs(const Dual<N>& x)
{
    return x.value < 0.0 ? -x : x;
}

/// The number itself, without derivatives; for choosing a branch.
constexpr double value_of(double x)
{
    return x;
}
template <std::size_t N>
constexpr double value_of(const Dual<N>& x)
{
    return x.value;
}

using std::abs;
using std::exp;
using std::log;
using std::sqrt;

} // namespace sim

#include "tests/reference/cvode_solver.hpp"

#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunlinsol/sunlinsol_klu.h>
#include <sunmatrix/sunmatrix_dense.h>
#include <sunmatrix/sunmatrix_sparse.h>

#include <algorithm>
#include <stdexcept>
#include <string>

using namespace sim;

namespace tests {

namespace {

struct Freeing {
    void operator()(_SUNContext* context) const { SUNContext_Free(&context); }
    void operator()(_generic_N_Vector* vector) const { N_VDestroy(vector); }
    void operator()(_generic_SUNMatrix* matrix) const { SUNMatDestroy(matrix); }
    void operator()(_generic_SUNLinearSolver* solver) const { SUNLinSolFree(solver); }
    void operator()(void* cvode) const { CVodeFree(&cvode); }
};
template <class T>
using Owned = std::unique_ptr<T, Freeing>;

void require(int flag, const char* what)
{
    if (flag < 0) {
        throw std::runtime_error(std::string("CVODE: ") + what + " gave " + std::to_string(flag));
    }
}

std::span<double> numbers(N_Vector vector)
{
    return {N_VGetArrayPointer(vector), static_cast<std::size_t>(N_VGetLength(vector))};
}

/// An entry of the network's pattern, in the order of a column-compressed matrix.
struct Entry {
    std::size_t slot;
    std::size_t row;
    std::size_t column;
};

std::vector<Entry> entries_of(const SparseLu& pattern)
{
    std::vector<Entry> entries;
    for (std::size_t column = 0; column < pattern.size(); ++column) {
        for (std::size_t row = 0; row < pattern.size(); ++row) {
            try {
                entries.push_back({pattern.slot(row, column), row, column});
            } catch (const std::out_of_range&) { // no such entry
            }
        }
    }
    return entries;
}

} // namespace

struct CvodeSolver::Memory {
    Network& network;
    std::vector<Entry> entries;
    std::vector<double> rates;
    std::vector<double> slots;
    Owned<_SUNContext> context;
    Owned<_generic_N_Vector> state;
    Owned<_generic_N_Vector> absolute;
    Owned<_generic_SUNMatrix> matrix;
    Owned<_generic_SUNLinearSolver> solver;
    Owned<void> cvode;
    double time = 0.0;
    CvodeWork before; ///< work up to the last restart

    explicit Memory(Network& equations)
        : network(equations),
          entries(entries_of(equations.pattern())),
          rates(equations.state_count()),
          slots(equations.pattern().slot_count())
    {
    }

    void set_up(const CvodeOptions& options);
    void set_up_matrix(CvodeMatrix kind);
    [[nodiscard]] CvodeWork since_restart() const;

    static int rates_at(realtype /*t*/, N_Vector y, N_Vector rates, void* memory)
    {
        static_cast<Memory*>(memory)->network.evaluate(numbers(y), numbers(rates));
        return 0;
    }
    static int jacobian_at(realtype /*t*/, N_Vector y, N_Vector /*rates*/, SUNMatrix jacobian,
                           void* memory, N_Vector /*a*/, N_Vector /*b*/, N_Vector /*c*/)
    {
        auto& self = *static_cast<Memory*>(memory);
        self.network.differentiate(numbers(y), self.rates, self.slots);
        if (SUNMatGetID(jacobian) == SUNMATRIX_SPARSE) {
            self.fill_sparse(jacobian);
        } else {
            for (const Entry& entry : self.entries) { // CVODE has set the whole to nothing
                SM_COLUMN_D(jacobian, entry.column)[entry.row] = self.slots[entry.slot];
            }
        }
        return 0;
    }
    void fill_sparse(SUNMatrix jacobian) const
    {
        std::size_t column = 0;
        for (std::size_t k = 0; k < entries.size(); ++k) {
            while (column <= entries[k].column) {
                SM_INDEXPTRS_S(jacobian)[column++] = static_cast<sunindextype>(k);
            }
            SM_INDEXVALS_S(jacobian)[k] = static_cast<sunindextype>(entries[k].row);
            SM_DATA_S(jacobian)[k] = slots[entries[k].slot];
        }
        SM_INDEXPTRS_S(jacobian)[column] = static_cast<sunindextype>(entries.size());
    }
};

void CvodeSolver::Memory::set_up(const CvodeOptions& options)
{
    SUNContext raw = nullptr;
    require(SUNContext_Create(nullptr, &raw), "SUNContext_Create");
    context.reset(raw);
    const auto n = static_cast<sunindextype>(network.state_count());
    state.reset(N_VNew_Serial(n, raw));
    absolute.reset(N_VNew_Serial(n, raw));
    for (std::size_t i = 0; i < network.state_count(); ++i) {
        numbers(state.get())[i] = 0.0;
        numbers(absolute.get())[i] = options.absolute * network.states()[i].scale;
    }
    cvode.reset(CVodeCreate(CV_BDF, raw));
    require(CVodeInit(cvode.get(), rates_at, 0.0, state.get()), "CVodeInit");
    require(CVodeSVtolerances(cvode.get(), options.relative, absolute.get()), "CVodeSVtolerances");
    require(CVodeSetUserData(cvode.get(), this), "CVodeSetUserData");
    require(CVodeSetMaxNumSteps(cvode.get(), options.most_steps), "CVodeSetMaxNumSteps");
    set_up_matrix(options.matrix);
}

void CvodeSolver::Memory::set_up_matrix(CvodeMatrix kind)
{
    const auto n = static_cast<sunindextype>(network.state_count());
    if (kind == CvodeMatrix::analytic_klu) {
        const auto count = static_cast<sunindextype>(entries.size());
        matrix.reset(SUNSparseMatrix(n, n, count, CSC_MAT, context.get()));
        fill_sparse(matrix.get());
        solver.reset(SUNLinSol_KLU(state.get(), matrix.get(), context.get()));
    } else {
        matrix.reset(SUNDenseMatrix(n, n, context.get()));
        solver.reset(SUNLinSol_Dense(state.get(), matrix.get(), context.get()));
    }
    require(CVodeSetLinearSolver(cvode.get(), solver.get(), matrix.get()), "CVodeSetLinearSolver");
    if (kind != CvodeMatrix::quotient_dense) {
        require(CVodeSetJacFn(cvode.get(), jacobian_at), "CVodeSetJacFn");
    }
}

CvodeWork CvodeSolver::Memory::since_restart() const
{
    CvodeWork work;
    long for_quotients = 0;
    long error_failures = 0;
    long solve_failures = 0;
    void* memory = cvode.get();
    require(CVodeGetNumSteps(memory, &work.steps), "CVodeGetNumSteps");
    require(CVodeGetNumErrTestFails(memory, &error_failures), "CVodeGetNumErrTestFails");
    require(CVodeGetNumStepSolveFails(memory, &solve_failures), "CVodeGetNumStepSolveFails");
    require(CVodeGetNumRhsEvals(memory, &work.evaluations), "CVodeGetNumRhsEvals");
    require(CVodeGetNumLinRhsEvals(memory, &for_quotients), "CVodeGetNumLinRhsEvals");
    require(CVodeGetNumJacEvals(memory, &work.jacobians), "CVodeGetNumJacEvals");
    require(CVodeGetNumLinSolvSetups(memory, &work.factorisations), "CVodeGetNumLinSolvSetups");
    work.failed = error_failures + solve_failures;
    work.evaluations += for_quotients;
    return work;
}

CvodeSolver::CvodeSolver(Network& network, CvodeOptions options)
    : memory_(std::make_unique<Memory>(network))
{
    memory_->set_up(options);
}

CvodeSolver::~CvodeSolver() = default;

void CvodeSolver::restart(double time, std::span<const double> state)
{
    memory_->before = work();
    std::ranges::copy(state, numbers(memory_->state.get()).begin());
    memory_->time = time;
    require(CVodeReInit(memory_->cvode.get(), time, memory_->state.get()), "CVodeReInit");
}

void CvodeSolver::stop_at(double time)
{
    require(CVodeSetStopTime(memory_->cvode.get(), time), "CVodeSetStopTime");
}

void CvodeSolver::advance(double time)
{
    while (memory_->time < time) {
        require(CVode(memory_->cvode.get(), time, memory_->state.get(), &memory_->time, CV_NORMAL),
                "CVode");
    }
}

std::span<const double> CvodeSolver::state() const
{
    return numbers(memory_->state.get());
}

CvodeWork CvodeSolver::work() const
{
    const CvodeWork now = memory_->since_restart();
    const CvodeWork& old = memory_->before;
    return {old.steps + now.steps, old.failed + now.failed, old.evaluations + now.evaluations,
            old.jacobians + now.jacobians, old.factorisations + now.factorisations};
}

} // namespace tests

// CVODE on the slopes of a system: backward differentiation formulas of variable order and step, by SUNDIALS
// (Hindmarsh et al. 2005, ACM Trans. Math. Softw. 31:363). Advances a system as timeline::drive asks for.
//
// Krylov: restarted GMRES, preconditioned with the model's own frozen factorisation; dense: Jacobian by
// differences.
#pragma once

#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunlinsol/sunlinsol_spgmr.h>
#include <sunmatrix/sunmatrix_dense.h>

#include <algorithm>
#include <cmath>
#include <memory>
#include <stdexcept>
#include <string>
#include <type_traits>
#include <vector>

#include "bide/system/system.hpp"

namespace bide::test {

enum class LinearSolver { dense, krylov };

struct CvodeOptions {
  double tolerance;  // relative, and absolute in each entry's unit
  LinearSolver linear_solver = LinearSolver::dense;
  // False: only where a hard stop or a changed state asks for it; it lands on every stop either way.
  bool restart_at_every_stop = true;
};

struct CvodeCounts {
  long steps = 0, slopes = 0, factorisations = 0;
};

class Cvode {
 public:
  using System = system::System<double>;
  using State = std::vector<double>;

  Cvode(const system::Compiled<double>& compiled, const system::Forcings<double>& forcings,
        const CvodeOptions& options)
      : options_(options), frozen_(compiled, forcings), state_(frozen_.size()), slope_(frozen_.size()) {
    SUNContext context = nullptr;
    check(SUNContext_Create(nullptr, &context), "SUNContext_Create");
    context_.reset(context);
    const auto size = static_cast<sunindextype>(frozen_.size());
    y_.reset(N_VNew_Serial(size, context));
    memory_.reset(CVodeCreate(CV_BDF, context));
    check(CVodeInit(memory_.get(), slope_of, 0, y_.get()), "CVodeInit");
    check(CVodeSetUserData(memory_.get(), this), "CVodeSetUserData");
    check(CVodeSStolerances(memory_.get(), options.tolerance, options.tolerance), "CVodeSStolerances");
    constexpr long most_steps = 10'000'000;
    check(CVodeSetMaxNumSteps(memory_.get(), most_steps), "CVodeSetMaxNumSteps");
    if (options.linear_solver == LinearSolver::dense) {
      matrix_.reset(SUNDenseMatrix(size, size, context));
      solver_.reset(SUNLinSol_Dense(y_.get(), matrix_.get(), context));
    } else {
      constexpr int usual_dimension = 0;
      solver_.reset(SUNLinSol_SPGMR(y_.get(), SUN_PREC_LEFT, usual_dimension, context));
      offset_.resize(frozen_.size()), solved_.resize(frozen_.size()), zero_.resize(frozen_.size());
    }
    check(CVodeSetLinearSolver(memory_.get(), solver_.get(), matrix_.get()), "CVodeSetLinearSolver");
    if (options.linear_solver == LinearSolver::krylov)
      check(CVodeSetPreconditioner(memory_.get(), precondition_setup, precondition),
            "CVodeSetPreconditioner");
  }
  Cvode(const Cvode&) = delete;  // CVODE keeps a pointer to it
  Cvode& operator=(const Cvode&) = delete;

  void step(System& system, State& x, double t, double h) {
    system_ = &system;
    frozen_.held = system.held;
    double* y = N_VGetArrayPointer(y_.get());
    if (jumped_ || options_.restart_at_every_stop || x != left_) {
      book();
      std::copy(x.begin(), x.end(), y);
      check(CVodeReInit(memory_.get(), t, y_.get()), "CVodeReInit");
      jumped_ = false;
    }
    double reached = t;
    check(CVodeSetStopTime(memory_.get(), t + h), "CVodeSetStopTime");
    check(CVode(memory_.get(), t + h, y_.get(), &reached, CV_NORMAL), "CVode");
    x.assign(y, y + x.size());
    left_ = x;
  }

  void restart() { jumped_ = true; }

  // Since the beginning.
  CvodeCounts counts() {
    book();
    return counts_;
  }

 private:
  struct Free {
    void operator()(SUNContext c) const { SUNContext_Free(&c); }
    void operator()(N_Vector v) const { N_VDestroy(v); }
    void operator()(SUNMatrix m) const { SUNMatDestroy(m); }
    void operator()(SUNLinearSolver s) const { SUNLinSolFree(s); }
    void operator()(void* memory) const { CVodeFree(&memory); }
  };
  template <class Pointer>
  using Owned = std::unique_ptr<std::remove_pointer_t<Pointer>, Free>;

  CvodeOptions options_;
  System frozen_;  // the preconditioner's, so that it does not disturb the coefficients of the run
  System* system_ = nullptr;
  State state_, slope_, left_, offset_, solved_, zero_;
  bool jumped_ = true;
  CvodeCounts counts_;
  Owned<SUNContext> context_;
  Owned<N_Vector> y_;
  Owned<SUNMatrix> matrix_;
  Owned<SUNLinearSolver> solver_;
  Owned<void*> memory_;

  static void check(int flag, const char* call) {
    if (flag < 0) throw std::runtime_error(std::string(call) + " failed: " + std::to_string(flag));
  }

  // CVODE counts from the last restart.
  void book() {
    long steps = 0, slopes = 0, for_jacobians = 0, factorisations = 0;
    check(CVodeGetNumSteps(memory_.get(), &steps), "CVodeGetNumSteps");
    check(CVodeGetNumRhsEvals(memory_.get(), &slopes), "CVodeGetNumRhsEvals");
    check(CVodeGetNumLinRhsEvals(memory_.get(), &for_jacobians), "CVodeGetNumLinRhsEvals");
    check(CVodeGetNumLinSolvSetups(memory_.get(), &factorisations), "CVodeGetNumLinSolvSetups");
    counts_.steps += steps, counts_.slopes += slopes + for_jacobians;
    counts_.factorisations += factorisations;
  }

  static void read(N_Vector from, State& to) {
    const double* values = N_VGetArrayPointer(from);
    std::copy(values, values + to.size(), to.begin());
  }

  // 1 asks CVODE for a smaller step.
  static int slope_of(double t, N_Vector y, N_Vector dydt, void* data) {
    Cvode& self = *static_cast<Cvode*>(data);
    read(y, self.state_);
    self.system_->slope(t, self.state_, self.slope_);
    std::copy(self.slope_.begin(), self.slope_.end(), N_VGetArrayPointer(dydt));
    const auto finite = [](double value) { return std::isfinite(value); };
    return std::all_of(self.slope_.begin(), self.slope_.end(), finite) ? 0 : 1;
  }

  static int precondition_setup(double t, N_Vector y, N_Vector, booleantype still_good, booleantype* renewed,
                                double gamma, void* data) {
    Cvode& self = *static_cast<Cvode*>(data);
    if (!still_good) {
      read(y, self.state_);
      self.frozen_.freeze(t, self.state_);
    }
    *renewed = still_good ? SUNFALSE : SUNTRUE;
    self.frozen_.factor(gamma);
    self.frozen_.stage(self.zero_, self.offset_);
    return 0;
  }

  // A stage solves u = r + gamma (J u + c): less its answer to r = 0, that is (I - gamma J) z = r.
  static int precondition(double, N_Vector, N_Vector, N_Vector r, N_Vector z, double, double, int,
                          void* data) {
    Cvode& self = *static_cast<Cvode*>(data);
    read(r, self.state_);
    self.frozen_.stage(self.state_, self.solved_);
    double* out = N_VGetArrayPointer(z);
    std::copy(self.state_.begin(), self.state_.end(), out);
    for (const auto& block : self.frozen_.blocks())
      for (std::size_t i = block.begin; i < block.implicit_end; ++i)
        out[i] = self.solved_[i] - self.offset_[i];
    return 0;
  }
};

}  // namespace bide::test

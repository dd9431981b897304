"""Which inputs decide how long the first person is able: Sobol' indices at points of one's own.

    which_inputs.py SCENARIO [BASE_SAMPLES]

The rows and the dict `problem` are those of SALib (its sampler `saltelli` without second order), so its samplers
and analyses can take the places of the two functions here.
"""
import sys

import numpy

import bide


def saltelli_rows(problem, base_samples, seed):
    """For each base sample the rows A, AB_1 ... AB_D, B; AB_i is A with column i of B."""
    inputs = problem["num_vars"]
    low, high = numpy.transpose(problem["bounds"])
    pairs = numpy.random.default_rng(seed).random((base_samples, 2 * inputs))
    a, b = pairs[:, :inputs], pairs[:, inputs:]
    rows = numpy.repeat(a[:, None, :], inputs + 2, axis=1)
    for i in range(inputs):
        rows[:, i + 1, i] = b[:, i]
    rows[:, -1, :] = b
    return low + rows.reshape(-1, inputs) * (high - low)


def jansen(rows):
    """Total indices after Jansen (1999): half the mean square of f(A) - f(AB_i), over the variance."""
    a, mixed, b = rows[:, :1], rows[:, 1:-1], rows[:, -1:]
    variance = numpy.concatenate([a, b]).var()
    return ((a - mixed) ** 2).mean(axis=0) / 2 / variance if variance > 0 else numpy.full(mixed.shape[1], numpy.nan)


def total_indices(problem, figures, replicates=1000, confidence=0.95):
    """Name, total index, and both ends of its interval, largest index first; empty where the figure does not vary.

    The interval is that of the percentile bootstrap (Efron 1979) over the base samples.
    """
    rows = figures.reshape(-1, problem["num_vars"] + 2)
    rows = rows[numpy.isfinite(rows).all(axis=1)]  # a base sample is whole or left out
    if not len(rows) or rows.min() == rows.max():
        return []
    draws = numpy.random.default_rng(2).integers(len(rows), size=(replicates, len(rows)))
    spread = numpy.array([jansen(rows[each]) for each in draws])
    low, high = numpy.nanquantile(spread, [(1 - confidence) / 2, (1 + confidence) / 2], axis=0)
    return sorted(zip(problem["names"], jansen(rows), low, high), key=lambda each: -each[1])


def main():
    scenario = bide.read(sys.argv[1])
    base_samples = int(sys.argv[2]) if len(sys.argv) > 2 else 256
    problem = bide.problem(scenario)
    points = saltelli_rows(problem, base_samples, seed=1)
    figure = "first able until"
    table = bide.evaluate(scenario, points, [figure])
    print(bide.notice)
    print(f"{len(table)} runs, {(table['failure'] != '').sum()} without figures, "
          f"{table[figure + ' reached'].mean():.0%} reached within {scenario.horizon_h:g} h")
    indices = total_indices(problem, table[figure].to_numpy())
    if not indices:
        print(f"{figure} is the same in every run")
    for name, total, low, high in indices[:10]:
        print(f"{total:6.2f} ({low:.2f} to {high:.2f})  {name}")


if __name__ == "__main__":
    main()

"""One crew in a few cells: read, run, odds, what decides, and a plot of it.

    cells.py SCENARIO PLOT [BASE_SAMPLES]

Editors that know cells (lines that begin with "# %%") run them one by one.
"""
# %% Read: everything that is wrong would be told at once (bide.Refused), what is doubtful is asked for.
import sys

import matplotlib.pyplot as pyplot
import numpy
from which_inputs import saltelli_rows, total_indices

import bide

scenario = bide.read(sys.argv[1])
print(bide.notice)
print(f"{scenario.name}: {scenario.persons} persons, {scenario.horizon_h:g} h")
for caution in scenario.check():
    print(f"caution: {caution['pointer']}: {caution['message']}")

# %% Run: one case, as it is written; what is uncertain is left aside.
course = scenario.run().to_xarray()
print(course["core_degC"].min("time").to_series().round(1).to_string())

# %% Odds: many futures. Time is told within the time simulated, with whether it was reached.
odds = bide.odds(scenario, futures=128, seed=1)
futures = odds.futures()
early, late = futures["first able until"].quantile([0.1, 0.9])
reached = futures["first able until reached"].mean()
print(f"first person able until: in eight of ten futures {early:.3g} to {late:.3g} h; "
      f"reached in {reached:.0%} of {len(futures)}")
print(futures["first able ended by"].replace("", "nothing within the time").value_counts().to_string())

# %% What decides: total Sobol' indices at points of one's own, with intervals (bootstrap over the base samples).
base_samples = int(sys.argv[3]) if len(sys.argv) > 3 else 64
problem = bide.problem(scenario)
table = bide.evaluate(scenario, saltelli_rows(problem, base_samples, seed=1), ["first able until"])
indices = total_indices(problem, table["first able until"].to_numpy())
for name, total, low, high in indices[:5]:
    print(f"{total:6.2f} ({low:.2f} to {high:.2f})  {name}")

# %% Plot: the course, the shares against time, and the indices.
figure, (cores, shares, decides) = pyplot.subplots(3, 1, figsize=(8, 11), constrained_layout=True)
course["core_degC"].plot.line(x="time", hue="person", ax=cores)
against_time = odds.to_dataframe()
for state in ("all_able", "some_alive"):
    shares.plot(against_time["at_h"], against_time[state + ".share"], label=state.replace("_", " "))
    shares.fill_between(against_time["at_h"], against_time[state + ".low"], against_time[state + ".high"], alpha=0.3)
shares.set(xlabel="h since the start", ylabel="share of futures", ylim=(0, 1))
shares.legend()
names, totals, lows, highs = zip(*indices[:8]) if indices else ((), (), (), ())
decides.errorbar(totals, names, xerr=numpy.maximum(0, [numpy.subtract(totals, lows), numpy.subtract(highs, totals)]),
                 fmt="o")
decides.invert_yaxis()
decides.set_xlabel("total index, first able until")
figure.suptitle(bide.notice, fontsize=6)
figure.savefig(sys.argv[2], dpi=120)

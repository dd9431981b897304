"""How long a crew in a life raft stays able and alive, over days.

Planning and training aid. Not a forecast for named people. Never a reason to end, delay or narrow a search.
"""
from collections.abc import Sequence
from os import PathLike
from typing import Any, Literal, TypedDict

import numpy
import pandas
import xarray
from numpy.typing import ArrayLike, NDArray

__version__: str
fingerprint: str  # of the model: the same for two builds whose results are the same bits
notice: str

class Reason(TypedDict):
    file: str
    pointer: str  # JSON pointer
    message: str  # what was found, what is allowed

class Input(TypedDict):
    name: str  # JSON pointer, or the name of a group or event
    kind: Literal["aleatory", "epistemic"]
    has_value: bool  # on the natural scale its column holds its value itself

class Problem(TypedDict):
    num_vars: int
    names: list[str]
    bounds: list[list[float]]

class Refused(ValueError):
    reasons: list[Reason]

class Scenario:
    @property
    def name(self) -> str: ...
    @property
    def file(self) -> str: ...
    @property
    def persons(self) -> int: ...
    @property
    def horizon_h(self) -> float: ...  # time simulated, h
    @property
    def defaults(self) -> list[str]: ...
    def check(self) -> list[Reason]: ...
    def run(self) -> Run: ...

class Run:
    @property
    def json(self) -> str: ...
    @property
    def result(self) -> dict[str, Any]: ...
    def to_xarray(self) -> xarray.Dataset: ...

class Odds:
    @property
    def json(self) -> str: ...
    @property
    def result(self) -> dict[str, Any]: ...
    def to_dataframe(self) -> pandas.DataFrame: ...  # shares against time, a row for each hour
    def futures(self) -> pandas.DataFrame: ...  # a row for each future

class Study:
    @property
    def samples(self) -> int: ...
    # folder: of its results; the one that it was opened from where it is left out
    def run(self, folder: str | PathLike[str] | None = None, threads: int = 0) -> dict[str, Any]: ...
    def summary(self, folder: str | PathLike[str] | None = None) -> dict[str, Any]: ...
    def to_dataframe(self, folder: str | PathLike[str] | None = None) -> pandas.DataFrame: ...

def read(source: dict[str, Any] | str | PathLike[str], *, folder: str | PathLike[str] = "") -> Scenario: ...
def odds(
    scenario: Scenario,
    futures: int = 1000,
    seed: int = 1,
    *,
    alive_at_h: float | None = None,
    now_h: float | None = None,
    threads: int = 0,
) -> Odds: ...
def compare(scenarios: Sequence[Scenario], futures: int = 200, seed: int = 1) -> dict[str, Any]: ...
def levers(scenario: Scenario) -> dict[str, Any]: ...
def inputs(scenario: Scenario) -> list[Input]: ...
def problem(scenario: Scenario) -> Problem: ...
def sample(scenario: Scenario, samples: int, seed: int = 1) -> NDArray[numpy.float64]: ...
def outputs(scenario: Scenario) -> list[tuple[str, str]]: ...
def evaluate(
    scenario: Scenario,
    points: ArrayLike,
    outputs: Sequence[str] = ...,
    *,
    scale: Literal["unit", "natural"] = "unit",
    threads: int = 0,
) -> pandas.DataFrame: ...
def open_study(path: str | PathLike[str]) -> Study: ...  # a study file, or a folder of results

"""The Python module against the program, and against what its points say: PROGRAM SOURCE_FOLDER."""
import ast
import csv
import functools
import json
import operator
import pathlib
import shutil
import signal
import subprocess
import sys
import threading
import time
import unittest

import numpy

import bide

PROGRAM, SOURCE = sys.argv.pop(1), pathlib.Path(sys.argv.pop(1))
MINIMAL = SOURCE / "tests/scenario/minimal.json"
FAILED = 3  # exit code when more than 1 % of the runs have no result
UNKNOWN = SOURCE / "scenarios/unknown_crew_cold_sea.json"

# Two inputs with bounds, so that places and values are each other's by hand: mass = 60 + 40 u, air = 12 u.
VARIED = json.loads(MINIMAL.read_text()) | {
    "uncertain": {
        "inputs": {
            "/crew/0/mass_kg": {"kind": "uniform", "low": 60, "high": 100},
            "/weather/air_temperature_degC": {"kind": "uniform", "low": 0, "high": 12},
        }
    }
}
# In the sea without a raft: everybody dies within the day, whatever the mass.
SEA = {key: value for key, value in VARIED.items() if key != "raft"} | {
    "boarding": {"kind": "none"},
    "weather": VARIED["weather"] | {"water_temperature_degC": 2},
}


def program(*arguments, due=0):
    done = subprocess.run([PROGRAM, *map(str, arguments)], stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True)
    assert done.returncode == due, done


def printed(*arguments):
    return json.loads(subprocess.run([PROGRAM, *map(str, arguments)], check=True, stdout=subprocess.PIPE).stdout)


def rows_of(path):
    with open(path, newline="") as text:
        return list(csv.DictReader(line for line in text if not line.startswith("#")))


class SameAsTheProgram(unittest.TestCase):
    def test_run(self):
        program("run", MINIMAL, "--json", "run.json")
        run = bide.read(MINIMAL).run()
        self.assertEqual(run.json, pathlib.Path("run.json").read_text())
        self.assertEqual(run.result["format"], "bide result 1")

    def test_odds(self):
        program("odds", UNKNOWN, "-n", 16, "--seed", 7, "--json", "odds.json")
        odds = bide.odds(bide.read(str(UNKNOWN)), 16, 7, threads=1)
        self.assertEqual(odds.json, pathlib.Path("odds.json").read_text())

    def test_compare_and_levers(self):
        colder = json.loads(MINIMAL.read_text())
        colder["weather"]["air_temperature_degC"] = 2
        pathlib.Path("colder.json").write_text(json.dumps(colder))
        both = [bide.read(MINIMAL), bide.read("colder.json")]
        self.assertEqual(bide.compare(both), printed("compare", MINIMAL, "colder.json", "--json", "-"))
        self.assertEqual(bide.levers(both[0]), printed("levers", MINIMAL, "--json", "-"))

    def test_course(self):
        program("run", MINIMAL, "--timeline", "course.csv")
        course = bide.read(MINIMAL).run().to_xarray()
        rows = rows_of("course.csv")
        self.assertEqual(course.sizes["time"], len(rows))
        self.assertEqual(list(course["person"].values), ["Person A"])
        compared = 0
        for name, variable in course.data_vars.items():
            self.assertIn("units", variable.attrs, name)
            if "time" not in variable.dims:
                continue
            column = f"person_a_{name}" if "person" in variable.dims else name
            expected = [float(row[column]) for row in rows]
            numpy.testing.assert_allclose(variable.values.reshape(-1), expected, rtol=1e-5, atol=1e-300, err_msg=name)
            compared += 1
        self.assertEqual(compared, len(rows[0]) - 2)  # all but the two columns of time
        self.assertEqual(course["core_degC"].attrs["units"], "degC")
        self.assertEqual(course["cabin_from_bodies_W"].attrs["units"], "W")
        self.assertEqual(course.attrs["Conventions"], "CF-1.10, ACDD-1.3")
        self.assertEqual(course.attrs["bide_fingerprint"], bide.fingerprint)

    def test_scenario_hash(self):
        """One scenario has one hash, however it was read, and any other has another."""

        def hash_of(source):
            return bide.read(source).run().to_xarray().attrs["scenario_hash"]

        of_file = hash_of(MINIMAL)
        self.assertRegex(of_file, "^fnv1a64:[0-9a-f]{16}$")
        self.assertEqual(hash_of(json.loads(MINIMAL.read_text())), of_file)
        self.assertNotEqual(hash_of(json.loads(MINIMAL.read_text()) | {"duration_h": 25}), of_file)
        self.assertEqual(bide.evaluate(bide.read(VARIED), [[0.5, 0.5]]).attrs["scenario_hash"], hash_of(VARIED))
        gale = SOURCE / "tests/cli/held_back"
        shutil.copy(gale / "gale.json", "gale.json")
        found = set()
        for more in ("", "# a line that says nothing\n"):
            pathlib.Path("gale.csv").write_text((gale / "gale.csv").read_text() + more)
            found.add(hash_of("gale.json"))
        self.assertEqual(len(found), 2)

    def test_study(self):
        study = {"format": "bide study 1", "scenario": "varied.json", "design": {"kind": "random", "samples": 12, "seed": 5}}
        for folder in ("by_program", "by_module"):
            shutil.rmtree(folder, ignore_errors=True)  # of an earlier build
        pathlib.Path("varied.json").write_text(json.dumps(VARIED))
        pathlib.Path("study.json").write_text(json.dumps(study))
        program("study", "study.json", "--out", "by_program", "--csv")
        opened = bide.open_study("study.json")
        self.assertEqual(opened.samples, 12)
        summary = json.loads(pathlib.Path("by_program/summary.json").read_text())
        self.assertEqual(opened.run("by_module"), summary)
        rows = rows_of("by_program/results.csv")
        table = opened.to_dataframe("by_module")
        evaluated = bide.evaluate(bide.read("varied.json"), bide.sample(bide.read("varied.json"), 12, 5))
        columns = list(rows[0])  # sample, two inputs, outputs
        for at, (name, unit) in enumerate(bide.outputs(bide.read("varied.json")), 3):
            expected = [float(row[columns[at]] or "nan") for row in rows]
            if name + " reached" in table:
                self.assertEqual(list(table[name + " reached"]), list(numpy.isfinite(expected)), name)
                expected = [24 if numpy.isnan(each) else each for each in expected]
            numpy.testing.assert_allclose(table[name], expected, rtol=1e-9, err_msg=name)
            numpy.testing.assert_array_equal(table[name], evaluated[name], err_msg=name)
        numpy.testing.assert_allclose(table["/crew/0/mass_kg"], [float(row["person_a_mass_kg"]) for row in rows])
        self.assertEqual(table.attrs["units"]["/crew/0/mass_kg"], "kg")

        # A folder of results opens by itself, whoever made it and wherever it is moved.
        with self.assertRaises(ValueError):
            opened.summary()  # of which folder?
        for folder in ("by_program", "by_module"):
            moved = pathlib.Path("moved") / folder
            shutil.rmtree(moved, ignore_errors=True)
            moved.parent.mkdir(exist_ok=True)
            shutil.move(folder, moved)
        pathlib.Path("study.json").unlink()
        pathlib.Path("varied.json").unlink()
        for folder in ("by_program", "by_module"):
            found = bide.open_study(pathlib.Path("moved") / folder)
            self.assertEqual(found.summary(), summary)
            self.assertTrue(found.to_dataframe().equals(table))
            self.assertEqual(found.run(), summary)
        with self.assertRaisesRegex(bide.Refused, "without study.inputs"):
            bide.open_study(SOURCE)


class OddsTables(unittest.TestCase):
    """Against the tables of the program. Three people in the sea; of every three draws one is refused by its mass."""

    def setUp(self):
        crew = [SEA["crew"][0], dict(SEA["crew"][0], mass_kg=95), dict(SEA["crew"][0], sex="female", mass_kg=62)]
        self.scenario = SEA | {
            "crew": crew,
            "weather": SEA["weather"] | {"water_temperature_degC": 12},
            "uncertain": {
                "inputs": {
                    "/crew/0/mass_kg": {"kind": "discrete", "values": [70, 90, 8]},
                    "/weather/water_temperature_degC": {"kind": "uniform", "low": 2, "high": 28},
                },
                "rescue": {"kind": "lognormal", "median_h": 12, "geometric_sd": 2},
            },
        }
        pathlib.Path("sea.json").write_text(json.dumps(self.scenario))
        self.read = bide.read("sea.json")

    def test_shares(self):
        program("odds", "sea.json", "-n", 90, "--seed", 3, "--csv", "odds.csv", "--no-levers", due=FAILED)
        table = bide.odds(self.read, 90, 3).to_dataframe()
        rows = rows_of("odds.csv")
        self.assertEqual(len(table), len(rows))
        names = {"at_h": "time_h"}
        for state in ("all_able", "some_able", "all_alive", "some_alive"):
            names |= {f"{state}.share": state, f"{state}.low": f"{state}_low", f"{state}.high": f"{state}_high"}
        for name, column in names.items():
            numpy.testing.assert_allclose(table[name], [float(row[column]) for row in rows], rtol=1e-5, err_msg=name)
        self.assertEqual(sorted(rows[0]), sorted(names.values()))
        self.attributes(table)
        self.assertEqual(table.attrs["units"]["at_h"], "h")
        self.assertEqual(set(table.attrs["units"]), set(table))

    def attributes(self, table):
        self.assertEqual((table.attrs["seed"], table.attrs["samples"]), (3, 90))
        self.assertEqual(table.attrs["notice"], bide.notice)
        self.assertEqual(table.attrs["bide_fingerprint"], bide.fingerprint)
        self.assertEqual(table.attrs["scenario_hash"], self.read.run().to_xarray().attrs["scenario_hash"])

    def test_futures(self):
        table = bide.odds(self.read, 90, 3).futures()
        self.attributes(table)
        study = {"format": "bide study 1", "scenario": "sea.json", "design": {"kind": "random", "samples": 90, "seed": 3}}
        pathlib.Path("sea_study.json").write_text(json.dumps(study))
        shutil.rmtree("sea_study", ignore_errors=True)
        program("study", "sea_study.json", "--out", "sea_study", "--csv", due=FAILED)
        rows = rows_of("sea_study/results.csv")
        self.assertEqual(list(table.index), list(range(90)))
        self.assertEqual([bool(each) for each in table["failure"]], [bool(row["failed_because"]) for row in rows])
        kept = table["failure"] == ""
        self.assertGreater(kept.sum(), 30)
        self.assertLess(kept.sum(), 90)
        reached = set()
        for who in ("first", "half", "last"):
            for state in ("able", "alive"):
                name = f"{who} {state} until"
                due = numpy.array([float(row[f"{who}_{state}_until_h"] or "nan") for row in rows])
                numpy.testing.assert_array_equal(table[name + " reached"], numpy.isfinite(due), err_msg=name)
                due[kept & ~numpy.isfinite(due)] = 24
                numpy.testing.assert_allclose(table[name], due, rtol=1e-5, err_msg=name)
                self.assertEqual(list(table[f"{who} {state} ended by"] != ""), list(table[name + " reached"]), name)
                self.assertEqual(table.attrs["units"][name], "h")
                reached |= set(table.loc[kept, name + " reached"])
        self.assertEqual(reached, {True, False})  # or the table would show one of them only

    def test_futures_and_json(self):
        program("odds", "sea.json", "-n", 90, "--seed", 3, "--alive-at", 6, "--json", "known.json", "--no-levers", due=FAILED)
        told = json.loads(pathlib.Path("known.json").read_text())
        table = bide.odds(self.read, 90, 3, alive_at_h=6).futures()
        kept = table[table["failure"] == ""]
        left = kept[kept["agrees with what is known"]]
        self.assertEqual((len(left), len(kept) - len(left)), (told["futures"], told["ruled_out"]))
        self.assertGreater(told["ruled_out"], 0)
        self.assertTrue((left["first alive until"] >= 6).all())
        self.assertEqual([each["sample"] for each in told["failed"]], list(table.index[table["failure"] != ""]))
        for who, key in (("first", "first_person"), ("half", "half_of_crew"), ("last", "last_person")):
            for state in ("able", "alive"):
                beyond = told[state][key]["not_reached_within_horizon"]["count"]
                self.assertEqual((~left[f"{who} {state} until reached"]).sum(), beyond, (who, state))
        causes = left["first able ended by"].replace("", numpy.nan).value_counts(normalize=False) / len(left)
        self.assertEqual({key: round(value, 6) for key, value in causes.items()},
                         {key: round(value, 6) for key, value in told["causes"][-1]["first_able_ended_by"].items()})
        self.assertEqual((~left["help comes reached"]).sum(), told["help"]["none_within_horizon"]["count"])
        for each in told["against_time"]:
            self.assertEqual((left["first able until"] > each["at_h"]).sum() if each["at_h"] < 24 else
                             (~left["first able until reached"]).sum(), each["all_able"]["count"], each["at_h"])


class Indices(unittest.TestCase):
    def test_rows_and_total_index(self):
        """The rows are those that README.md tells; Jansen's total index (1999), worked out here."""
        pathlib.Path("varied.json").write_text(json.dumps(VARIED))
        figure = "Person A lowest core"
        study = {
            "format": "bide study 1",
            "scenario": "varied.json",
            "design": {"kind": "saltelli", "samples": 8},
            "outputs": [figure],
        }
        pathlib.Path("saltelli.json").write_text(json.dumps(study))
        shutil.rmtree("saltelli", ignore_errors=True)
        opened = bide.open_study("saltelli.json")
        told = opened.run("saltelli")["what_it_depends_on"][0]["inputs"]
        table = opened.to_dataframe("saltelli")
        names = ["/crew/0/mass_kg", "/weather/air_temperature_degC"]
        rows = table[names].to_numpy().reshape(8, 4, 2)
        a, b, mixed = rows[:, 0], rows[:, 1], rows[:, 2:]
        for i in range(2):
            numpy.testing.assert_array_equal(mixed[:, i, i], b[:, i])
            numpy.testing.assert_array_equal(mixed[:, i, 1 - i], a[:, 1 - i])
        inputs = 2
        salib = table[figure].to_numpy().reshape(-1, inputs + 2)[:, [0, *range(2, inputs + 2), 1]].ravel().reshape(-1, 4)
        of_a, of_mixed, of_b = salib[:, 0], salib[:, 1:-1], salib[:, -1]
        variance = numpy.concatenate([of_a, of_b]).var()
        for i, name in enumerate(names):
            self.assertEqual(told[i]["input"], name)
            self.assertAlmostEqual(told[i]["total"], ((of_a - of_mixed[:, i]) ** 2).mean() / 2 / variance, places=9)
            first = (of_b * (of_mixed[:, i] - of_a)).mean()  # Saltelli et al. (2010), with the outputs centred
            first -= numpy.concatenate([of_a, of_b]).mean() * (of_mixed[:, i] - of_a).mean()
            self.assertAlmostEqual(told[i]["first"], first / variance, places=9)


class OwnPoints(unittest.TestCase):
    def setUp(self):
        self.scenario = bide.read(VARIED)

    def test_problem(self):
        self.assertEqual(
            bide.problem(self.scenario),
            {"num_vars": 2, "names": ["/crew/0/mass_kg", "/weather/air_temperature_degC"], "bounds": [[0, 1], [0, 1]]},
        )
        self.assertTrue(all(each["has_value"] and each["kind"] == "aleatory" for each in bide.inputs(self.scenario)))

    def test_scales_agree(self):
        places = numpy.array([[0.25, 0.5], [0.75, 0.125], [0.5, 1.0]])
        values = numpy.array([[70, 6], [90, 1.5], [80, 12]])
        wanted = ["Person A lowest core", "coldest inside"]
        by_place = bide.evaluate(self.scenario, places, wanted)
        by_value = bide.evaluate(self.scenario, values, wanted, scale="natural")
        for name in wanted:
            numpy.testing.assert_allclose(by_place[name], by_value[name], rtol=1e-9)
            self.assertEqual(len(set(by_place[name])), 3, name)
        self.assertEqual(by_place.attrs["units"], {"Person A lowest core": "degC", "coldest inside": "degC"})

    def test_value_is_what_a_file_says(self):
        written = json.loads(MINIMAL.read_text())
        written["crew"][0]["mass_kg"] = 90
        written["weather"]["air_temperature_degC"] = 1.5
        run = bide.read(written).run().result
        row = bide.evaluate(self.scenario, [[90, 1.5]], scale="natural").iloc[0]
        # One run is marched alone, the other in lanes.
        self.assertAlmostEqual(row["Person A lowest core"], run["persons"][0]["lowest_core_degC"], delta=1e-4)
        self.assertAlmostEqual(row["coldest inside"], run["cabin"]["coldest_inside_degC"]["value"], delta=1e-4)

    def test_rows_and_threads(self):
        points = bide.sample(self.scenario, 11, 3)
        together = bide.evaluate(self.scenario, points, threads=2)
        for k in (0, 10):
            alone = bide.evaluate(self.scenario, points[k : k + 1], threads=1)
            self.assertTrue(alone.iloc[0].equals(together.iloc[k]), k)

    def test_times(self):
        ashore = bide.evaluate(self.scenario, [[0.5, 0.5]])
        self.assertEqual((ashore["first alive until"][0], ashore["first alive until reached"][0]), (24, False))
        at_sea = bide.evaluate(bide.read(SEA), [[0.5, 0.5]])
        self.assertTrue(at_sea["first alive until reached"][0])
        self.assertLess(at_sea["first alive until"][0], 24)

    def test_a_point_that_is_refused(self):
        table = bide.evaluate(self.scenario, [[80, 6], [5000, 6]], ["coldest core"], scale="natural")
        self.assertTrue(numpy.isfinite(table["coldest core"][0]))
        self.assertTrue(numpy.isnan(table["coldest core"][1]))
        self.assertEqual(table["failure"][0], "")
        self.assertIn("/crew/0/mass_kg: found 5000", table["failure"][1])

    def test_the_lock_is_free(self):
        ticks, done = [0], threading.Event()

        def tick():
            while not done.is_set():
                ticks[0] += 1
                time.sleep(0.001)

        thread = threading.Thread(target=tick)
        thread.start()
        before = ticks[0]
        bide.evaluate(self.scenario, bide.sample(self.scenario, 64))
        after = ticks[0]
        done.set()
        thread.join()
        self.assertGreater(after - before, 3)


class Interrupts(unittest.TestCase):
    """Ctrl-C ends a long question while it runs, not after it."""

    def ends(self, call, argument):
        kept = []
        signal.setitimer(signal.ITIMER_REAL, 0.03)
        with self.assertRaises(KeyboardInterrupt):
            # No line of Python stands between the call and what keeps its result, so that an answer that was found
            # before the signal was looked for is kept.
            kept.extend(map(call, [argument]))
            time.sleep(1)  # the signal came after the answer
        self.assertEqual(kept, [])

    def setUp(self):
        signal.signal(signal.SIGALRM, signal.default_int_handler)
        self.addCleanup(signal.signal, signal.SIGALRM, signal.SIG_DFL)
        crew = [dict(VARIED["crew"][0]) for _ in range(4)]
        self.long = VARIED | {"crew": crew, "duration_h": 960, "raft": {"kind": "offshore_4"}}

    def test_questions(self):
        scenario = bide.read(self.long)
        run = scenario.run()
        for call, argument in (
            (bide.Scenario.run, scenario),
            (operator.attrgetter("json"), run),
            (bide.levers, scenario),
            (bide.compare, [scenario, scenario]),
            (functools.partial(bide.odds, scenario), 100000),
            (functools.partial(bide.evaluate, scenario), bide.sample(scenario, 10000)),
        ):
            with self.subTest(call):
                self.ends(call, argument)

    def test_study(self):
        pathlib.Path("varied.json").write_text(json.dumps(VARIED))
        study = {"format": "bide study 1", "scenario": "varied.json", "design": {"kind": "saltelli", "samples": 1024}}
        pathlib.Path("interrupted.json").write_text(json.dumps(study))
        shutil.rmtree("interrupted", ignore_errors=True)
        opened = bide.open_study("interrupted.json")
        self.ends(opened.run, "interrupted")
        opened.run("interrupted")
        self.ends(opened.summary, "interrupted")


class Refusals(unittest.TestCase):
    def refused(self, pointer, message, call, *arguments, **named):
        with self.assertRaises(bide.Refused) as caught:
            call(*arguments, **named)
        self.assertIsInstance(caught.exception, ValueError)
        found = {each["pointer"]: each["message"] for each in caught.exception.reasons}
        self.assertIn(pointer, found)
        self.assertIn(message, found[pointer])
        self.assertIn(message, str(caught.exception))

    def test_reading(self):
        self.refused("", "no such file", bide.read, "no_such_file.json")
        self.refused("/crew/0/mass_kgs", "mass_kg", bide.read, {**VARIED, "crew": [{**VARIED["crew"][0], "mass_kgs": 1}]})
        self.refused("/raft", "found", bide.read, json.dumps({**VARIED, "raft": 3}))
        with self.assertRaises(TypeError):
            bide.read(7)

    def test_questions(self):
        self.refused("/uncertain", "uncertain", bide.odds, bide.read(MINIMAL))
        self.refused("/uncertain", "missing", bide.evaluate, bide.read(MINIMAL), [[0.5]])
        with self.assertRaises(ValueError):
            bide.odds(bide.read(VARIED), 0)

    def test_points(self):
        scenario = bide.read(VARIED)
        self.refused("/1/0", "found 1.5", bide.evaluate, scenario, [[0.5, 0.5], [1.5, 0.5]])
        self.refused("/0/1", "found nan", bide.evaluate, scenario, [[0.5, float("nan")]])
        self.refused("/0/1", "found inf", bide.evaluate, scenario, [[80, float("inf")]], scale="natural")
        self.refused("", "found 3 columns; allowed 2", bide.evaluate, scenario, [[0.5, 0.5, 0.5]])
        self.refused("/outputs/0", 'did you mean "coldest core"', bide.evaluate, scenario, [[0.5, 0.5]], ["coldest cor"])
        for points, scale in (([0.5, 0.5], "unit"), ([[0.5, 0.5]], "metric")):
            with self.assertRaises(ValueError):
                bide.evaluate(scenario, points, scale=scale)


class Stub(unittest.TestCase):
    def test_names(self):
        tree = ast.parse((SOURCE / "tools/python/bide.pyi").read_text())
        named = {each.name for each in tree.body if isinstance(each, (ast.FunctionDef, ast.ClassDef))}
        named |= {each.target.id for each in tree.body if isinstance(each, ast.AnnAssign)}
        only_types = {"Reason", "Input", "Problem"}
        own = {name for name in dir(bide) if not name.startswith("__")} | {"__version__"}
        self.assertEqual(named - only_types, own)
        for kind in (each for each in tree.body if isinstance(each, ast.ClassDef) and each.name not in only_types):
            members = {each.name for each in kind.body if isinstance(each, ast.FunctionDef)}
            found = {name for name in vars(getattr(bide, kind.name)) if not name.startswith("_")}
            if kind.name != "Refused":
                self.assertEqual(members, found, kind.name)

    def test_words(self):
        for kind in (bide.Scenario, bide.Run, bide.Odds, bide.Study):
            for name, member in vars(kind).items():
                self.assertTrue(name.startswith("_") or member.__doc__, f"{kind.__name__}.{name}")
        for name in dir(bide):
            if callable(getattr(bide, name)) and not name.startswith("__"):
                self.assertTrue(getattr(bide, name).__doc__, name)
        self.assertEqual(len(bide.fingerprint), 64)
        self.assertTrue(bide.notice.startswith("Planning and training aid."))


if __name__ == "__main__":
    unittest.main()

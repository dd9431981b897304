"""A study's NetCDF file, opened by xarray as CF says, against its CSV: results.nc results.csv VERSION FINGERPRINT."""
import csv
import sys

import xarray

table = xarray.open_dataset(sys.argv[1])
with open(sys.argv[2], newline="") as text:
    rows = list(csv.DictReader(line for line in text if not line.startswith("#")))
assert table.attrs["Conventions"].startswith("CF-"), table.attrs
assert table.sizes["sample"] == len(rows) > 0, (table.sizes, len(rows))
name = "input_crew_0_mass_kg"
assert table[name].attrs["units"] == "kg", table[name].attrs
columns = [key for key in rows[0] if "mass_kg" in key]
assert len(columns) == 1, list(rows[0])
for row, value in zip(rows, table[name].values):
    assert abs(float(row[columns[0]]) - value) < 1e-6 * value, (row, value)
# Hours stay numbers, people are a dimension, and the file says what made it.
for name in ("first_able_until", "able_until"):
    assert table[name].dtype.kind == "f" and table[name].attrs["units"] == "h", (name, table[name])
assert table["sample"].dtype.kind == "i", table["sample"]
assert list(table["sample"].values) == list(range(len(rows)))
assert list(table["person"].values) == ["Person A"], table["person"]
assert table["lowest_core"].dims == ("sample", "person"), table["lowest_core"].dims
for row, value in zip(rows, table["lowest_core"].sel(person="Person A").values):
    assert abs(float(row["person_a_lowest_core_degC"]) - value) < 1e-6 * value, (row, value)
program, model = sys.argv[3:5]
assert table.attrs["bide_version"] == program, table.attrs
assert table.attrs["bide_fingerprint"] == model, table.attrs
assert len(table.attrs["scenario_hash"]) == len("fnv1a64:") + 16, table.attrs
assert int(table.attrs["seed"]) == 1 and "bide study" in table.attrs["command"], table.attrs

"""A study's NetCDF file, opened by xarray as CF says, against its CSV: results.nc results.csv."""
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
assert table["first_able_until"].dtype.kind == "M", "a time is not decoded as a time"

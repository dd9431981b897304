"""bide weather on files that others made, against xarray's reading of them: BIDE FOLDER DATA."""
import csv
import os
import subprocess
import sys

import numpy
import xarray

bide, folder, data = sys.argv[1:]
os.chdir(folder)
grids, stations = f"{data}/nug", f"{data}/cdf"
tas, uas, vas = (f"{grids}/{name}_rectilinear_grid_2D.nc" for name in ("tas", "uas", "vas"))


def weather(*files, place="10,-30", first="2005-01-16T12:00Z", last="2005-12-16T12:00Z", reach="150"):
    return subprocess.run([bide, "weather", *files, "--place", place, "--from", first, "--to", last, "--reach", reach],
                          capture_output=True, text=True, timeout=300)


def refused(file, *says):
    done = weather(file)
    assert done.returncode == 2 and done.stdout == "", (file, done)
    for part in (file, *says):
        assert part in done.stderr, (part, done.stderr)


# The middles of the months are 30.5 days apart in the median.
# A climate model's year of monthly means, three files, at places on both sides of the meridian and near the pole.
for place in ((10, -30), (-33, 18), (58, -0.4), (-60, 179.9), (85, 10)):
    done = weather(tas, uas, vas, place=f"{place[0]},{place[1]}")
    assert done.returncode == 0, done.stderr
    assert "values 732 h apart; a scenario bridges 3 h unless it states /weather/longest_gap_h" in done.stderr, done.stderr
    assert "the speed of a mean wind is lower than the mean speed" in done.stderr
    rows = list(csv.DictReader(line for line in done.stdout.splitlines() if not line.startswith("#")))
    assert len(rows) == 12, len(rows)

    def nearest(file, name):
        with xarray.open_dataset(file) as opened:
            padded = opened[name].pad(lon=1, mode="wrap")  # the circle closed
            lon = opened["lon"].values
            padded = padded.assign_coords(lon=numpy.concatenate([[lon[-1] - 360], lon, [lon[0] + 360]]))
            return padded.sel(lat=place[0], lon=place[1] % 360, method="nearest").load()

    t, u, v = nearest(tas, "tas"), nearest(uas, "uas"), nearest(vas, "vas")
    for k, row in enumerate(rows):
        assert row["time_utc"] == str(t["time"].values[k])[:19] + "Z", row
        assert abs(float(row["air_temperature_degC"]) - (float(t[k]) - 273.15)) < 1e-3, (place, row, float(t[k]))
        assert abs(float(row["wind_speed_m_s"]) - numpy.hypot(float(u[k]), float(v[k]))) < 1e-3, (place, row)

refused(f"{grids}/tos_ocean_bipolar_grid.nc", "tos(time, y, x): found latitude in 2 dimensions, lat(y, x)")
refused(f"{grids}/tas_rotated_grid_EUR11.nc", "found a rotated or projected grid, rlat(rlat)")
refused(f"{grids}/tas_mod2_hist_rectilin_grid_2D.nc", 'time:calendar: found "360_day"; allowed standard')
refused(f"{grids}/tas_mod1_hist_rectilin_grid_2D.nc", "tas: found the nearest cell", "allowed 150 km (--reach)")
refused(f"{stations}/sstdata_netcdf.nc", 'time:units: found "Month"; allowed days')
refused(f"{stations}/sstanom.robinsonproj.nc", "SST(lat, lon): found no time")
refused(f"{stations}/95031800_sao.cdf", "found the variables id, region, time, lat, lon, elev, T")

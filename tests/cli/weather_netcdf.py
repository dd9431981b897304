"""bide weather on NetCDF files with the encodings of the common reanalysis layouts, made here: BIDE FOLDER.

Every value that is asked for is computed here from the formulas that fill the files.
"""
import csv
import json
import math
import os
import random
import subprocess
import sys

import netCDF4
import numpy
import xarray

bide, folder = sys.argv[1], sys.argv[2]
os.chdir(folder)

ENOUGH = ["--place", "10.1,-30.1", "--from", "2020-01-01T00:00Z", "--to", "2020-01-02T23:00Z"]


def weather(files, *options, code=0, says="", usual=ENOUGH):
    """Runs the command; asks for its exit code and for what it says. The rows by column, or nothing."""
    made = [bide, "weather", *files, *usual, *options]
    done = subprocess.run(made, capture_output=True, text=True, timeout=600)
    assert done.returncode == code and says in done.stderr, (made, code, says, done.returncode, done.stderr)
    if code != 0:
        assert done.stdout == "", done.stdout
        return None
    lines = done.stdout.splitlines()
    assert lines[0].startswith("# weather at latitude 10.1, longitude -30.1"), lines[0]
    rows = list(csv.DictReader(line for line in lines if not line.startswith("#")))
    return {key: [row[key] for row in rows] for key in rows[0]}


def near(found, expected, within):
    assert len(found) == len(expected), (len(found), len(expected))
    for got, want in zip(found, expected):
        assert (got == "") == math.isnan(want), (got, want)
        assert got == "" or abs(float(got) - want) <= within, (got, want, within)


hours = numpy.arange(48)
times = numpy.datetime64("2020-01-01T00:00", "ns") + hours * numpy.timedelta64(1, "h")
north = numpy.arange(11, 8.99, -0.25)  # descending
east = numpy.arange(328, 332.01, 0.25)  # of 0 to 360
HERE = (4, 8)  # 10 N 30 W, the nearest cell; land in these files
SEA = (4, 7)  # 10 N 30.25 W, the nearest cell of the sea


def field(mean, north_step=0.1, east_step=0.01, hour_step=0.05):
    """A field of which every cell and hour differs."""
    return (mean + north_step * north[None, :, None] + east_step * east[None, None, :]
            + hour_step * hours[:, None, None])


def at(values, cell=SEA):
    return values[:, cell[0], cell[1]]


truth = {
    "t2m": field(285.0), "d2m": field(281.0), "sst": field(287.0), "u10": field(-9.0, hour_step=0.2), "v10": field(4.0),
    "msl": field(101000.0, 10, 1, 5), "tcc": numpy.clip(field(-2.8, 0, 0.01, 0.02), 0, 1),
    "tp": numpy.abs(numpy.sin(field(0, 0.1, 0.01, 0.9))) * 2e-3,
}
truth["sst"][:, HERE[0], HERE[1]] = numpy.nan
units = {"t2m": "K", "d2m": "K", "sst": "K", "u10": "m s**-1", "v10": "m s**-1", "msl": "Pa", "tcc": "(0 - 1)", "tp": "m",
         "swh": "m", "mwp": "s", "mp2": "s"}


def dataset(time, names, dims=None, **coordinates):
    dims = dims or (time, "latitude", "longitude")
    out = xarray.Dataset({name: (dims, truth[name], {"units": units[name]}) for name in names},
                         coords={time: times, "latitude": ("latitude", north, {"units": "degrees_north"}),
                                 "longitude": ("longitude", east, {"units": "degrees_east"}), **coordinates})
    return out


def check_atmosphere(columns, within=1e-3, cell=SEA, wind_within=None):
    k = 273.15
    near(columns["air_temperature_degC"], at(truth["t2m"], cell) - k, within)
    near(columns["dew_point_degC"], at(truth["d2m"], cell) - k, within)
    near(columns["water_temperature_degC"], at(truth["sst"], cell) - k, within)
    near(columns["wind_speed_m_s"], numpy.hypot(at(truth["u10"], cell), at(truth["v10"], cell)), wind_within or within)
    near(columns["pressure_hPa"], at(truth["msl"], cell) / 100, within)
    near(columns["cloud_cover_fraction"], at(truth["tcc"], cell), within)
    near(columns["rain_mm_h"], at(truth["tp"], cell) * 1000, within)
    assert columns["time_utc"] == [str(t)[:19] + "Z" for t in times], columns["time_utc"]


# The older layout: 16-bit integers, hours since 1900. The offsets are such that a fill value, unpacked, would be a
# value like any other.
packed = {}
for name in truth:
    low, high = numpy.nanmin(truth[name]), numpy.nanmax(truth[name])
    step = (high - low) / 65000
    packed[name] = {"dtype": "i2", "scale_factor": step, "add_offset": (high + low) / 2, "_FillValue": -32767,
                    "missing_value": numpy.int16(-32767)}
packed["time"] = {"units": "hours since 1900-01-01 00:00:00.0", "calendar": "gregorian", "dtype": "i4"}
old = dataset("time", truth)
old.to_netcdf("old.nc", format="NETCDF3_64BIT", encoding=packed)
with netCDF4.Dataset("old.nc") as raw:
    raw.set_auto_maskandscale(False)
    assert raw["sst"].dtype == numpy.int16 and raw["time"][0] == 1051896
    assert raw["sst"][0, HERE[0], HERE[1]] == -32767
check_atmosphere(weather(["old.nc"], says="10.00 N 30.25 W, 19.8 km from the place"), within=2e-3)

# The newer layout: floats in compressed chunks, seconds since 1970, marks of the version by time; waves in a file and on
# a grid of their own, without values over land.
version = ("valid_time", numpy.array(["0001"] * 40 + ["0005"] * 8, dtype=object))
new = dataset("valid_time", truth, expver=version, number=((), 0))
floats = {name: {"dtype": "f4", "zlib": True, "_FillValue": numpy.float32(numpy.nan)} for name in truth}
floats["valid_time"] = {"units": "seconds since 1970-01-01", "calendar": "proleptic_gregorian", "dtype": "i8"}
new.to_netcdf("new.nc", encoding=floats)
wave_north, wave_east = numpy.arange(11, 8.9, -0.5), numpy.arange(328, 332.1, 0.5)
swh = 2 + 0.1 * wave_north[None, :, None] + 0.01 * wave_east[None, None, :] + 0.02 * hours[:, None, None]
swh[:, 2, 4] = numpy.nan  # 10 N 30 W
waves = xarray.Dataset(
    {"swh": (("valid_time", "latitude", "longitude"), swh, {"units": "m"}),
     "mwp": (("valid_time", "latitude", "longitude"), swh * 2, {"units": "s"})},
    coords={"valid_time": times, "latitude": ("latitude", wave_north, {"units": "degrees_north"}),
            "longitude": ("longitude", wave_east, {"units": "degrees_east"})})
waves.to_netcdf("waves.nc", encoding={"valid_time": floats["valid_time"]})
columns = weather(["new.nc", "waves.nc"], says="8 of 48 values preliminary (expver)")
check_atmosphere(columns)
# The nearest cell of the waves is 10 N 30 W, which is land; 10 N 30.5 W is next.
near(columns["wave_height_m"], swh[:, 2, 3], 1e-3)
# Of Bretschneider's spectrum, by hand: 1 / (pi^(1/4) gamma(5/4)) = 1 / (1.331335 x 0.906403).
near(columns["wave_period_s"], 2 * swh[:, 2, 3] * 0.828694, 2e-3)
assert weather(["new.nc"], says="no wave height").keys() == columns.keys() - {"wave_height_m", "wave_period_s"}

# A dimension of versions: the final one where it has values, else the preliminary one.
both = numpy.full((48, 2, len(north), len(east)), numpy.nan)
both[:40, 0], both[40:, 1] = truth["t2m"][:40], truth["t2m"][40:]
sst = numpy.stack([truth["sst"], truth["sst"] + 1], axis=1)  # the final one wins where both have values
mixed = dataset("time", ["u10"])
mixed["t2m"] = (("time", "expver", "latitude", "longitude"), both, {"units": "K"})
mixed["sst"] = (("time", "expver", "latitude", "longitude"), sst, {"units": "K"})
mixed = mixed.assign_coords(expver=[1, 5])
mixed.drop_vars("u10").to_netcdf("expver.nc", encoding={name: packed[name] for name in ("t2m", "time")})
columns = weather(["expver.nc"], says="8 of 48 values preliminary (expver)")
near(columns["air_temperature_degC"], at(truth["t2m"]) - 273.15, 2e-3)
near(columns["water_temperature_degC"], at(truth["sst"]) - 273.15, 1e-3)

# Longitude first, and a grid that begins west of the meridian.
turned = new[["t2m", "sst"]].transpose("valid_time", "longitude", "latitude")
turned = turned.assign_coords(longitude=("longitude", east - 360, {"units": "degrees_east"}))
turned.to_netcdf("turned.nc")
near(weather(["turned.nc"], "--reach", "80")["air_temperature_degC"], at(truth["t2m"]) - 273.15, 1e-3)

# One point, as xarray's sel() leaves it; parts of the time in two files; a variable known by its standard name alone.
new.isel(latitude=SEA[0], longitude=SEA[1]).to_netcdf("point.nc")
check_atmosphere(weather(["point.nc"]))
new.isel(valid_time=slice(0, 20)).to_netcdf("first.nc")
new.isel(valid_time=slice(18, 48)).to_netcdf("second.nc")
check_atmosphere(weather(["second.nc", "first.nc"]))
weather(["first.nc"], code=2, says="first.nc: t2m holds 2020-01-01T00:00:00Z to 2020-01-01T19:00:00Z; asked for")
other = new.isel(valid_time=slice(18, 48)).copy(deep=True)
other["t2m"] += 1
other.to_netcdf("other.nc")
weather(["first.nc", "other.nc"], code=2,
        says="other.nc: t2m and t2m of first.nc contradict each other at 2020-01-01T18:00:00Z: ")
named = new[["t2m"]].rename(t2m="warmth")
named["warmth"].attrs = {"standard_name": "air_temperature", "units": "degC"}
named["warmth"] = named["warmth"] - 273.15
named["warmth"].attrs = {"standard_name": "air_temperature", "units": "degC"}
named.to_netcdf("named.nc")
near(weather(["named.nc"], says="nothing tells land from sea")["air_temperature_degC"], at(truth["t2m"], HERE) - 273.15, 1e-3)

# Rain: three-hourly times must be explained; a running total is noticed; bounds of time explain themselves.
weather(["threes.nc"], code=2, says="threes.nc: found no such file")
threes = new.isel(valid_time=slice(0, 48, 3))
threes.to_netcdf("threes.nc")
upto = [*ENOUGH[:-1], "2020-01-02T21:00Z"]
weather(["threes.nc"], code=2, says="threes.nc: tp: found amounts of rain at times 3 h apart", usual=upto)
near(weather(["threes.nc"], "--rain", "1", usual=upto)["rain_mm_h"], at(truth["tp"])[::3] * 1000, 1e-3)
near(weather(["threes.nc"], "--rain", "3", usual=upto)["rain_mm_h"], at(truth["tp"])[::3] * 1000 / 3, 1e-3)
total = new[["sst"]].assign(tp=(new["tp"].dims, numpy.cumsum(truth["tp"], axis=0), {"units": "m"}))
total.to_netcdf("total.nc")
weather(["total.nc"], code=2, says="total.nc: tp: found amounts of rain that rise 47 times and fall 0 times, as a running total does; allowed with --rain running")
rates = at(truth["tp"]) * 1000
rates[0] = math.nan
near(weather(["total.nc"], "--rain", "running")["rain_mm_h"], rates, 1e-3)
later = weather(["total.nc"], "--rain", "running", "--from", "2020-01-01T05:00Z", usual=ENOUGH[:2] + ENOUGH[4:])
near(later["rain_mm_h"], at(truth["tp"])[5:] * 1000, 1e-3)

# A buoy's text takes the place of whole columns, its wind brought from 5 to 10 m: ln(10 / 2e-4) / ln(5 / 2e-4) = 1.068448.
with open("buoy.txt", "w") as text:
    text.write("#YY  MM DD hh mm WDIR WSPD GST  WVHT   DPD   APD MWD   PRES  ATMP  WTMP  DEWP\n")
    for hour in range(-1, 49):
        when = numpy.datetime64("2020-01-01T00:50") + numpy.timedelta64(hour, "h")
        stamp = str(when).replace("-", " ").replace("T", " ").replace(":", " ")
        air = "999.0" if 10 <= hour < 20 else "9.5"  # a gap of more than three hours
        text.write(f"{stamp} 200  {8 + hour / 100:.2f} 9.0  1.50  6.00  4.50 MM 1012.0 {air}  11.5 MM\n")
columns = weather(["new.nc", "buoy.txt"], says="buoy.txt: air temperature is not used: air temperature is missing from")
near([v for v in columns["air_temperature_degC"] if v], at(truth["t2m"]) - 273.15, 1e-3)
near([v for v in columns["dew_point_degC"] if v], at(truth["d2m"]) - 273.15, 1e-3)
assert set(columns["water_temperature_degC"]) == {"", "11.500"} and set(columns["wave_period_s"]) == {"", "4.500"}
near([v for v in columns["wind_speed_m_s"] if v], [1.068448 * (8 + h / 100) for h in range(-1, 48)], 2e-3)
weather(["buoy.txt"], code=1, says="found no NetCDF file")
with open("buoy.txt", "a") as text:
    text.write("2020 01 01 03 50 200 x 1 1 1 1 1 1 1 1 1\n")
weather(["new.nc", "buoy.txt"], code=2, says="buoy.txt: line 52: WSPD \"x\" is no number")

# What is refused, each with file, place in the file, what was found and what is allowed.
def refused(name, data, says, encoding=None, options=()):
    data.to_netcdf(name, encoding=encoding or {})
    weather([name], *options, code=2, says=f"{name}: {says}")


for calendar in ("360_day", "noleap"):
    data = new[["t2m"]].assign_coords(valid_time=("valid_time", hours.astype("f8"),
                                                  {"units": "hours since 2020-01-01", "calendar": calendar}))
    refused("calendar.nc", data, f'valid_time:calendar: found "{calendar}"; allowed standard, gregorian or')
months = new[["t2m"]].assign_coords(valid_time=("valid_time", hours.astype("f8"), {"units": "months since 2020-01-01"}))
refused("months.nc", months, 'valid_time:units: found "months since 2020-01-01"; allowed days, hours')
curved = xarray.Dataset({"t2m": (("time", "y", "x"), truth["t2m"], {"units": "K", "coordinates": "lat lon"})},
                        coords={"time": times})
for name, unit, values in (("lat", "degrees_north", north[:, None] + 0 * east), ("lon", "degrees_east", 0 * north[:, None] + east)):
    curved[name] = (("y", "x"), values, {"units": unit})
refused("curved.nc", curved, "t2m(time, y, x): found latitude in 2 dimensions, lat(y, x); allowed one dimension")
members = xarray.concat([new[["t2m"]].drop_vars("number")] * 3, "number")
refused("members.nc", members, "t2m(number, valid_time, latitude, longitude): found 3 values along dimension number; allowed")
level = new[["t2m"]].rename(t2m="t").drop_vars("number").expand_dims(pressure_level=[850.0])
level["pressure_level"].attrs["units"] = "hPa"
level["t"].attrs["standard_name"] = "air_temperature"
refused("level.nc", level, "t: found air temperature at a level of 850 hPa; allowed at most 10 m above the surface")
high = new[["u10"]]
high["u10"].attrs["long_name"] = "100 metre U wind component"
refused("high.nc", high, "u10: found eastward wind at 100 m; allowed 10 m")
new["u10"].attrs.pop("long_name", None)
fahrenheit = new[["t2m"]].copy(deep=True)
fahrenheit["t2m"].attrs["units"] = "degF"
refused("units.nc", fahrenheit, 't2m:units: found "degF"; allowed K or degC')
hot = new[["t2m"]] + 300
hot["t2m"].attrs["units"] = "K"
refused("hot.nc", hot, "t2m at 2020-01-01T00:00:00Z: air temperature 3")
unordered = new[["t2m"]].isel(valid_time=slice(None, None, -1))
refused("unordered.nc", unordered, "valid_time: found")
land = new[["t2m", "sst"]].copy(deep=True)
land["sst"][:] = numpy.nan
refused("land.nc", land, "sst: found no cell of the sea with a value within 100 km of the place")
refused("nothing.nc", new[["t2m"]].rename(t2m="z"), "found the variables")
weather(["new.nc"], "--place", "40,20", code=2, says="sst: found the nearest cell", usual=ENOUGH[2:])
with open("zipped.nc", "wb") as file:
    file.write(b"PK\3\4 and so on")
weather(["zipped.nc"], code=2, says="zipped.nc: found a zip archive")
with open("empty.nc", "wb"):
    pass
weather(["empty.nc"], code=2, says="empty.nc: is no NetCDF file that can be read")
for name, value in (("--place", "95,0"), ("--place", "here"), ("--from", "yesterday"), ("--rain", "0"), ("--rain", "all"),
                    ("--to", "2019-01-01T00:00Z"), ("--reach", "0"), ("--buoy-wind-height", "50")):
    rest = [word for i in range(0, len(ENOUGH), 2) if ENOUGH[i] != name for word in ENOUGH[i:i + 2]]
    weather(["new.nc"], name, value, code=1, says=name, usual=rest)

# Letters that steer a terminal, in names and attributes, come out neither in the table nor in what is said. Names of
# variables hold no controls below 32.
MARKS = "\u009bY\u202eZ\u2066\u200b\u2028"
STEERING = f"\x1b[31mX\x07{MARKS}"
shown = 0
for changed in ("file", "variable", "units", "standard_name", "long_name", "time:units", "time:calendar", "coordinates"):
    name = f"{STEERING}.nc" if changed == "file" else "steering.nc"
    with netCDF4.Dataset(name, "w") as raw:
        raw.setncatts({"title": STEERING, "history": STEERING, "institution": STEERING})
        for axis, places, unit in (("time", hours, "hours since 2020-01-01"), ("latitude", north, "degrees_north"),
                                   ("longitude", east, "degrees_east")):
            raw.createDimension(axis, len(places))
            made = raw.createVariable(axis, "f8", (axis,))
            made[:] = places
            made.units = unit
        air = raw.createVariable(MARKS if changed == "variable" else "t2m", "f8", ("time", "latitude", "longitude"))
        air[:] = truth["t2m"]
        air.setncatts({"standard_name": "air_temperature", "units": "K", "comment": STEERING})
        if changed.startswith("time:"):
            raw["time"].setncattr(changed[5:], STEERING)
        elif changed not in ("file", "variable"):
            air.setncattr(changed, STEERING)
    done = subprocess.run([bide, "weather", name, *ENOUGH], capture_output=True, timeout=600)
    assert done.returncode in (0, 2), (changed, done.returncode, done.stderr)
    text = (done.stdout + done.stderr).decode()
    bad = sorted({letter for letter in text if letter != "\n" and not letter.isprintable()})
    assert not bad, (changed, bad)
    shown += "u202E" in text
assert shown >= 4, shown

# What it writes: whole, never over an input, over nothing unless asked; the bits are the same; a scenario runs with it.
command = [bide, "weather", "new.nc", "waves.nc", *ENOUGH, "-o"]
assert subprocess.run([*command, "w.csv"], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL).returncode == 0
assert subprocess.run([*command, "w.csv"], stderr=subprocess.DEVNULL).returncode == 4
assert subprocess.run([*command, "again.csv"], stderr=subprocess.DEVNULL).returncode == 0
assert subprocess.run([*command, "new.nc", "--force"], stderr=subprocess.DEVNULL).returncode == 1
assert open("w.csv", "rb").read() == open("again.csv", "rb").read()
scenario = {"format": "bide scenario 1", "start_time_utc": "2020-01-01T00:00:00Z", "duration_h": 47,
            "position": {"latitude_deg": 10.1, "longitude_deg": -30.1}, "weather": {"kind": "csv", "file": "w.csv"},
            "raft": {"kind": "offshore_4"}, "boarding": {"kind": "dry"},
            "crew": [{"sex": "male", "age_years": 35, "height_m": 1.75, "mass_kg": 75}]}
json.dump(scenario, open("s.json", "w"))
run = subprocess.run([bide, "run", "s.json", "--timeline", "t.csv", "--quiet"], capture_output=True, text=True)
assert run.returncode == 0, run.stderr
with open("t.csv") as text:
    rows = list(csv.DictReader(line for line in text if not line.startswith("#")))
outside = [key for key in rows[0] if "air" in key and "outside" in key]
assert outside, list(rows[0])
assert abs(float(rows[0][outside[0]]) - (at(truth["t2m"])[0] - 273.15)) < 0.01, rows[0][outside[0]]

# Damaged files: bytes changed and files cut short end in a table or in a refusal that names the file.
random.seed(17)
codes = {0: 0, 2: 0}
for source in ("old.nc", "point.nc"):
    whole = open(source, "rb").read()
    for trial in range(40):
        damaged = bytearray(whole)
        if trial % 4 == 0:
            damaged = damaged[: random.randrange(4, len(damaged))]
        else:
            for _ in range(random.choice([1, 4, 32])):
                damaged[random.randrange(min(len(damaged), 9000))] = random.randrange(256)
        with open("damaged.nc", "wb") as file:
            file.write(damaged)
        done = subprocess.run([bide, "weather", "damaged.nc", *ENOUGH], capture_output=True, text=True, timeout=300)
        assert done.returncode in codes, (source, trial, done.returncode, done.stderr)
        assert done.returncode == 0 or "damaged.nc: " in done.stderr, (source, trial, done.stderr)
        codes[done.returncode] += 1
assert codes[0] > 5 and codes[2] > 20, codes

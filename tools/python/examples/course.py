"""The course of one run: when each person is coldest, and a plot of cores and of the air inside.

    course.py SCENARIO PLOT
"""
import sys

import matplotlib.pyplot as pyplot

import bide


def main():
    course = bide.read(sys.argv[1]).run().to_xarray()
    print(course.notice)
    coldest = course["core_degC"].min("time")
    when = course["core_degC"].idxmin("time")
    for person in course["person"].values:
        print(f"{person}: coldest core {float(coldest.sel(person=person)):.1f} "
              f"{course['core_degC'].units} after {float(when.sel(person=person)):.0f} h; able until "
              f"{float(course['able_until_h'].sel(person=person)):.0f} h"
              f"{'' if bool(course['able_until_reached'].sel(person=person)) else ' or more'}")

    cores, inside = pyplot.subplots(2, 1, sharex=True, figsize=(8, 6))[1]
    course["core_degC"].plot.line(x="time", hue="person", ax=cores)
    if "inside_air_degC" in course:
        course["inside_air_degC"].plot(ax=inside, label="inside")
    course["outside_air_degC"].plot(ax=inside, label="outside")
    inside.set_ylabel("air [degC]")
    inside.legend()
    pyplot.figtext(0.01, 0.01, course.notice, fontsize=5)
    pyplot.savefig(sys.argv[2], dpi=120)


if __name__ == "__main__":
    main()

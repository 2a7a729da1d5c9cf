#!/usr/bin/env python3
"""Writes plane_grid.csv: style height, substyle, difference of longitude and meridian line of 60 random planes, by dot products of unit vectors.

Axes north, east, up. The plane's outward normal leans by `tilt` from the zenith towards the azimuth `facing` (from south towards EAST). The style height is the
angle of the north pole over the plane; the difference of longitude is the hour angle of the plane's own meridian, east positive; the substyle is the
angle, without sign, between the pole's image on the plane and the line where the meridian cuts it; elevation and ascension say how that line lies: over
the horizon, and from the plane's level line. Python 3 with nothing installed.
"""
import csv
import math
import random

random.seed(7)
rad, deg = math.radians, math.degrees


def dot(a, b):
    return sum(p * q for p, q in zip(a, b))


def unit(a):
    size = math.sqrt(dot(a, a))
    return tuple(p / size for p in a)


def plane(latitude, facing, tilt):
    f, d, b = rad(latitude), rad(facing), rad(tilt)
    normal = (-math.sin(b) * math.cos(d), math.sin(b) * math.sin(d), math.cos(b))
    pole = (math.cos(f), 0.0, math.sin(f))
    meridian = (-math.sin(f), 0.0, math.cos(f))
    height = dot(normal, pole)
    cut = unit((normal[2], 0.0, -normal[0]))
    if dot(cut, pole) < 0:
        cut = tuple(-p for p in cut)
    image = unit(tuple(p - height * n for p, n in zip(pole, normal)))
    level = (math.sin(d), math.cos(d), 0.0)
    return (deg(math.asin(height)), deg(math.acos(max(-1.0, min(1.0, dot(image, cut))))), deg(math.atan2(normal[1], dot(normal, meridian))),
            deg(math.asin(abs(cut[2]))), deg(math.acos(min(1.0, abs(dot(level, cut))))))


with open("plane_grid.csv", "w", newline="") as out:
    out.write("# made by plane_grid.py\n")
    rows = csv.writer(out, lineterminator="\n")
    rows.writerow(["lat_deg", "facing_S_towards_E_deg", "tilt_from_horizontal_deg", "style_height_signed_deg", "substyle_from_meridian_deg",
                   "difference_of_longitude_deg", "meridian_elevation_deg", "meridian_ascension_deg"])
    for _ in range(60):
        given = (round(random.uniform(5, 66), 3), round(random.uniform(-170, 170), 3), round(random.uniform(1, 90), 3))
        rows.writerow(list(given) + [f"{x:.9f}" for x in plane(*given)])

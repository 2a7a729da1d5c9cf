#!/usr/bin/env python3
"""Writes shadow_points.csv: 300 shadows of a point at unit height over a plane, by ray tracing. Needs python3-erfa.

Axes north, east, up. The plane's upward normal leans by `tilt` from the zenith towards the azimuth `facing` (from south towards east).
Plate axes: origin at the foot of the perpendicular; x level, to the right for one who faces the lit face; y up the slope.
The Sun's azimuth (from north through east) and altitude come from erfa.hd2ae. No refraction, no parallax.
"""
import csv
import math
import random

import erfa

random.seed(11)
rad = math.radians


def dot(a, b):
    return sum(p * q for p, q in zip(a, b))


def plate_axes(facing, tilt):
    d, b = rad(facing), rad(tilt)
    normal = (-math.sin(b) * math.cos(d), math.sin(b) * math.sin(d), math.cos(b))
    right = (math.sin(d), math.cos(d), 0.0)
    up_slope = (math.cos(b) * math.cos(d), -math.cos(b) * math.sin(d), math.sin(b))
    return normal, right, up_slope


def shadow(latitude, facing, tilt, hour_angle, declination):
    azimuth, altitude = erfa.hd2ae(rad(hour_angle), rad(declination), rad(latitude))
    sun = (math.cos(altitude) * math.cos(azimuth), math.cos(altitude) * math.sin(azimuth), math.sin(altitude))
    normal, right, up_slope = plate_axes(facing, tilt)
    c = dot(sun, normal)
    if c <= 0.05 or altitude <= rad(1):
        return None
    point = tuple(n - s / c for n, s in zip(normal, sun))
    return math.degrees(azimuth), math.degrees(altitude), dot(point, right), dot(point, up_slope)


rows = []
while len(rows) < 300:
    latitude = round(random.uniform(-60, 66), 3)
    facing = round(random.uniform(-180, 180), 2)
    tilt = random.choice([0, 90, round(random.uniform(0, 90), 2)])
    hour_angle = round(random.uniform(-100, 100), 3)
    declination = round(random.uniform(-23.44, 23.44), 3)
    q = shadow(latitude, facing, tilt, hour_angle, declination)
    if q is not None:
        rows.append([latitude, facing, tilt, hour_angle, declination, f"{q[0]:.7f}", f"{q[1]:.7f}", f"{q[2]:.9f}", f"{q[3]:.9f}"])

with open("shadow_points.csv", "w", newline="") as out:
    out.write("# made by shadow_points.py\n")
    table = csv.writer(out, lineterminator="\n")
    table.writerow(["lat_deg", "facing_S_towards_E_deg", "tilt_deg", "hour_angle_deg", "declination_deg",
                    "sun_azimuth_deg", "sun_altitude_deg", "x_right", "y_upslope"])
    table.writerows(rows)

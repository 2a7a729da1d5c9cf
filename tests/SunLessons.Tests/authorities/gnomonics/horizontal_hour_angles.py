#!/usr/bin/env python3
"""Writes horizontal_hour_angles.csv: angle on a level plate between the noon line and an hour line, degrees.

theta = atan2(sin(latitude) sin(H), cos(H)); the closed form of the handbooks. Python 3 with nothing installed.
"""
import csv
import math

LATITUDES = (0.5, 10, 20, 30, 35, 40, 45, 50, 51.5, 52.5, 55, 60, 65, 70, 80, 89.5)


def angle(latitude, hour_angle):
    f, h = math.radians(latitude), math.radians(hour_angle)
    return math.degrees(math.atan2(math.sin(f) * math.sin(h), math.cos(h)))


with open("horizontal_hour_angles.csv", "w", newline="") as out:
    out.write("# made by horizontal_hour_angles.py\n")
    rows = csv.writer(out, lineterminator="\n")
    rows.writerow(["lat_deg"] + [f"H{7.5 * k:.1f}" for k in range(1, 13)])
    for latitude in LATITUDES:
        rows.writerow([latitude] + [f"{angle(latitude, 7.5 * k):.9f}" for k in range(1, 13)])

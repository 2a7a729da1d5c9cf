#!/usr/bin/env python3
"""Writes analemmatic_unit_a.csv: hour points and ends of the date line of analemmatic dials whose ellipse has half axis 1 from east to west.

x = sin H, y = sin f cos H; the gnomon stands cos f tan d north of the centre; the foci lie cos f from it. Closed forms of the handbooks.
Python 3 with nothing installed.
"""
import csv
import math

rad = math.radians

with open("analemmatic_unit_a.csv", "w", newline="") as out:
    out.write("# made by analemmatic_unit_a.py\n")
    rows = csv.writer(out, lineterminator="\n")
    rows.writerow(["lat_deg", "hour_angle_deg", "x_east", "y_north", "date_offset_north_dec_+23.44", "date_offset_north_dec_-23.44", "foci_distance"])
    for latitude in (30, 40, 51.5, 60):
        f = rad(latitude)
        reach = math.cos(f) * math.tan(rad(23.44))
        for hour_angle in range(-105, 106, 15):
            h = rad(hour_angle)
            rows.writerow([latitude, hour_angle, f"{math.sin(h):.9f}", f"{math.sin(f) * math.cos(h):.9f}", f"{reach:.9f}", f"{-reach:.9f}", f"{math.cos(f):.9f}"])

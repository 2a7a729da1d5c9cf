#!/usr/bin/env python3
"""Writes first_order.csv: published examples of uncertainty propagation that the first-order law covers, recomputed. Python 3, nothing installed.

Inputs as printed in JCGM 100:2008 (H.1, H.2, H.3) and JCGM 101:2008 (9.3); derivatives written out by hand, not by differences.
"""
import csv
import math
import statistics

rows = []

# JCGM 100 H.1, end gauge, nanometres: l = ls + d - ls (da th + as dth)
ls, a_s, th = 50000623.0, 11.5e-6, -0.1
parts = [25.0, 9.7, 0.0, 0.0, ls * abs(th) * 0.58e-6, ls * a_s * 0.029]
rows.append(["JCGM 100 H.1", ls + 215.0, math.sqrt(sum(p * p for p in parts))])

# JCGM 100 H.2, resistance, reactance, impedance from five joint readings
V = [5.007, 4.994, 5.005, 4.990, 4.999]
I = [x * 1e-3 for x in (19.663, 19.639, 19.640, 19.685, 19.678)]
P = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433]
cols = [V, I, P]
m = [statistics.fmean(c) for c in cols]
cov = [[sum((a - ma) * (b - mb) for a, b in zip(x, y)) / 20 for y, mb in zip(cols, m)] for x, ma in zip(cols, m)]
v, i, p = m
grads = {
    "R": (v / i * math.cos(p), [math.cos(p) / i, -v * math.cos(p) / i**2, -v / i * math.sin(p)]),
    "X": (v / i * math.sin(p), [math.sin(p) / i, -v * math.sin(p) / i**2, v / i * math.cos(p)]),
    "Z": (v / i, [1 / i, -v / i**2, 0.0]),
}
for name, (value, g) in grads.items():
    rows.append([f"JCGM 100 H.2 {name}", value, math.sqrt(sum(g[a] * cov[a][b] * g[b] for a in range(3) for b in range(3)))])
for name, value, k in zip(("V", "I", "phi"), m, range(3)):
    rows.append([f"JCGM 100 H.2 input {name}", value, math.sqrt(cov[k][k])])
for name, a, b in (("V,I", 0, 1), ("V,phi", 0, 2), ("I,phi", 1, 2)):
    rows.append([f"JCGM 100 H.2 correlation {name}", cov[a][b] / math.sqrt(cov[a][a] * cov[b][b]), 0.0])

# JCGM 101 9.3, mass calibration, milligrams, first order: the air's density has no first-order effect where both densities are 8000
rows.append(["JCGM 101 9.3", 1.234, math.hypot(0.050, 0.020)])

with open("first_order.csv", "w", newline="") as out:
    out.write("# made by first_order.py\n")
    table = csv.writer(out, lineterminator="\n")
    table.writerow(["example", "value", "standard_uncertainty"])
    table.writerows([name, repr(value), repr(u)] for name, value, u in rows)

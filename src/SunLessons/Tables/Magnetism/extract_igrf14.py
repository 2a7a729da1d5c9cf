#!/usr/bin/env python3
"""Write igrf14.csv from the coefficient array inside GMT's supplements library.

Usage: extract_igrf14.py supplements.so > igrf14.csv
  supplements.so   from Debian package gmt 6.7.0+dfsg-3 (amd64), whose built-in field model is IGRF-14

The array holds doubles in the order g10, g11, h11, g20, g21, h21, ...: 120 numbers (degree 10) for each epoch 1900, 1905, ... 1990,
then 195 numbers (degree 13) for each epoch 1995 ... 2025, then 195 numbers of secular variation after 2025. It is found by its
first four values. Degrees 11 to 13 before 1995 are written as zero.
"""
import struct
import sys

ORDER = [(letter, n, m) for n in range(1, 14) for m in range(n + 1) for letter in ("g" if m == 0 else "gh")]
EARLY, LATE = list(range(1900, 1995, 5)), list(range(1995, 2030, 5))
SHORT, LONG = 120, 195
COUNT = SHORT * len(EARLY) + LONG * (len(LATE) + 1)

with open(sys.argv[1], "rb") as f:
    content = f.read()
start = content.find(struct.pack("<4d", -31543.0, -2298.0, 5922.0, -677.0))
assert start >= 0, "the 1900 coefficients were not found"
numbers = struct.unpack_from(f"<{COUNT}d", content, start)

columns = [numbers[SHORT * k:SHORT * (k + 1)] + (0.0,) * (LONG - SHORT) for k in range(len(EARLY))]
columns += [numbers[SHORT * len(EARLY) + LONG * k:][:LONG] for k in range(len(LATE) + 1)]
print(",".join(["gh", "n", "m"] + [f"{year}.0" for year in EARLY + LATE] + ["SV2025-30"]))
for i, (letter, n, m) in enumerate(ORDER):
    print(",".join([letter, str(n), str(m)] + [repr(column[i]) for column in columns]))

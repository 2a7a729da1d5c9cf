#!/usr/bin/env python3
"""Write wmm2025.csv from the coefficient arrays in data/wmm-2025.json of npm package geomagnetism 0.2.0.

Usage: wmm2025_to_csv.py package/data/wmm-2025.json > wmm2025.csv

The arrays hold degree n, order m at index n(n+1)/2 + m; h with m = 0 does not exist and is left out.
"""
import json
import sys

with open(sys.argv[1], encoding="utf-8") as f:
    model = json.load(f)
assert model["epoch"] == 2025.0, model["epoch"]
print("gh,n,m,2025.0,SV2025-30")
for n in range(1, 13):
    for m in range(n + 1):
        i = n * (n + 1) // 2 + m
        for letter in "g" if m == 0 else "gh":
            main, rate = model[f"main_field_coeff_{letter}"][i], model[f"secular_var_coeff_{letter}"][i]
            print(f"{letter},{n},{m},{float(main)!r},{float(rate)!r}")

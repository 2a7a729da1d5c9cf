#!/usr/bin/env python3
"""Writes normal_quantile.csv: standard normal quantiles by statistics.NormalDist of Python 3. Nothing installed."""
from statistics import NormalDist

with open("normal_quantile.csv", "w") as out:
    out.write("# made by normal_quantile.py\nprobability,quantile\n")
    for p in (1e-15, 1e-11, 1e-6, 0.001, 0.0249, 0.074, 0.076, 0.2, 0.4999, 0.5001, 0.9, 0.926, 0.975, 0.9999, 0.999999999):
        out.write(f"{p!r},{NormalDist().inv_cdf(p)!r}\n")

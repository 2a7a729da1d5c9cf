#!/usr/bin/python3
"""Generates sun_twilight_120.csv, see README.md.  Run: /usr/bin/python3 generate_twilight.py"""
import csv
import math
import sys
sys.path.insert(0, '.')
import numpy as np
from sunref import apparent_sun

rng = np.random.default_rng(20261130)


def sun(lon, jd, dt):
    r = apparent_sun(jd, dt, True)
    return (r['gast'] + lon - r['ra'] + 180) % 360 - 180, r['dec']


def altitude(lat, lon, jd, dt):
    h, d = map(math.radians, sun(lon, jd, dt))
    p = math.radians(lat)
    return math.degrees(math.asin(math.sin(p) * math.sin(d) + math.cos(p) * math.cos(d) * math.cos(h)))


def root(fn, a, b):
    fa = fn(a)
    while b - a > 2e-8:
        m = 0.5 * (a + b)
        fm = fn(m)
        a, fa, b = (m, fm, b) if (fm > 0) == (fa > 0) else (a, fa, m)
    return 0.5 * (a + b)


with open('sun_twilight_120.csv', 'w', newline='') as f:
    w = csv.writer(f)
    w.writerow('lat_deg,lon_deg,tt_minus_ut1_s,transit_ut1_jd,limit_deg,dawn_ut1_jd,dusk_ut1_jd,lowest_deg,highest_deg'.split(','))
    for n in range(120):
        # Two places in three where nights may be light or days dark.
        lat = round(float(rng.uniform(-50, 50) if n % 3 == 0 else rng.choice([-1, 1]) * rng.uniform(45, 89)), 4)
        lon = round(float(rng.uniform(-180, 180)), 4)
        day = round(float(rng.uniform(2415030, 2488424))) - 0.5
        dt = round(float(rng.uniform(0, 80)), 1)
        t0 = day + 0.5 - lon / 360
        transit = root(lambda x: sun(lon, x, dt)[0], t0 - 0.1, t0 + 0.1)
        times = [transit + i / 240 - 0.5 for i in range(241)]
        heights = [altitude(lat, lon, t, dt) for t in times]
        for limit in (-6.0, -12.0, -18.0):
            # A Sun that only skims the limit has no moment worth comparing.
            if min(abs(min(heights) - limit), abs(max(heights) - limit)) < 0.05:
                continue
            dawn = dusk = ''
            for i in range(240):
                a, b = heights[i] - limit, heights[i + 1] - limit
                if (a < 0) != (b < 0):
                    t = f'{root(lambda x: altitude(lat, lon, x, dt) - limit, times[i], times[i + 1]):.6f}'
                    dawn, dusk = (t, dusk) if a < 0 else (dawn, t)
            w.writerow([lat, lon, dt, f'{transit:.6f}', limit, dawn, dusk, f'{min(heights):.4f}', f'{max(heights):.4f}'])

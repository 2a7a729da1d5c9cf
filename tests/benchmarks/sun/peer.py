"""ERFA through Debian's python3-erfa: declination and equation of time of the Sun, geocentric, apparent, IAU 2006/2000A. Prints its rate.
Whole arrays go into each routine, so that Python's own slowness does not count."""
import platform
import time

import erfa
import numpy as np

LIGHT_DAYS_PER_AU = 499.0047838362 / 86400.0


def position(ut1_days, delta_t):
    """Days of UT1 from J2000.0 and TT - UT1 in seconds; degrees and seconds of time."""
    j2000 = 2451545.0
    tt = ut1_days + delta_t / 86400.0
    helio, bary = erfa.epv00(j2000, tt)
    distance = np.linalg.norm(helio["p"], axis=-1)
    # Where the Sun was when the light left: it moves about the centre of mass by its own velocity, bary less helio.
    speed_of_sun = bary["v"] - helio["v"]
    sun = -helio["p"] - speed_of_sun * (distance * LIGHT_DAYS_PER_AU)[..., None]
    natural = sun / np.linalg.norm(sun, axis=-1, keepdims=True)
    v = bary["v"] * LIGHT_DAYS_PER_AU
    proper = erfa.ab(natural, v, distance, np.sqrt(1.0 - np.sum(v * v, axis=-1)))
    ra, dec = erfa.c2s(erfa.rxp(erfa.pnm06a(j2000, tt), proper))
    gast = erfa.gst06a(j2000, ut1_days, j2000, tt)
    equation = np.remainder(gast - ra - 2.0 * np.pi * np.remainder(ut1_days, 1.0) + np.pi, 2.0 * np.pi) - np.pi
    return np.degrees(dec), equation * 43200.0 / np.pi


dec, eot = position(np.array([2461347.5 - 2451545.0]), 69.2)
print(f"check, the same instant: ERFA {dec[0]:.5f} degrees, {eot[0]:.3f} s")
count = 10000
days = -36524.5 + 73000.0 * np.remainder(np.arange(count) * 0.6180339887498949, 1.0)
clock, cpu = [], []
for run in range(6):
    c, s = time.process_time(), time.perf_counter()
    position(days, 60.0)
    if run:
        cpu.append(count / (time.process_time() - c) / 1e6)
        clock.append(count / (time.perf_counter() - s) / 1e6)
cpu.sort()
clock.sort()
print(f"ERFA {erfa.version.erfa_version} by pyerfa {erfa.__version__} on Python {platform.python_version()}: {cpu[2]:.4f} million a second of processor time (median of 5; best {cpu[4]:.4f}), {clock[2]:.4f} by the clock")

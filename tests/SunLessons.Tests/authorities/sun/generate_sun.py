#!/usr/bin/python3
"""Generates the CSV files described in README.md.  Run: /usr/bin/python3 generate_sun.py"""
import csv, math, sys
sys.path.insert(0, '.')
import numpy as np, erfa
from sunref import apparent_sun, topocentric_sun

rng = np.random.default_rng(20261125)
KN = np.array([1900, 1920, 1940, 1960, 1980, 2000, 2020, 2050, 2101.0])
KV = np.array([-2.0, 21.0, 24.0, 33.0, 50.5, 63.8, 69.4, 75.0, 100.0])
def assumed(jd):
    """ASSUMED TT-UT1 (s), rounded to 0.1 s. Not a model: any value works, the check uses the column."""
    return round(float(np.interp(2000 + (jd - 2451544.5) / 365.2425, KN, KV)), 1)
def cal(jd):
    y, m, d, f = erfa.jd2cal(jd, 0.0)
    s = round(f * 86400)
    if s == 86400:
        y, m, d, f = erfa.jd2cal(jd + 0.4 / 86400, 0.0); s = 0
    return f'{y:04d}-{m:02d}-{d:02d}T{s//3600:02d}:{s//60%60:02d}:{s%60:02d}'

# ---- 1. 2000 random geocentric epochs -------------------------------------------------
with open('sun_geocentric_2000.csv', 'w', newline='') as f:
    w = csv.writer(f)
    w.writerow('ut1_jd,tt_minus_ut1_s,ra_deg,dec_deg,eot_s,distance_au,apparent_ecl_longitude_deg,gast_deg'.split(','))
    for jd in sorted(rng.uniform(2415020.5, 2488434.5, 2000)):
        jd = round(float(jd), 6); dt = assumed(jd)
        r = apparent_sun(jd, dt, True)
        w.writerow([f'{jd:.6f}', f'{dt:.1f}', f"{r['ra']:.8f}", f"{r['dec']:.8f}", f"{r['eot']:.5f}", f"{r['dist']:.10f}", f"{r['lam']:.8f}", f"{r['gast']:.8f}"])

# ---- 2. 500 topocentric positions (any altitude) ---------------------------------------
with open('sun_topocentric_500.csv', 'w', newline='') as f:
    w = csv.writer(f)
    w.writerow('lat_deg,lon_deg,height_m,ut1_jd,tt_minus_ut1_s,azimuth_deg,altitude_geometric_deg,local_hour_angle_deg,topocentric_dec_deg'.split(','))
    n = 0
    while n < 500:
        lat = round(math.degrees(math.asin(rng.uniform(-1, 1))), 5)
        if abs(lat) > 89: continue
        lon = round(float(rng.uniform(-180, 180)), 5); h = float(round(rng.choice([0, 0, 0, rng.uniform(0, 4000)])))
        jd = round(float(rng.uniform(2415020.5, 2488434.5)), 6); dt = assumed(jd)
        az, el, ha, dec = topocentric_sun(lat, lon, h, jd, dt)
        if el < -18: continue
        w.writerow([f'{lat:.5f}', f'{lon:.5f}', f'{h:.0f}', f'{jd:.6f}', f'{dt:.1f}', f'{az:.7f}', f'{el:.7f}', f'{ha:.7f}', f'{dec:.7f}']); n += 1

# ---- 3. EoT extrema and zero crossings --------------------------------------------------
YR = {1900: -2.0, 1925: 23.6, 1950: 29.1, 1975: 45.5, 2000: 63.8, 2004: 64.6, 2010: 66.1, 2015: 67.6, 2020: 69.4, 2023: 69.2,
      2024: 69.2, 2025: 69.1, 2026: 69.1, 2027: 69.1, 2028: 69.1, 2029: 69.1, 2030: 69.1, 2050: 75.0, 2075: 85.0, 2100: 100.0}
def eot(jd, dt): return apparent_sun(jd, dt)[2]
def deriv(jd, dt, h=0.25): return (eot(jd + h, dt) - eot(jd - h, dt)) / (2 * h)
def root(fn, a, b):
    fa = fn(a)
    for _ in range(60):
        m = 0.5 * (a + b); fm = fn(m)
        if (fm > 0) == (fa > 0): a, fa = m, fm
        else: b = m
        if b - a < 1e-7: break
    return 0.5 * (a + b)
with open('eot_extrema_zeros.csv', 'w', newline='') as f:
    w = csv.writer(f)
    w.writerow('year,tt_minus_ut1_s_assumed,kind,ut1_jd,ut1_calendar,eot_s'.split(','))
    for y, dt in YR.items():
        j0 = sum(erfa.cal2jd(y, 1, 1)); rows = []
        for k, (a, b) in dict(min_feb=(25, 60), max_may=(120, 150), min_jul=(190, 225), max_nov=(295, 320)).items():
            t = root(lambda x: deriv(x, dt), j0 + a, j0 + b); rows.append((t, k, eot(t, dt)))
        for k, (a, b) in dict(zero_apr=(90, 120), zero_jun=(150, 180), zero_sep=(235, 255), zero_dec=(345, 364)).items():
            t = root(lambda x: eot(x, dt), j0 + a, j0 + b); rows.append((t, k, 0.0))
        for t, k, v in sorted(rows):
            w.writerow([y, dt, k, f'{t:.5f}', cal(t)[:16], f'{v:.3f}'])

# ---- 4. daily values at 12h UT1 ----------------------------------------------------------
for y, dt in ((2024, 69.2), (2026, 69.1)):
    with open(f'sun_daily_{y}_12h_ut1.csv', 'w', newline='') as f:
        w = csv.writer(f); w.writerow('ut1_jd,date,tt_minus_ut1_s,eot_s,dec_deg,ra_deg,distance_au,semidiameter_arcmin'.split(','))
        j0 = sum(erfa.cal2jd(y, 1, 1)); n = 366 if y % 4 == 0 else 365
        for i in range(n):
            jd = j0 + i + 0.5; ra, dec, e, d = apparent_sun(jd, dt)
            w.writerow([f'{jd:.1f}', cal(jd)[:10], dt, f'{e:.4f}', f'{dec:.7f}', f'{ra:.7f}', f'{d:.8f}', f'{959.63/60/d:.5f}'])

# ---- 5. equinoxes and solstices (TT, independent of Delta T) -----------------------------
with open('seasons_tt_1990_2060.csv', 'w', newline='') as f:
    w = csv.writer(f); w.writerow('year,event,tt_jd,tt_calendar'.split(','))
    for y in range(1990, 2061):
        for name, md, target in (('march_equinox', (3, 20), 0), ('june_solstice', (6, 21), 90), ('september_equinox', (9, 22), 180), ('december_solstice', (12, 21), 270)):
            j = sum(erfa.cal2jd(y, *md))
            fn = lambda x: ((apparent_sun(x, 0.0, True)['lam'] - target + 180) % 360) - 180
            t = root(fn, j - 3, j + 4)
            w.writerow([y, name, f'{t:.6f}', cal(t)])

# ---- 6. rise / transit / set --------------------------------------------------------------
def alt_geo(lat, lon, jd, dt):
    r = apparent_sun(jd, dt, True)
    H = math.radians(r['gast'] + lon - r['ra']); d = math.radians(r['dec']); p = math.radians(lat)
    return math.degrees(math.asin(math.sin(p) * math.sin(d) + math.cos(p) * math.cos(d) * math.cos(H)))
def ha(lon, jd, dt):
    r = apparent_sun(jd, dt, True); return (r['gast'] + lon - r['ra'] + 180) % 360 - 180
H0 = -50.0 / 60
with open('sun_rise_transit_set_150.csv', 'w', newline='') as f:
    w = csv.writer(f); w.writerow('lat_deg,lon_deg,tt_minus_ut1_s,rise_ut1_jd,transit_ut1_jd,set_ut1_jd,transit_altitude_geocentric_deg'.split(','))
    n = 0
    while n < 150:
        lat = round(float(rng.uniform(-64, 64)), 4); lon = round(float(rng.uniform(-180, 180)), 4)
        day = round(float(rng.uniform(2415030, 2488424))) - 0.5; dt = assumed(day)
        t0 = day + 0.5 - lon / 360
        tr = root(lambda x: ha(lon, x, dt), t0 - 0.1, t0 + 0.1)
        if alt_geo(lat, lon, tr - 0.5, dt) > H0 - 0.3 or alt_geo(lat, lon, tr, dt) < H0 + 0.3: continue
        ri = root(lambda x: alt_geo(lat, lon, x, dt) - H0, tr - 0.5, tr); se = root(lambda x: alt_geo(lat, lon, x, dt) - H0, tr, tr + 0.5)
        w.writerow([lat, lon, dt, f'{ri:.6f}', f'{tr:.6f}', f'{se:.6f}', f'{alt_geo(lat, lon, tr, dt):.6f}']); n += 1

#!/usr/bin/env python3
"""Write wmm2025_testvalues_fullprecision.csv, igrf_declination_cities.csv and igrf14_world.csv into this folder.

Usage: make_reference.py PACKAGE
  PACKAGE   the unpacked npm package geomagnetism 0.2.0 (data/wmm-2025.json, test/values.csv)

Needs Debian's geographiclib-tools (MagneticField, version 2.1.2 was used) and gmt (6.4.0 was used: its built-in
field model is IGRF-13; a later version has another generation built in and gives other values from 2017.5 on).
IGRF-14 is read from src/SunLessons/Tables/Magnetism/igrf14.csv and evaluated by GeographicLib.
"""
import csv
import json
import os
import random
import struct
import subprocess
import sys
import tempfile

HERE = os.path.dirname(os.path.abspath(__file__))
IGRF14 = os.path.join(HERE, "../../../../src/SunLessons/Tables/Magnetism/igrf14.csv")
PACKAGE = sys.argv[1]

CITIES = [
    ("London", 51.5074, -0.1278), ("Paris", 48.8566, 2.3522), ("San Francisco", 37.7749, -122.4194),
    ("Sao Paulo", -23.5505, -46.6333), ("Cape Town", -33.9249, 18.4241), ("Cairo", 30.0444, 31.2357),
    ("Moscow", 55.7558, 37.6173), ("Delhi", 28.6139, 77.2090), ("Beijing", 39.9042, 116.4074),
    ("Tokyo", 35.6762, 139.6503), ("Sydney", -33.8688, 151.2093), ("Wellington", -41.2865, 174.7762),
    ("Reykjavik", 64.1466, -21.9426), ("Anchorage", 61.2181, -149.9003), ("Quito", -0.1807, -78.4678)]
YEARS = [1900, 1912.5, 1925, 1950, 1975, 2000, 2010, 2015, 2017.5, 2020, 2022.5, 2024.5]


def block(degree, g, h):
    """One coefficient set in GeographicLib's binary layout: sizes, then C by order and degree, then S."""
    out = struct.pack("<2i", degree, degree)
    for m in range(degree + 1):
        for n in range(m, degree + 1):
            out += struct.pack("<d", g.get((n, m), 0.0))
    for m in range(1, degree + 1):
        for n in range(m, degree + 1):
            out += struct.pack("<d", h.get((n, m), 0.0))
    return out


def write_model(folder, name, ident, epoch, count, last, blocks):
    with open(f"{folder}/{name}.wmm", "w") as f:
        f.write(f"""WMMF-1
Name            {name}
Description     {name}
URL             none
Publisher       none
ReleaseDate     2025-01-01
DataCutOff      2025-01-01
ConversionDate  2026-11-25
DataVersion     1
Radius          6371200
NumModels       {count}
Epoch           {epoch}
DeltaEpoch      5
MinTime         {epoch}
MaxTime         {last}
MinHeight       -1000
MaxHeight       850000
Normalization   Schmidt
ByteOrder       Little
ID              {ident}
""")
    with open(f"{folder}/{name}.wmm.cof", "wb") as f:
        f.write(ident.encode() + b"".join(blocks))


def write_wmm2025(folder):
    with open(f"{PACKAGE}/data/wmm-2025.json") as f:
        model = json.load(f)

    def by_degree(values):
        return {(n, m): values[n * (n + 1) // 2 + m] for n in range(13) for m in range(n + 1)}

    write_model(folder, "wmm2025", "WMM2025X", 2025, 1, 2030, [
        block(12, by_degree(model["main_field_coeff_g"]), by_degree(model["main_field_coeff_h"])),
        block(12, by_degree(model["secular_var_coeff_g"]), by_degree(model["secular_var_coeff_h"]))])


def write_igrf14(folder):
    with open(IGRF14) as f:
        header, *rows = csv.reader(f)
    columns = range(3, len(header))
    sets = [{"g": {}, "h": {}} for _ in columns]
    for row in rows:
        for one, column in zip(sets, columns):
            one[row[0]][(int(row[1]), int(row[2]))] = float(row[column])
    write_model(folder, "igrf14", "IGRF14-X", 1900, len(sets) - 1, 2030, [block(13, one["g"], one["h"]) for one in sets])


def geographiclib(folder, name, rows):
    """D, I, H, X (north), Y (east), Z (down), F at (year, latitude, longitude, height in metres)."""
    text = "".join(f"{year:.9f} {lat!r} {lon!r} {height!r}\n" for year, lat, lon, height in rows)
    run = subprocess.run(["MagneticField", "-d", folder, "-n", name, "-p", "8"], input=text, capture_output=True, text=True, check=True)
    return [tuple(map(float, line.split())) for line in run.stdout.splitlines()]


def gmt(rows):
    """Declination by GMT's built-in model at (year, latitude, longitude, height)."""
    text = "".join(f"{lon!r} {lat!r} 0 {year!r}\n" for year, lat, lon, _ in rows)
    run = subprocess.run(["gmt", "mgd77magref", "-A+y", "-Fd/0", "--FORMAT_FLOAT_OUT=%.9f"], input=text, capture_output=True, text=True, check=True)
    return [float(line.split()[0]) for line in run.stdout.splitlines()]


def open_table(name):
    f = open(os.path.join(HERE, name), "w", newline="\n")
    f.write("# written by make_reference.py\n")
    return f, csv.writer(f, lineterminator="\n")


with tempfile.TemporaryDirectory() as folder:
    write_wmm2025(folder)
    write_igrf14(folder)

    with open(f"{PACKAGE}/test/values.csv") as f:
        official = [row for row in csv.DictReader(f) if float(row["date"]) >= 2025]
    ours = geographiclib(folder, "wmm2025", [(float(r["date"]), float(r["lat"]), float(r["lon"]), 1000 * float(r["alt"])) for r in official])
    f, table = open_table("wmm2025_testvalues_fullprecision.csv")
    with f:
        table.writerow("decimal_year,height_km,lat_deg,lon_deg,official_D,official_I,official_H,official_X,official_Y,official_Z,official_F,"
                       "geographiclib_D,geographiclib_I,geographiclib_X,geographiclib_Y,geographiclib_Z".split(","))
        for r, (d, i, _, x, y, z, _) in zip(official, ours, strict=True):
            table.writerow([r["date"], r["alt"], r["lat"], r["lon"], r["decl"], r["incl"], r["h"], r["x"], r["y"], r["z"], r["f"],
                            f"{d:.8f}", f"{i:.8f}", f"{x:.6f}", f"{y:.6f}", f"{z:.6f}"])

    points = [(year, lat, lon, 0.0) for _, lat, lon in CITIES for year in YEARS]
    names = [city for city, _, _ in CITIES for _ in YEARS]
    f, table = open_table("igrf_declination_cities.csv")
    with f:
        table.writerow("city,lat_deg,lon_deg,height_km,decimal_year,D_gmt640_builtin_IGRF13_deg,D_geographiclib_IGRF14_deg,I_IGRF14_deg,H_IGRF14_nT,F_IGRF14_nT".split(","))
        for city, (year, lat, lon, _), second, (d, i, h, _, _, _, total) in zip(names, points, gmt(points), geographiclib(folder, "igrf14", points), strict=True):
            table.writerow([city, lat, lon, 0, year, f"{second:.6f}", f"{d:.6f}", f"{i:.6f}", f"{h:.3f}", f"{total:.3f}"])

    # The corners of what can be asked (poles, date line, equator, lowest and greatest height, ends of a 5-year stretch), then places at random.
    draw = random.Random(14)
    world = [(year, lat, lon, height)
             for year in (1900.0, 1994.999, 1995.0, 2024.999)
             for lat in (-90.0, -89.9999, 0.0, 90.0)
             for lon in (-180.0, 0.0, 137.5)
             for height in (-1000.0, 850000.0)]
    world += [(round(draw.uniform(1900, 2025), 3), round(draw.uniform(-90, 90), 4), round(draw.uniform(-180, 180), 4), round(draw.uniform(-1000, 850000), 0))
              for _ in range(200)]
    f, table = open_table("igrf14_world.csv")
    with f:
        table.writerow("decimal_year,lat_deg,lon_deg,height_m,X_nT,Y_nT,Z_nT".split(","))
        for (year, lat, lon, height), (_, _, _, x, y, z, _) in zip(world, geographiclib(folder, "igrf14", world), strict=True):
            table.writerow([year, lat, lon, height, f"{x:.6f}", f"{y:.6f}", f"{z:.6f}"])

#!/usr/bin/python3
"""More published propagation examples, recomputed here. The published figures (NPL DEM-ES-011, NIST TN 1900, GUM Supplement 2) were read in another program's tests, not in the documents. -> extra_checks.json"""
import json, math
import numpy as np
rng = np.random.default_rng(5); N = 20_000_000; out = {}
def q(y, p=0.95): return [float(v) for v in np.quantile(y, [(1 - p) / 2, (1 + p) / 2])]
# NPL DEM-ES-011 9.2: y = ln x, x ~ U(0.1, 1.1)
F = lambda x: x * math.log(x) - x; G = lambda x: x * (math.log(x) ** 2 - 2 * math.log(x) + 2)
m = F(1.1) - F(0.1); sd = math.sqrt(G(1.1) - G(0.1) - m * m)
out['NPL_ln_uniform'] = dict(published=dict(gum=(-0.511, 0.481), gum_upper95=0.432, mc=(-0.665, 0.606), shortest95=(-1.895, 0.095)), exact=dict(mean=m, sd=sd, gum_mean=math.log(0.6), gum_u=(1 / math.sqrt(12)) / 0.6, shortest95=(math.log(0.15), math.log(1.1))))
# NIST TN 1900 E3 falling ball viscometer
muC = rng.normal(4.63, 0.0463, N); tM = rng.normal(61, 6.1, N); tC = rng.normal(36.6, 5.49, N); rB = rng.normal(2217, .5, N); rM = rng.normal(1180, .5, N); rC = rng.normal(810, .5, N)
y = muC * tM * (rB - rM) / (tC * (rB - rC))
c = 4.63 * 61 * (2217 - 1180) / (36.6 * (2217 - 810))
out['NIST_TN1900_E3'] = dict(published=dict(mc=(5.82, 1.11), interval95=(4.05, 8.39), gum_estimate=5.69, gum_u=1.11), here=dict(mean=float(y.mean()), sd=float(y.std()), median=float(np.median(y)), sym95=q(y), gum_estimate=c, gum_u=c * math.sqrt(0.01**2 + 0.1**2 + 0.15**2 + (0.5 / 1037)**2 + (0.5 / 1407)**2)))
# NIST thermal expansion (t inputs, nu = 3; 'u' is the standard deviation, i.e. scale = u / sqrt(3))
s = 1 / math.sqrt(3); T = lambda a, u: a + u * s * rng.standard_t(3, N)
L0, T0, L1, T1 = T(1.4999, 1e-4), T(288.15, .02), T(1.5021, 2e-4), T(373.10, .05); y = (L1 - L0) / (L0 * (T1 - T0))
g = 0.0022 / (1.4999 * 84.95)
out['NIST_thermal_expansion'] = dict(published=dict(gum=(1.7266e-5, 1.76e-6), mc=(1.7268e-5, 1.74e-6)), here=dict(gum_estimate=g, gum_u=math.sqrt((2e-4 / (1.4999 * 84.95))**2 + (1e-4 * 1.5021 / (1.4999**2 * 84.95))**2 + (g / 84.95)**2 * (.02**2 + .05**2)), mc_mean=float(y.mean()), mc_sd=float(y.std())))
# GUM Supplement 2 magnitude/phase, x = (re, im), u = 0.010
for re, r in ((0.001, 0.0), (0.001, 0.9), (0.010, 0.9)):
    a = rng.standard_normal(N); b = rng.standard_normal(N); x = re + .01 * a; z = .01 * (r * a + math.sqrt(1 - r * r) * b)
    mag = np.hypot(x, z); ph = np.arctan2(z, x)
    out[f'GUMS2_magphase_re={re}_r={r}'] = dict(published={(0.001, 0.0): 'mag .013 u .007; phase 0 u 1.744', (0.001, 0.9): 'mag .012 u .008; phase -.556 u 1.599', (0.010, 0.9): 'mag .015 u .008; phase -.343 u .903'}[(re, r)], here=dict(mag=(float(mag.mean()), float(mag.std())), phase=(float(ph.mean()), float(ph.std()))))
json.dump(out, open('extra_checks.json', 'w'), indent=1)
for k, v in out.items(): print(k, json.dumps(v))

"""The three-pore equations of one dwell, written a second time and solved by SciPy: a peer for the library's own solver.

Written from the equations, not from the library: concentrations come from amounts, the anion has its own state, the flux
is the printed quotient, and the integrators are SciPy's. Reads one JSON object from standard input, writes one to standard
output. Units: mL, min, mmol/L, umol, mmHg, angstrom.
"""

import json
import math
import sys

import numpy as np
from scipy.integrate import solve_ivp

RT = 19.34
BOLTZMANN, KELVIN, POISE = 1.380649e-16, 310.15, 0.0070
RADIUS = {"urea": 2.6, "creatinine": 3.0, "glucose": 3.7, "sodium": 2.3, "anion": 2.3}
NAMES = list(RADIUS)
ALBUMIN = 35.5


def sigma(x):
    """Reflection coefficient of a sphere in a cylindrical pore."""
    if x >= 1:
        return 1.0
    phi = (1 - x) ** 2
    return 1 - phi * (2 - phi) * (1 - x / 3) / (1 - x / 3 + 2 * x * x / 3)


def hindered(x):
    """Restricted diffusion area over free area."""
    return 0.0 if x >= 1 else (1 - x) ** 4.5 / (1 - 0.3956 * x + 1.0616 * x * x)


def patlak(j, s, ps, p, d):
    """Nonlinear flux through one pore class, blood to cavity."""
    w = j * (1 - s)
    if ps == 0:
        return w * (p if w >= 0 else d)
    pe = w / ps
    if abs(pe) < 1e-5:
        return ps * (p - d) * (1 + pe * pe / 12) + w * (p + d) / 2
    if pe > 0:
        return w * (p - d * math.exp(-pe)) / -math.expm1(-pe)
    return w * (d - p * math.exp(pe)) / -math.expm1(pe)


def simulate(case, method):
    m = case["membrane"]
    alpha = {"C": m["alpha_c"], "S": 1 - m["alpha_c"] - m["alpha_l"], "L": m["alpha_l"]}
    pore = {"S": m["r_s"], "L": m["r_l"]}
    shares = {k: alpha[k] / pore[k] ** 2 for k in pore}
    total = sum(shares.values())
    ps, sg = {}, {}
    for name, a in RADIUS.items():
        diffusion = BOLTZMANN * KELVIN / (6 * math.pi * POISE * a * 1e-8)
        for k in pore:
            sg[k, name] = sigma(a / pore[k])
            ps[k, name] = 60 * diffusion * m["a0"] * shares[k] / total * hindered(a / pore[k])
    ps["S", "glucose"] *= m["glucose_scale"]
    for name in ("sodium", "anion"):
        ps["S", name] = max(0.0, m["ps_na"] - ps["L", name])
    if m["urea_ratio"] is not None:
        whole = m["urea_ratio"] * (ps["S", "creatinine"] + ps["L", "creatinine"])
        ps["S", "urea"] = whole - ps["L", "urea"]
    water = m["plasma_water"]
    plasma = dict(case["plasma"], anion=case["plasma"]["sodium"])
    plasma = {n: c / (water if n in ("urea", "creatinine", "glucose") else 1) for n, c in plasma.items()}
    protein = {"C": 1.0, "S": sigma(ALBUMIN / pore["S"]), "L": sigma(ALBUMIN / pore["L"])}
    v_ref, slope = m["v_ref"], m["ml_per_mmhg"]

    def area(v):
        if m["area"] == "two-thirds":
            full = v_ref * 1400 * 1.73 / 2300
            return (min(v, full) / v_ref) ** (2 / 3)
        if m["area"] == "exponential":
            k = 0.00077 * 2300 / v_ref
            return math.expm1(-k * v) / math.expm1(-k * v_ref)
        return 1.0

    def flows(v, d):
        dp = m["dp"] - ((v - v_ref) / slope if slope else 0)
        out = {}
        for k in alpha:
            osmotic = sum(
                (1.0 if k == "C" else sg[k, n]) * (plasma[n] - d[n]) for n in ("urea", "glucose", "sodium", "anion"))
            out[k] = area(v) * alpha[k] * m["lps"] * (dp - protein[k] * m["dpi"] - RT * osmotic)
        return out

    def rhs(t, y):
        v = y[0]
        d = {n: y[1 + i] / v for i, n in enumerate(NAMES)}
        j = flows(v, d)
        boost = area(v) * (1 + m["f0"] * math.exp(-t / m["tau"]))
        rates = [j["C"] + j["S"] + j["L"] - m["lymph"]]
        for n in NAMES:
            rates.append(
                sum(patlak(j[k], sg[k, n], boost * ps[k, n], plasma[n], d[n]) for k in pore) - m["lymph"] * d[n])
        return rates + [j["C"], j["S"], j["L"]]

    fresh = dict(case["fresh"], anion=case["fresh"]["sodium"])
    residual = dict(case["residual"], anion=case["residual"]["sodium"])
    y0 = [case["fill"] + case["residual_ml"]]
    y0 += [case["fill"] * fresh[n] + case["residual_ml"] * residual[n] for n in NAMES] + [0, 0, 0]
    times = case["times"]
    got = solve_ivp(rhs, (0, times[-1]), y0, method=method, t_eval=times, rtol=1e-12, atol=1e-9, max_step=5)
    if not got.success:
        raise RuntimeError(got.message)
    v = got.y[0]
    rows = np.vstack([v, got.y[1:5] / v, got.y[6:9]])
    return rows.T.tolist()


if __name__ == "__main__":
    request = json.load(sys.stdin)
    json.dump({case["name"]: {m: simulate(case, m) for m in request["methods"]} for case in request["cases"]}, sys.stdout)

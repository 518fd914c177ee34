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


def chains(polymer):
    """Fractions of a log-normal polymer: (molar mass, radius, mmol/L fresh), maltose first."""
    mn, mw, grams = polymer["mn"], polymer["mw"], polymer["g_per_l"]
    s = math.sqrt(math.log(mw / mn))
    below = lambda x, middle: 0.5 * (1 + math.erf((math.log(x) - middle) / (s * math.sqrt(2))))
    number, mass = math.log(mn) - s * s / 2, math.log(mn) + s * s / 2
    edges = [(0.0, 0.0)] + [(below(c, number), below(c, mass)) for c in polymer["cuts"]] + [(1.0, 1.0)]
    out = [(342.3, 0.0)]
    for (n0, m0), (n1, m1) in zip(edges, edges[1:]):
        out.append((mn * (m1 - m0) / (n1 - n0), 1000 * grams / mn * (n1 - n0)))
    return [(mass_, 0.33 * mass_ ** 0.463, fresh) for mass_, fresh in out]


def simulate(case, method):
    m = case["membrane"]
    polymer = case.get("polymer")
    fractions = chains(polymer) if polymer else []
    links = [f"chain {i}" for i in range(len(fractions))]
    names = NAMES + links
    radius = dict(RADIUS, **{n: f[1] for n, f in zip(links, fractions)})
    active = {"urea": 1.0, "glucose": 1.0, "sodium": 1.0, "anion": 1.0}
    active.update({n: polymer["efficiency"] for n in links})
    alpha = {"C": m["alpha_c"], "S": 1 - m["alpha_c"] - m["alpha_l"], "L": m["alpha_l"]}
    pore = {"S": m["r_s"], "L": m["r_l"]}
    shares = {k: alpha[k] / pore[k] ** 2 for k in pore}
    total = sum(shares.values())
    ps, sg = {}, {}
    for name, a in radius.items():
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
    plasma = dict(case["plasma"], anion=case["plasma"]["sodium"], **dict(zip(links, polymer["plasma"] if polymer else [])))
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
                weight * (1.0 if k == "C" else sg[k, n]) * (plasma[n] - d[n]) for n, weight in active.items())
            out[k] = area(v) * alpha[k] * m["lps"] * (dp - protein[k] * m["dpi"] - RT * osmotic)
        return out

    def rhs(t, y):
        v = y[0]
        d = {n: y[1 + i] / v for i, n in enumerate(names)}
        j = flows(v, d)
        boost = area(v) * (1 + m["f0"] * math.exp(-t / m["tau"]))
        rates = [j["C"] + j["S"] + j["L"] - m["lymph"]]
        for n in names:
            out = m["lymph"] + (polymer["uptake"] if n in links else 0)
            rates.append(sum(patlak(j[k], sg[k, n], boost * ps[k, n], plasma[n], d[n]) for k in pore) - out * d[n])
        for i in range(1, len(fractions)):
            grams = polymer["scission"] * fractions[i][0] / polymer["mn"] * d[links[i]] * v * fractions[i][0]
            rates[1 + len(NAMES) + i] -= grams / fractions[i][0]
            rates[len(NAMES) + i] += grams / fractions[i - 1][0]
        return rates + [j["C"], j["S"], j["L"]]

    fresh = dict(case["fresh"], anion=case["fresh"]["sodium"], **{n: f[2] for n, f in zip(links, fractions)})
    residual = dict(case["residual"], anion=case["residual"]["sodium"], **dict.fromkeys(links, 0.0))
    y0 = [case["fill"] + case["residual_ml"]]
    y0 += [case["fill"] * fresh[n] + case["residual_ml"] * residual[n] for n in names] + [0, 0, 0]
    times = case["times"]
    got = solve_ivp(rhs, (0, times[-1]), y0, method=method, t_eval=times, rtol=1e-12, atol=1e-9, max_step=5)
    if not got.success:
        raise RuntimeError(got.message)
    v = got.y[0]
    rows = np.vstack([v, got.y[1:5] / v, got.y[-3:]])
    if fractions:
        rows = np.vstack([rows, sum(f[0] * 1e-6 * got.y[1 + len(NAMES) + i] for i, f in enumerate(fractions))])
    return rows.T.tolist()


if __name__ == "__main__":
    request = json.load(sys.stdin)
    json.dump({case["name"]: {m: simulate(case, m) for m in request["methods"]} for case in request["cases"]}, sys.stdout)

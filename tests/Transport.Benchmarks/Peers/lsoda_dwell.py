"""The three-pore equations of one dwell, integrated by SciPy's LSODA: a peer that our own integrator is timed against.

Reads a JSON problem from standard input (coefficients as in cvode_dwell.c), tunes its tolerance to the target, times itself, and prints a JSON result.
"""
import json
import sys
import time

import numpy as np
from scipy.integrate import solve_ivp

problem = json.load(sys.stdin)
minutes = np.array(problem["minutes"])
scale = np.array(problem["scale"])
floors = np.array(problem["floors"])
cases = [
    (np.array(case["coefficients"]), np.array(case["start"]), np.array(case["reference"]).reshape(len(minutes), -1))
    for case in problem["cases"]
]
n = len(scale) - 4


def gain(y):
    near = np.where(y < 1e-4, 1e-4, y)
    return np.where(y < 1e-4, 1 + y * y / 3, near / np.tanh(near))


def equations(c):
    rows = c[13:].reshape(11, n)
    plasma, _, passed_s, ps_s, passed_l, ps_l = rows[:6]
    pull = rows[6:9, :4]
    half_s, half_l = rows[9:]

    def rates(t, y):
        d = y[1:1 + n] / y[0]
        flows = c[:3] * (c[7] - c[8] * y[0] - c[3:6] - pull @ (plasma[:4] - d[:4]))
        a = 1 + c[9] * np.exp(-t * c[10])
        w_s, w_l = passed_s * flows[1], passed_l * flows[2]
        out = np.empty_like(y)
        out[0] = flows.sum() - c[6]
        out[1:1 + n] = ((w_s + w_l) * 0.5 * (plasma + d)
                        + (ps_s * gain(np.abs(w_s * half_s / a)) + ps_l * gain(np.abs(w_l * half_l / a))) * a * (plasma - d) - c[6] * d)
        out[1 + n:] = flows
        return out

    return rates


def observed(states):
    states = states.copy()
    states[:, 1:1 + n] /= states[:, :1]
    return states


def run(tolerance):
    worst = 0
    begin = time.perf_counter()
    solutions = [
        solve_ivp(equations(c), (0, minutes[-1]), start, method="LSODA", t_eval=minutes, rtol=tolerance, atol=tolerance * scale).y.T
        for c, start, _ in cases
    ]
    spent = (time.perf_counter() - begin) / len(cases)
    for solution, (_, _, reference) in zip(solutions, cases):
        worst = max(worst, np.max(np.abs(observed(solution) - reference) / np.maximum(np.abs(reference), floors)))
    return spent, worst


target = problem["target"]
tolerance = 1e-4
spent, worst = run(tolerance)
while worst > target:
    tolerance /= 1.3
    spent, worst = run(tolerance)
best = min(run(tolerance)[0] for _ in range(5))
json.dump({"microseconds": best * 1e6, "error": worst, "tolerance": tolerance}, sys.stdout)

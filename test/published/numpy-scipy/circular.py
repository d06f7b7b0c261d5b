"""Prints circular.csv: means and spreads of directions, by numpy and scipy alone."""
import numpy as np
from scipy import stats

CASES = [
    [350, 10], [1, 0, 359], [355, 5, 15], [10, 20, 30, 40], [340, 350, 0, 10, 20], [300, 330, 0, 30, 60],
    [0, 0, 90], [0, 90], [359, 1, 358, 2, 0, 3, 357], [43, 45, 52, 61, 75, 88, 88, 279, 357], [90] * 5,
    [12.5, 13.25, 8, 359.75, 271.5, 300],
]

print("headings,mean,agreement,yamartino,circstd,mitsutaMean,mitsutaSpread,exactSpread")
for case in CASES:
    a = np.deg2rad(np.array(case, float))
    s, c = np.sin(a).mean(), np.cos(a).mean()
    r = min(1.0, np.hypot(s, c))
    mean = np.rad2deg(np.arctan2(s, c)) % 360
    e = np.sqrt(max(0.0, 1 - (s * s + c * c)))
    yamartino = np.rad2deg(np.arcsin(min(1.0, e)) * (1 + (2 / np.sqrt(3) - 1) * e**3))
    circstd = np.rad2deg(stats.circstd(a))
    chain = np.unwrap(case, period=360)
    away = (np.array(case) - mean + 180) % 360 - 180
    row = [mean, r, yamartino, circstd, chain.mean() % 360, chain.std(), away.std()]
    print(" ".join(map(str, case)) + "," + ",".join(f"{x:.9f}" for x in row))

"""Prints review.csv: the figures that a review of boston.csv must give, by numpy alone."""
import pathlib
import numpy as np

heading, speed = np.loadtxt(pathlib.Path(__file__).with_name("boston.csv"), delimiter=",", skiprows=1).T
bounds, sectors, half = [2, 4, 6, 8, 11, 14], 16, 5
turn = np.deg2rad(heading)
unit = np.exp(1j * turn).mean()
wind = (speed * np.exp(1j * turn)).mean()
epsilon = np.sqrt(1 - abs(unit) ** 2)
figures = {
    "headingDeg": np.rad2deg(np.angle(unit)) % 360,
    "agreement": abs(unit),
    "spreadDeg": np.rad2deg(np.arcsin(epsilon) * (1 + (2 / np.sqrt(3) - 1) * epsilon**3)),
    "speedMPerS": speed.mean(),
    "vectorSpeedMPerS": abs(wind),
    "vectorHeadingDeg": np.rad2deg(np.angle(wind)) % 360,
    "steadiness": abs(wind) / speed.mean(),
    "windRunKm": speed.sum() * 3600 / 1000,
}
print("figure," + ",".join(f"class{i}" for i in range(len(bounds) + 1)))
for name, value in figures.items():
    print(f"{name},{value:.9f}")
rows = np.zeros((sectors, len(bounds) + 1))
for one, fast in zip(heading, speed):
    fine = one - half + 2 * half * (np.arange(100000) + 0.5) / 100000
    index = np.floor(((fine + 180 / sectors) % 360) * sectors / 360).astype(int) % sectors
    rows[:, np.digitize(fast, bounds)] += np.bincount(index, minlength=sectors) / 100000 / len(speed)
for i, row in enumerate(rows):
    print(f"sector{i}," + ",".join(f"{x:.7f}" for x in row))

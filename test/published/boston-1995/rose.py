"""Prints rose.csv: share of each report in each sector and speed class, by brute force with numpy."""
import pathlib
import numpy as np

table = np.loadtxt(pathlib.Path(__file__).with_name("boston.csv"), delimiter=",", skiprows=1)
bounds = [5, 6, 8]
print("sectors,sector," + ",".join(f"class{i}" for i in range(len(bounds) + 1)))
for sectors in (16, 36, 12):
    width = 360 / sectors
    rows = np.zeros((sectors, len(bounds) + 1))
    for heading, speed in table:
        fine = heading - 5 + 10 * (np.arange(10000) + 0.5) / 10000
        index = np.floor(((fine + width / 2) % 360) / width).astype(int) % sectors
        rows[:, np.digitize(speed, bounds)] += np.bincount(index, minlength=sectors) / 10000
    for i, row in enumerate(rows):
        print(f"{sectors},{i}," + ",".join(f"{x:.4f}" for x in row))

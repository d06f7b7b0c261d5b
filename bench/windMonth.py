"""Rival of windMonth.ts: the same figures with numpy, vectorised. Reads columns, prints seconds and figures as JSON."""
import json
import sys
import time

import numpy as np

PERIOD, CALM, HALF_WIDTH, SECTORS = 600, 0.5, 5.625, 16
heading, speed = np.fromfile(sys.argv[1]).reshape(2, -1)

began = time.perf_counter()
calm = (speed < CALM) | (speed == 0)
wind = ~calm
turn = np.deg2rad(heading)
north, east = np.cos(turn) * wind, np.sin(turn) * wind


def by_period(column):
    return column.reshape(-1, PERIOD)


winds = by_period(wind).sum(1)
agreement = np.minimum(1, np.hypot(by_period(north).sum(1), by_period(east).sum(1)) / winds)
mean_heading = np.rad2deg(np.arctan2(by_period(east).sum(1), by_period(north).sum(1))) % 360
epsilon = np.sqrt(1 - agreement**2)
yamartino = np.rad2deg(np.arcsin(epsilon) * (1 + (2 / np.sqrt(3) - 1) * epsilon**3))
vector = np.hypot(by_period(north * speed).sum(1), by_period(east * speed).sum(1)) / PERIOD
mean_speed, deviation = by_period(speed).mean(1), by_period(speed).std(1)
least, most = by_period(speed).min(1), by_period(speed).max(1)
mean_cube = by_period(speed**3).mean(1)
sums = np.cumsum(np.concatenate([[0.0, 0.0, 0.0], speed]))
sliding = (sums[3:] - sums[:-3]) / 3
sliding[:2] = -np.inf
gust = by_period(sliding).max(1)
chain = by_period(np.unwrap(heading, period=360))
unwrapped_mean, unwrapped_spread = chain.mean(1) % 360, chain.std(1)
swing = chain.max(1) - chain.min(1)

width = 360 / SECTORS
start = (heading - HALF_WIDTH + width / 2) % 360
first = np.floor((start + 1e-9) / width).astype(int)
inside = np.minimum(1, ((first + 1) * width - start) / (2 * HALF_WIDTH))
speed_class = np.digitize(speed, [2, 4, 6, 8, 10])
cell = first % SECTORS * 6 + speed_class
after = (first + 1) % SECTORS * 6 + speed_class
rose = np.bincount(cell, inside * wind, SECTORS * 6) + np.bincount(after, (1 - inside) * wind, SECTORS * 6)
seconds = time.perf_counter() - began

figures = [mean_heading, agreement, yamartino, vector, mean_speed, deviation, mean_cube, gust, least, most]
print(json.dumps({"seconds": seconds, "figures": [float(f.mean()) for f in figures], "rose": rose.tolist()}))

"""Rival of reviewYear.ts: ten-minute means, gusts and the rose with numpy, vectorised. Prints seconds and figures as JSON."""
import json
import sys
import time

import numpy as np

PERIOD, CALM, HALF_WIDTH, SECTORS = 600, 0.5, 5.625, 16
BOUNDS = [2, 4, 6, 8, 11, 14]
CLASSES = len(BOUNDS) + 1
heading, speed = np.fromfile(sys.argv[1]).reshape(2, -1)

began = time.process_time()


def by_period(column):
    return column.reshape(-1, PERIOD)


wind = speed >= CALM
turn = np.deg2rad(heading)
north, east = np.cos(turn) * wind, np.sin(turn) * wind
north_sum, east_sum = by_period(north).sum(1), by_period(east).sum(1)
wind_north, wind_east = by_period(north * speed).sum(1), by_period(east * speed).sum(1)
speeds = by_period(speed)
mean_speed, deviation = speeds.mean(1), speeds.std(1)
mean_cube = by_period(speed * speed * speed).mean(1)
sums = np.cumsum(np.concatenate([[0.0, 0.0, 0.0], speed]))
sliding = (sums[3:] - sums[:-3]) / 3
sliding[:2] = -np.inf
gust = by_period(sliding).max(1)

width = 360 / SECTORS
start = (heading - HALF_WIDTH + width / 2) % 360
first = np.floor((start + 1e-9) / width).astype(int)
inside = np.minimum(1, ((first + 1) * width - start) / (2 * HALF_WIDTH))
speed_class = np.digitize(speed, BOUNDS)
cell = first % SECTORS * CLASSES + speed_class
after = (first + 1) % SECTORS * CLASSES + speed_class
rose = np.bincount(cell, inside * wind, SECTORS * CLASSES)
rose += np.bincount(after, (1 - inside) * wind, SECTORS * CLASSES)
seconds = time.process_time() - began

figures = [np.hypot(north_sum, east_sum), np.hypot(wind_north, wind_east), mean_speed, deviation, mean_cube, gust]
print(json.dumps({"seconds": seconds, "figures": [float(f.mean()) for f in figures], "rose": rose.tolist()}))

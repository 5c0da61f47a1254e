"""Published tables that several tests start from, with their sources."""

import numpy as np

# Goodwin and Wright, Decision Analysis for Management Judgment, ch. 3, the office table, A to G [mixed]
OFFICES = np.array(
    [
        [100, 60, 100, 75, 0, 90],
        [20, 80, 10, 30, 100, 30],
        [80, 70, 0, 0, 10, 100],
        [70, 50, 30, 55, 30, 90],
        [40, 60, 90, 100, 60, 70],
        [0, 0, 70, 0, 80, 0],
        [60, 100, 20, 50, 50, 80],
    ],
    dtype=float,
)
OFFICE_SHARES = np.array([32, 26, 23, 10, 6, 3]) / 100

# the exercise "Jolly Company", X to Z on price, quality, delivery and service [stored]
SUPPLIERS = np.array([[5, 2, 3, 2], [4, 5, 4, 5], [3, 5, 3, 4]], dtype=float)
SUPPLIER_SHARES = np.array([0.6, 0.2, 0.1, 0.1])

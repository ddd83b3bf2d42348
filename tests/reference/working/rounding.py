# SPDX-License-Identifier: Apache-2.0
"""Rounding as the trade rules have it (their preamble): half away from zero, whole numbers and halves within 1e-6."""

import math

NEAR = 1e-6


def settle(value):
    """A value within 1e-6 of a whole number is that number."""
    whole = math.floor(value + 0.5)
    return float(whole) if abs(value - whole) <= NEAR else value


def up(value):
    return int(math.ceil(settle(value)))


def down(value):
    return int(math.floor(settle(value)))


def nearest(value):
    """To the nearest whole number, half away from zero; within 1e-6 of a half is the half."""
    magnitude = abs(value)
    whole = int(math.floor(magnitude + 0.5 + NEAR))
    return -whole if value < 0 else whole


def more(a, b):
    """a > b, and not merely within 1e-6 of it."""
    return a > b + NEAR


def at_least(a, b):
    return a >= b - NEAR

#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""astropy_test.py SUN_DAYS: rise, set and height of the sun as the library has them, against astropy (python3-astropy of
Debian: ERFA's sun, AltAz without refraction), at all latitudes. Where the sun only grazes the horizon a crossing moves by much for
little height: so height at our moment of crossing is compared too, and times where it crosses by more than 2° an hour."""
import random
import subprocess
import sys
import warnings

import numpy
from astropy import units
from astropy.coordinates import AltAz, EarthLocation, get_sun
from astropy.time import Time, TimeDelta
from astropy.utils import iers

iers.conf.auto_download = False
iers.conf.iers_degraded_accuracy = "ignore"
warnings.simplefilter("ignore")

HORIZON = -0.833
CLOSE_SECONDS, CLOSE_DEGREES = 10.0, 0.02


def cases():
    chance = random.Random(8)
    for latitude in (0.0, 51.5, -33.9, 64.1, 66.5, 69.6, 78.2, -77.8, 90.0, -90.0):
        for _ in range(4):
            day = f"{chance.randint(2000, 2060)}-{chance.randint(1, 12):02}-{chance.randint(1, 28):02}"
            yield latitude, round(chance.uniform(-180.0, 180.0), 4), f"{day}T{chance.randint(0, 23):02}:00:00Z"


def altitudes(latitude, longitude, start, seconds):
    moments = Time(start.rstrip("Z"), scale="utc") + TimeDelta(seconds, format="sec")
    where = EarthLocation(lat=latitude * units.deg, lon=longitude * units.deg)
    return get_sun(moments).transform_to(AltAz(obstime=moments, location=where)).alt.deg


def crossings(heights, seconds):
    """(+1 or -1, seconds, degrees an hour) where a line through two samples goes through the horizon."""
    found = []
    for i in range(len(heights) - 1):
        before, after = heights[i] - HORIZON, heights[i + 1] - HORIZON
        if (before > 0) != (after > 0):
            width = seconds[i + 1] - seconds[i]
            found.append((1 if after > 0 else -1, seconds[i] + width * before / (before - after),
                          abs(after - before) / width * 3600))
    return found


def main(program):
    asked = list(cases())
    told = subprocess.run([program], input="".join(f"{a} {b} {c}\n" for a, b, c in asked), capture_output=True,
                          text=True, check=True).stdout.splitlines()
    assert len(told) == len(asked)
    seconds = numpy.arange(0.0, 86_401.0, 120.0)
    worst = 0.0
    for case, line in zip(asked, told):
        *ours, highest = [(1 if word[0] == "+" else -1, float(word.lstrip("+-"))) if word[0] in "+-" and i < len(line.split()) - 1
                          else float(word) for i, word in enumerate(line.split())]
        heights = altitudes(*case, seconds)
        assert abs(max(heights) - highest) < CLOSE_DEGREES, (case, max(heights), highest)
        if ours:
            at = altitudes(*case, numpy.array([second for _, second in ours]))
            assert max(abs(at - HORIZON)) < CLOSE_DEGREES, (case, at)
        steep = [one for one in crossings(heights, seconds) if one[2] > 2.0]
        for way, second, _ in steep:
            off = min((abs(second - other) for sign, other in ours if sign == way), default=1e9)
            worst = max(worst, off)
            assert off < CLOSE_SECONDS, (case, way, second, ours)
    print(f"{len(asked)} days, crossings within {worst:.1f} s")


main(sys.argv[1])

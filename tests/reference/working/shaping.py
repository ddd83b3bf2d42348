# SPDX-License-Identifier: Apache-2.0
"""Runs bent round a bay and tops that follow an arch or a gable, from sizes that are adjusted already.

A run is drawn here as the glass line moved into the room, its lines met by solving for where they cross; the program
takes a tangent off each facet. Tops are drawn by circles' own equations.
"""

import math


def offset_run(widths, inside_degrees, off):
    """Lengths of the legs of a track `off` from facets that meet at these inside angles, its ends square to the outer
    edges: every facet's line moved by `off` to the room's side, met with the next one's."""
    at, heading, corners, normals, directions = 0j, 1 + 0j, [0j], [], []
    for i, width in enumerate(widths):
        directions.append(heading)
        normals.append(heading * -1j)  # the room lies to the right of the way from left to right
        at += width * heading
        corners.append(at)
        if i < len(inside_degrees):
            turn = math.radians(180.0 - inside_degrees[i])
            heading *= complex(math.cos(turn), -math.sin(turn))
    points = [corners[0] + off * normals[0]]
    for i in range(1, len(widths)):
        # corner + off n1 + s d1 = corner + off n2 + t d2, solved for s by the cross product with d2
        gap = off * (normals[i] - normals[i - 1])
        d1, d2 = directions[i - 1], directions[i]
        cross = d1.real * d2.imag - d1.imag * d2.real
        s = (gap.real * d2.imag - gap.imag * d2.real) / cross if abs(cross) > 1e-12 else 0.0
        points.append(corners[i] + off * normals[i - 1] + s * d1)
    points.append(corners[-1] + off * normals[-1])
    return [((b - a) * d.conjugate()).real for a, b, d in zip(points, points[1:], directions)]


def arch_over(x, width, rise):
    """Height over the springing line of the one circle through both springings and the crown, at x: the upper root of
    its equation."""
    half = width / 2.0
    below = (half * half - rise * rise) / (2.0 * rise)  # the centre's depth under the springing line
    radius = rise + below
    return math.sqrt(max(0.0, radius * radius - (x - half) ** 2)) - below


def gable_over(x, width, left, right, along, apex):
    if x <= along:
        return left + (apex - left) * (x / along if along > 0 else 1.0)
    return right + (apex - right) * ((width - x) / (width - along))

"""Exact areas of the first outline of a pair, in rational numbers, where engines differ: python3 exact.py 861 1729

Draws the same pairs as areas.mjs. Between two heights at which nothing begins, ends or crosses, the inside is made of trapezia.
"""

import sys
from fractions import Fraction
from itertools import pairwise

state = 1


def draw(below):
    global state
    state = (state * 1664525 + 1013904223) % 2**32
    return int(state / 2**32 * below)


def ring(kind, first=None):
    if kind == 2 and first:
        return [(x + draw(3) - 1, y + draw(3) - 1) for x, y in first]
    corners = 3 + draw(12 if kind == 0 else 24)
    if kind == 1:
        return [(draw(9) * 1250, draw(9) * 1250) for _ in range(corners)]
    if kind == 3:
        return [((i % 2) * 10000 + draw(5), draw(400)) for i in range(corners)]
    return [(draw(10001), draw(10001)) for _ in range(corners)]


def area(ring, inside):
    edges = [(p, q) for p, q in zip(ring, ring[1:] + ring[:1]) if p[1] != q[1]]
    heights = {Fraction(y) for _, y in ring}
    for i, ((x1, y1), (x2, y2)) in enumerate(edges):
        for (x3, y3), (x4, y4) in edges[:i]:
            cross = (x2 - x1) * (y4 - y3) - (y2 - y1) * (x4 - x3)
            if cross:
                heights.add(y1 + Fraction((x3 - x1) * (y4 - y3) - (y3 - y1) * (x4 - x3), cross) * (y2 - y1))
    total = Fraction(0)
    for low, high in pairwise(sorted(heights)):
        middle = (low + high) / 2
        crossings = sorted(
            (x1 + (middle - y1) * Fraction(x2 - x1, y2 - y1), 1 if y2 > y1 else -1)
            for (x1, y1), (x2, y2) in edges
            if min(y1, y2) < middle < max(y1, y2)
        )
        winding = 0
        for (left, turn), (right, _) in pairwise(crossings):
            winding += turn
            if inside(winding):
                total += (right - left) * (high - low)
    return float(total)


wanted = [int(word) for word in sys.argv[1:]]
for pair in range(max(wanted) + 1):
    first = ring(pair % 4)
    ring(pair % 4, first)
    if pair in wanted:
        print(pair, "NonZero", area(first, lambda w: w != 0), "EvenOdd", area(first, lambda w: w % 2 != 0))

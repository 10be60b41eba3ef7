"""Forces of a jacked pipe over six stretches at three levels in Python: plain, vectorised over cases with numpy, and with a
units package. Reads what `cargo bench --bench ratios` printed: first each has to come to the same forces, to a billionth, then
`ratio NAME VALUE` tells what it takes over what ours takes. Needs numpy and pint.

    speed.py RATIOS.txt
"""

import math
import sys
import timeit

import numpy
import pint

LENGTH, STEM, HEAD, SLOPE, BLOWS, COUNT = 60.0, 0.1, 0.12, 0.004, 12.0, 6
FRICTION = (2e3, 5e3, 9e3)
STRETCHES = [(LENGTH * i / COUNT, LENGTH * (i + 1) / COUNT, FRICTION, BLOWS) for i in range(COUNT)]

LINES = [line.split() for line in open(sys.argv[1])]
INPUT = {line[1]: [float(value) for value in line[2:]] for line in LINES if line[0] == "input"}
OURS = next(float(line[2]) for line in LINES if line[:2] == ["time", f"forces_{COUNT}"])
DIAMETER, WEIGHT = INPUT["pipe"]
CONE, FACE, LEAST = INPUT["cone"], INPUT["face"], INPUT["least"]


def walk(stretches, pi, most, diameter, stem, weight, climb, cone, face, least, zero):
    """Greatest force of the stem stage and of the pipe stage, at three levels."""
    own, tops = [zero] * 3, [zero] * 3
    for begin, end, tau, blows in stretches:
        for level in range(3):
            tip = cone[level] * blows * (pi / 4 * (HEAD / STEM * stem) ** 2)
            tops[level] = most(tops[level], own[level] + tip)
            own[level] = own[level] + tau[level] * (pi * stem * (end - begin))
            tops[level] = most(tops[level], own[level] + tip)
    ring = pi / 4 * (diameter * diameter - stem * stem)
    ahead, own, jacking = own, [zero] * 3, [zero] * 3
    for begin, end, tau, _ in stretches:
        for level in range(3):
            front = most(face[level] * ring, least[level])
            jacking[level] = most(jacking[level], own[level] + ahead[level] + front)
            own[level] = own[level] + tau[level] * (pi * diameter * (end - begin)) + weight * (end - begin) * climb
            ahead[level] = ahead[level] - tau[level] * (pi * stem * (end - begin))
            jacking[level] = most(jacking[level], own[level] + ahead[level] + front)
    return tops, jacking


def plain():
    climb = math.sin(math.atan(SLOPE))
    return walk(STRETCHES, math.pi, max, DIAMETER, STEM, WEIGHT, climb, CONE, FACE, LEAST, 0.0)


def vectorised(cases):
    climb = math.sin(math.atan(SLOPE))
    diameter = numpy.full(cases, DIAMETER)
    zero = numpy.zeros(cases)
    return walk(STRETCHES, math.pi, numpy.maximum, diameter, STEM, WEIGHT, climb, CONE, FACE, LEAST, zero)


def with_units():
    unit = pint.get_application_registry()
    metre, newton, pascal = unit.metre, unit.newton, unit.pascal
    stretches = [
        (begin * metre, end * metre, [tau * pascal for tau in friction], blows)
        for begin, end, friction, blows in STRETCHES
    ]
    cone, face = ([value * pascal for value in values] for values in (CONE, FACE))
    least = [value * newton for value in LEAST]
    climb = math.sin(math.atan(SLOPE))

    def most(a, b):
        return a if a >= b else b

    return walk(
        stretches, math.pi, most, DIAMETER * metre, STEM * metre, WEIGHT * newton / metre, climb, cone, face,
        least, 0.0 * newton,
    )


def nanoseconds(work, cases, number):
    return min(timeit.repeat(work, number=number, repeat=5)) / number / cases * 1e9


def told(name, work, cases, number, forces):
    for of_stage, stage in zip(forces, ("stem", "jacking")):
        for force, ours in zip(of_stage, INPUT[f"{stage}_{COUNT}"]):
            assert abs(force / ours - 1) < 1e-9, f"{name}, {stage}: {force} and ours {ours}"
    print(f"ratio {name}_over_ours {nanoseconds(work, cases, number) / OURS:.1f}")


if __name__ == "__main__":
    many = vectorised(3)
    told("numpy_10000_cases", lambda: vectorised(10_000), 10_000, 20, [[level[-1] for level in stage] for stage in many])
    told("plain_python", plain, 1, 2_000, plain())
    units = with_units()
    told("units_package", with_units, 1, 5, [[level.to("newton").magnitude for level in stage] for stage in units])

"""Forces of a jacked pipe over six stretches at three levels, as in benches/bare.rs, in Python: plain, vectorised over
cases with numpy, and with a units package. Prints nanoseconds a case. Needs numpy and pint."""

import math
import timeit

import numpy
import pint

LENGTH, STEM, SLOPE = 60.0, 0.1, 0.004
DIAMETER, WEIGHT, CONE, BLOWS = 0.338, 948.6, 0.45e6, 12.0
FACE, LEAST = (50e3, 75e3, 100e3), (10e3, 15e3, 20e3)
FRICTION = (2e3, 5e3, 9e3)
COUNT = 6
STRETCHES = [(LENGTH * i / COUNT, LENGTH * (i + 1) / COUNT, FRICTION, BLOWS) for i in range(COUNT)]


def walk(stretches, pi, most, diameter, stem, weight, climb, cone, face, least, zero):
    """Greatest force of the stem stage and of the pipe stage, at three levels."""
    own, tops = [zero] * 3, [zero] * 3
    for begin, end, tau, blows in stretches:
        tip = cone * blows * (pi / 4 * stem * stem)
        for level in range(3):
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
    face, least = [value * pascal for value in FACE], [value * newton for value in LEAST]
    climb = math.sin(math.atan(SLOPE))

    def most(a, b):
        return a if a >= b else b

    return walk(
        stretches, math.pi, most, DIAMETER * metre, STEM * metre, WEIGHT * newton / metre, climb, CONE * pascal, face,
        least, 0.0 * newton,
    )


def nanoseconds(work, cases, number):
    return min(timeit.repeat(work, number=number, repeat=5)) / number / cases * 1e9


if __name__ == "__main__":
    _, one = plain()
    _, many = vectorised(3)
    _, units = with_units()
    for a, b, c in zip(one, many, units):
        assert abs(b[0] / a - 1) < 1e-12 and abs(c.to("newton").magnitude / a - 1) < 1e-12
    print(f"plain Python: {nanoseconds(plain, 1, 2_000):.0f} ns a case")
    print(f"numpy, 10,000 cases at once: {nanoseconds(lambda: vectorised(10_000), 10_000, 20):.0f} ns a case")
    print(f"units package: {nanoseconds(with_units, 1, 5):.0f} ns a case")

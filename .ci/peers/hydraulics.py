"""Rewrites tests/behaviour/hydraulics_peer.json: part-full circular pipes as the Python package fluids has them.

    python3 -m venv /tmp/peer
    /tmp/peer/bin/pip install fluids==1.3.1
    /tmp/peer/bin/python .ci/peers/hydraulics.py tests/behaviour/hydraulics_peer.json

Without an argument the text goes to standard output.
"""

import json
import platform
import sys

import fluids
from fluids.geometry import A_partial_circle, SA_partial_cylindrical_body
from fluids.open_flow import V_Manning

SECTIONS = [
    (diameter, ratio)
    for diameter in (0.15, 0.2032, 0.6, 1.5)
    for ratio in (0.02, 0.1, 0.25, 0.4, 0.5, 0.65, 0.8, 0.938, 0.99, 1.0)
]
SLOPES = (0.0005, 0.004, 0.03)
ROUGHNESSES = (0.009, 0.013, 0.015)


def section(diameter, ratio):
    depth = ratio * diameter
    area = A_partial_circle(diameter, depth)
    # The wet wall of a horizontal cylinder of unit length.
    perimeter = SA_partial_cylindrical_body(L=1.0, D=diameter, h=depth)
    velocities = [
        {"slope": slope, "n": n, "velocity": V_Manning(area / perimeter, slope, n)}
        for slope in SLOPES
        for n in ROUGHNESSES
    ]
    return {"diameter": diameter, "ratio": ratio, "area": area, "perimeter": perimeter, "velocities": velocities}


fixture = {
    "origin": {
        "package": "fluids (https://pypi.org/project/fluids/)",
        "version": fluids.__version__,
        "python": platform.python_version(),
        "made": "2026-11",
        "by": ".ci/peers/hydraulics.py",
        "unit": "m, m2, m/s",
    },
    "sections": [section(*one) for one in SECTIONS],
}
text = json.dumps(fixture, indent=1) + "\n"
if len(sys.argv) > 1:
    with open(sys.argv[1], "w", encoding="utf-8") as file:
        file.write(text)
else:
    sys.stdout.write(text)

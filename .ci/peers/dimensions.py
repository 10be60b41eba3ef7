"""Rewrites tests/published/dimensions_peer.json: dimension series as the Python package fluids carries them.

    python3 -m venv /tmp/peer
    /tmp/peer/bin/pip install fluids==1.3.1
    /tmp/peer/bin/python .ci/peers/dimensions.py tests/published/dimensions_peer.json

Without an argument the text goes to standard output.
"""

import json
import platform
import sys

import fluids
import fluids.piping as piping


def series(sizes, outside, wall=None):
    """Nominal size in inches against outside diameter (and wall), in the unit of the package."""
    rows = []
    for index, size in enumerate(sizes):
        row = {"size": float(size), "outside": float(outside[index])}
        if wall is not None:
            row["wall"] = float(wall[index])
        rows.append(row)
    return rows


fixture = {
    "origin": {
        "package": "fluids (https://pypi.org/project/fluids/)",
        "version": fluids.__version__,
        "python": platform.python_version(),
        "made": "2026-11",
        "by": ".ci/peers/dimensions.py",
        "unit": "mm",
    },
    "pe_ips_dr_11": series(piping.NPSDR11_F2619, piping.SDR11o_F2619IPS, piping.SDR11t_F2619IPS),
    "pvc_c900": series(piping.NPS_C900, piping.SDR18o_C900, piping.SDR18t_C900),
    "pvc_c905": series(piping.NPSCIDR18_C905, piping.SCIDR18o_C905, piping.SCIDR18t_C905),
    "steel_standard_wall": series(piping.NPSSTD, piping.STDo, piping.STDt),
}
text = json.dumps(fixture, indent=2) + "\n"
if len(sys.argv) > 1:
    with open(sys.argv[1], "w", encoding="utf-8") as file:
        file.write(text)
else:
    sys.stdout.write(text)

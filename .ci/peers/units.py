"""Rewrites tests/behaviour/units_peer.json: every unit of src/quantity/unit.rs as the Python package pint has it.

    python3 -m venv /tmp/peer
    /tmp/peer/bin/pip install pint==0.25.3
    /tmp/peer/bin/python .ci/peers/units.py tests/behaviour/units_peer.json

Without an argument the text goes to standard output.
"""

import datetime
import json
import platform
import sys

import pint

# Names of pint only, never numbers of our own: a factor typed here would compare our table with itself.
UNITS = {
    "m": "meter",
    "mm": "millimeter",
    "cm": "centimeter",
    "km": "kilometer",
    "in": "inch",
    "inch": "inch",
    "ft": "foot",
    "yd": "yard",
    "L": "liter",
    "gal_us": "US_liquid_gallon",
    "ha": "hectare",
    "g": "gram",
    "kg": "kilogram",
    "t": "metric_ton",
    "lb": "avoirdupois_pound",
    "s": "second",
    "min": "minute",
    "h": "hour",
    "d": "day",
    "day": "day",
    "year": "julian_year",
    "N": "newton",
    "kN": "kilonewton",
    "MN": "meganewton",
    "lbf": "pound_force",
    "kip": "kip",
    "kgf": "kilogram_force",
    "tf": "metric_ton_force",
    "tonf_us": "US_ton_force",
    "mPa": "millipascal",
    "cP": "centipoise",
    "Pa": "pascal",
    "kPa": "kilopascal",
    "MPa": "megapascal",
    "GPa": "gigapascal",
    "bar": "bar",
    "psi": "psi",
    "ksi": "ksi",
    "psf": "pound_force / foot**2",
    "ksf": "kip / foot**2",
    "plf": "pound_force / foot",
    "pcf": "pound_force / foot**3",
    "%": "percent",
    "rad": "radian",
    "deg": "degree",
    "°": "degree",
    "K": "kelvin",
    "degC": "degree_Celsius",
    "°C": "degree_Celsius",
    "degF": "degree_Fahrenheit",
    "°F": "degree_Fahrenheit",
}

# Text as jackpull reads it, and the number and unit as pint has them.
READINGS = {
    "-40 degC": (-40, "degree_Celsius"),
    "23 degC": (23, "degree_Celsius"),
    "-40 degF": (-40, "degree_Fahrenheit"),
    "73 degF": (73, "degree_Fahrenheit"),
    "140 degF": (140, "degree_Fahrenheit"),
    "120 lbf/ft3": (120, "pound_force / foot**3"),
    "18 kN/m3": (18, "kilonewton / meter**3"),
    "5 N*m": (5, "newton * meter"),
    "30 ft*lbf": (30, "foot * pound_force"),
    "1.5 m/min": (1.5, "meter / minute"),
    "2.5 kip/ft": (2.5, "kip / foot"),
    "120 lb/ft3": (120, "avoirdupois_pound / foot**3"),
    "800 in^4": (800, "inch**4"),
    "12 L/min": (12, "liter / minute"),
    "8 gal_us/min": (8, "US_liquid_gallon / minute"),
}


def main():
    registry = pint.UnitRegistry()

    def si(number, unit):
        return float(registry.Quantity(number, unit).to_base_units().magnitude)

    fixture = {
        "origin": {
            "package": "pint (https://pypi.org/project/Pint/)",
            "version": pint.__version__,
            "python": platform.python_version(),
            "made": datetime.date.today().strftime("%Y-%m"),
            "by": ".ci/peers/units.py",
            "how": "SI base units in one of each unit, and in each reading: UnitRegistry().Quantity(number, unit)"
            ".to_base_units(), with the unit definitions pint ships",
        },
        "units": {symbol: si(1, unit) for symbol, unit in UNITS.items()},
        "readings": {text: si(*reading) for text, reading in READINGS.items()},
    }
    text = json.dumps(fixture, indent=2, ensure_ascii=False) + "\n"
    if len(sys.argv) > 1:
        with open(sys.argv[1], "w", encoding="utf-8") as file:
            file.write(text)
    else:
        sys.stdout.write(text)


if __name__ == "__main__":
    main()

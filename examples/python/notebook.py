"""A drive that gets longer, from Python: `maturin build`, install the wheel, then run this file.

It stops where an answer is not what the drive file of the examples tells.
"""
import pathlib

import jackpull_python as jackpull

EXAMPLES = pathlib.Path(__file__).resolve().parent.parent
text = (EXAMPLES / "fennbridge_mill_lane.yaml").read_text()

# The first line of the page.
report = jackpull.assess(text)
assert report["answer"].startswith("PIPE JACKING, clay 10 in: fits; governed by invert, line and grade at 0.85")

# How the force grows with the length, and what governs then.
assert text.count("length: 60 m\n") == 1
for metres in (40, 60, 80, 100):
    longer = jackpull.assess(text.replace("length: 60 m\n", f"length: {metres} m\n"))
    first = longer["schemes"][0]
    print(f"{metres:>4} m  high force {first['force']['high']['value']:7.1f} kN  {longer['answer']}")

# A row and its source, and the laws by mark.
row = jackpull.tables()["sewer_min_slope"]["size_10_in"]
print(row)
assert (row["columns"]["slope"], row["source"]) == ("0.28 %", "ten_states")
laws = jackpull.laws()
print({mark: sum(law["mark"] == mark for law in laws) for mark in {law["mark"] for law in laws}})
assert any(law["name"] == "tension after bends" and law["source"] == "ttp_2010" for law in laws)

# A faulty file tells its faults.
try:
    jackpull.assess(text.replace("length: 60 m\n", "length: 60 kN\n"))
except ValueError as error:
    print(error)
else:
    raise AssertionError("a length in kN")

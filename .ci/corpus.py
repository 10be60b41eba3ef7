"""Drives for comparing two builds of the program: made at random, always the same for the same seed.

    corpus.py make DIR PROGRAM              writes the drives as DIR/0000.yaml and on; what the program refuses is
                                            taken out or put in as it advises, but for every eighth drive
    corpus.py compare OLD NEW [DIR]         runs both programs over the drives (made with OLD where no DIR is given),
                                            the examples and the templates, and tells at which places they differ

Options: --keep FILE (what the old program said, for the next time), --drives N (600), --seed S (1), --sample N (only so many of them), --show N (so many places), --text (the
text pages too). The drives are plausible and odd, in both systems of units. Nothing but Python is needed. Exit code 1
where something differs.
"""
import argparse
import collections
import hashlib
import json
import pathlib
import pickle
import random
import re
import subprocess
import sys
import tempfile

HERE = pathlib.Path(__file__).resolve()


class Drive:
    """One random drive file."""

    def __init__(self, rng):
        self.r = rng
        self.us = rng.random() < 0.35
        self.easy = rng.random() < 0.4

    def maybe(self, p=0.3):
        return self.r.random() < p

    def any(self, *of):
        return self.r.choice(of)

    def num(self, low, high, digits=3):
        return float(f"{self.r.uniform(low, high):.{digits}g}")

    def q(self, low, high, si, us=None, scale=1.0):
        """A quantity between two numbers in the unit `si`; `us` with `scale` says the same in the other system."""
        if self.us and us:
            return f"{self.num(low * scale, high * scale)} {us}"
        return f"{self.num(low, high)} {si}"

    def m(self, low, high):
        return self.q(low, high, "m", "ft", 3.28084)

    def mm(self, low, high):
        return self.q(low, high, "mm", "in", 1 / 25.4)

    def kn(self, low, high):
        return self.q(low, high, "kN", "lbf", 224.809)

    def kpa(self, low, high):
        return self.q(low, high, "kPa", "psf", 20.8854)

    def mpa(self, low, high):
        return self.q(low, high, "MPa", "psi", 145.038)

    def weight(self, low, high):
        return self.q(low, high, "kN/m3", "pcf", 6.36588)

    def torque(self, low, high):
        return self.q(low, high, "kN*m", "lbf*ft", 737.562)

    def band(self, make, low, high):
        steps = sorted(self.num(low, high) for _ in range(3))
        texts = [make(step, step) for step in steps]
        return dict(zip(("low", "likely", "high"), texts))

    def soil(self, layers=True):
        soil = {"moist": self.weight(16, 20), "friction_angle": f"{self.num(24, 38)} deg"}
        soil[self.any("saturated", "saturated", "buoyant")] = None
        if "saturated" in soil:
            soil["saturated"] = self.weight(19, 22)
        else:
            soil["buoyant"] = self.weight(8, 12)
        if self.maybe(0.15):
            soil.pop("saturated", None), soil.pop("buoyant", None)
        for key, make in (("undrained_strength", lambda: self.kpa(15, 250)), ("cohesion", lambda: self.kpa(1, 10)),
                          ("undrained_modulus", lambda: self.mpa(3, 60)), ("shear_modulus", lambda: self.mpa(2, 30)),
                          ("surcharge", lambda: self.kpa(5, 20))):
            if self.maybe(0.35):
                soil[key] = make()
        if layers and self.maybe(0.15):
            soil["layers"] = [{"thickness": self.m(0.5, 1.5), "moist": self.weight(16, 20),
                               "saturated": self.weight(19, 22), "friction_angle": f"{self.num(24, 34)} deg"}]
        return soil

    def stretch(self):
        r = self
        if r.easy:
            clay = {"class": "firm_to_very_stiff_clay", "spt_n": str(r.r.randint(8, 28)), "largest_stone": r.mm(0, 30)}
            return clay | ({"soil": r.soil()} if r.maybe(0.6) else {})
        clays = ("soft_clay", "firm_to_very_stiff_clay", "firm_to_very_stiff_clay", "hard_clay")
        kind = r.any(*clays, "silt", "loose_sand", "medium_to_dense_sand", "gravel", "fill", "weak_rock", "hard_rock",
                     "peat", "unknown")
        of = {"class": kind}
        if r.maybe(0.75):
            blows = {"soft_clay": (1, 4), "firm_to_very_stiff_clay": (5, 28), "hard_clay": (31, 60), "silt": (2, 30),
                     "loose_sand": (2, 9), "medium_to_dense_sand": (11, 48), "gravel": (10, 60), "fill": (2, 40),
                     "peat": (1, 4), "unknown": (5, 40), "weak_rock": (50, 90), "hard_rock": (60, 100)}[kind]
            of["spt_n"] = str(r.r.randint(*blows))
        if r.maybe(0.8):
            of["largest_stone"] = r.mm(0, 60) if r.maybe(0.8) else r.mm(60, 400)
        if r.maybe(0.12):
            of["mixed_with"] = r.any("silt", "loose_sand", "gravel", "hard_clay", "medium_to_dense_sand")
            if of["mixed_with"] == kind:
                del of["mixed_with"]
        if r.maybe(0.2):
            of["groundwater"] = r.any("none", r.m(0.5, 6))
        if r.maybe(0.12):
            of["treatment"] = r.any("dewatered", "grouted")
        if r.maybe(0.1):
            of["hazards"] = [r.any("obstructions", "swelling", "sensitive", "artesian", "karst", "contaminated")]
        if r.maybe(0.25):
            of["unit_friction"] = r.band(r.kpa, 1, 25)
        if r.maybe(0.5):
            of["soil"] = r.soil()
        return of

    def jacked_extra(self, of, sure_end=False):
        r = self
        if r.maybe(0.35):
            of["pipe_length"] = r.m(1, 3)
        if r.maybe(0.3) and not sure_end:
            t = r.num(8, 20, 2)
            of["packer"] = {"thickness": f"{t} mm"}
            for key, make in (("modulus", lambda: r.mpa(80, 500)),):
                if r.maybe(0.5):
                    of["packer"][key] = make()
        if r.maybe(0.2):
            of["end_squareness"] = r.mm(0, 3)

    def candidate(self):
        r = self
        kind = r.any("clay", "clay", "clay", "concrete", "concrete", "steel", "steel", "grp", "polymer_concrete",
                     "ductile_iron", "pvc", "pvc_fused", "pvc_restrained", "pe", "pe", "pe", "pe", "pulled_steel",
                     "pulled_iron")
        of = {"material": kind}
        jacked = True
        if kind == "clay":
            of["size"] = r.any("6 in", "8 in", "10 in", "10 in", "12 in", "15 in", "18 in", "21 in", "24 in")
            if r.maybe(0.3):
                of["certificate"] = r.any("unknown", "astm_c1208", "en_295_7")
            if r.maybe(0.2):
                of["factor"] = str(r.num(2, 4, 2))
            if r.maybe(0.1):
                of["joint_stress_ratio"] = str(r.num(0.3, 0.6, 2))
            if r.maybe(0.15):
                of["rated_force"] = r.kn(300, 2500)
            if r.maybe(0.2):
                of |= {"outside_diameter": r.mm(330, 360), "inside_diameter": r.mm(240, 260),
                       "end_bearing_area": r.q(0.02, 0.04, "m2", "in2", 1550), "weight": r.q(0.8, 1.5, "kN/m", "lbf/ft", 68.52)}
            r.jacked_extra(of)
        elif kind == "concrete":
            of["size"] = r.any("300 mm", "400 mm", "600 mm", "800 mm", "36 in", "48 in", "900 mm", "1200 mm")
            if r.maybe(0.5):
                of["strength"] = r.mpa(35, 80)
            elif r.maybe(0.4):
                of["cube_strength"] = r.mpa(45, 90)
            else:
                of["concrete_grade"] = r.any("c40", "c50", "gb_c50", "c40_50")
            if r.maybe(0.3):
                of["scheme"] = r.any("default", "asce_27", "en_1916", "cn_annex_e", "jswas_a6")
            if r.maybe(0.3):
                of |= {"outside_diameter": r.mm(1000, 1200), "inside_diameter": r.mm(700, 900)}
            if r.maybe(0.15):
                of["design_strength"] = r.mpa(15, 30)
            if r.maybe(0.15):
                of["end_bearing_area"] = r.q(0.1, 0.3, "m2", "in2", 1550)
            if r.maybe(0.15):
                of["factor"] = str(r.num(1.5, 3, 2))
            r.jacked_extra(of)
        elif kind == "steel":
            of["size"] = r.any("406.4 mm", "457.2 mm", "609.6 mm", "24 in", "30 in", "12.75 in", "16 in")
            of["outside_diameter"], of["wall"] = r.mm(400, 620), r.mm(6, 14)
            if r.maybe(0.4):
                del of["outside_diameter"]
            of[r.any("steel_grade", "yield_strength")] = None
            if "steel_grade" in of:
                of["steel_grade"] = r.any("a139_b", "a252_2", "api_5l_b", "api_5l_x52", "casing_least")
            else:
                of["yield_strength"] = r.mpa(205, 450)
            if r.maybe(0.5):
                of["free_length"] = r.m(1, 6)
            if r.maybe(0.15):
                of["scheme"] = r.any("default", "cn_annex_e")
            if r.maybe(0.1):
                of["design_strength"] = r.mpa(150, 250)
        elif kind == "grp":
            of |= {"size": r.any("400 mm", "600 mm"), "outside_diameter": r.mm(430, 660), "wall": r.mm(20, 40)}
            of["strength"] = r.mpa(70, 110)
            if r.maybe(0.5):
                of["end_bearing_area"] = r.q(0.02, 0.05, "m2", "in2", 1550)
            if r.maybe(0.3):
                of["rated_force"] = r.kn(300, 3000)
            r.jacked_extra(of)
        elif kind == "polymer_concrete":
            of |= {"size": r.any("400 mm", "600 mm"), "outside_diameter": r.mm(500, 760), "wall": r.mm(50, 90),
                   "strength": r.mpa(80, 110), "end_bearing_area": r.q(0.06, 0.1, "m2", "in2", 1550),
                   "weight": r.q(1.5, 4, "kN/m", "lbf/ft", 68.52)}
            r.jacked_extra(of)
        elif kind in ("ductile_iron", "pvc"):
            of["size"] = r.any("8 in", "12 in", "200 mm", "300 mm") if kind == "ductile_iron" else r.any("8 in", "12 in")
            if r.maybe(0.85):
                of["rated_force"] = r.kn(200, 2500)
            if r.maybe(0.5):
                of |= {"outside_diameter": r.mm(310, 340), "wall": r.mm(7, 20)}
        elif kind == "pvc_fused":
            of |= {"size": r.any("8 in", "12 in", "6 in"), "sdr": r.any("18", "25", "14"), "joint_factor": str(r.num(0.7, 1, 2))}
            jacked = False
        elif kind == "pvc_restrained":
            of |= {"size": r.any("8 in", "12 in", "6 in"), "sdr": r.any("18", "25", "14"), "pipe_length": "20 ft"}
            of[r.any("joint_pull", "joint_pressure")] = None
            if "joint_pull" in of:
                of["joint_pull"] = r.kn(50, 300)
            else:
                of["joint_pressure"] = r.q(800, 1600, "kPa", "psi", 0.145038)
            if r.maybe(0.7):
                of["joint_deflection"] = f"{r.num(1, 4, 2)} deg"
            if r.maybe(0.4):
                of["joint_diameter"] = r.mm(300, 420)
            jacked = False
        elif kind == "pe":
            of["material"] = r.any("pe100", "pe100", "pe80", "pe4710", "hdpe", "mdpe")
            of |= {"size": r.any("110 mm", "160 mm", "200 mm", "250 mm", "315 mm", "280 mm", "8 in", "10 in", "12 in"),
                   "sdr": r.any("11", "11", "17", "9", "13.6")}
            if r.maybe(0.12):
                of |= {"outside_diameter": r.mm(300, 400), "wall": r.mm(25, 40)}
                del of["sdr"]
            if r.maybe(0.2):
                of["ovality"] = f"{r.num(0.5, 4, 2)} %"
            jacked = False
        elif kind == "pulled_steel":
            of |= {"material": "steel", "size": r.any("12.75 in", "16 in", "323.9 mm"), "outside_diameter": r.mm(300, 420),
                   "wall": r.mm(6, 14), "yield_strength": r.mpa(240, 450)}
        else:
            of |= {"material": "ductile_iron", "size": r.any("8 in", "12 in"), "joint_pull": r.kn(80, 400)}
            if r.maybe(0.7):
                of["joint_deflection"] = f"{r.num(1, 4, 2)} deg"
            if r.maybe(0.5):
                of["pipe_length"] = "18 ft"
            if r.maybe(0.5):
                of |= {"outside_diameter": r.mm(220, 340), "wall": r.mm(6, 9)}
            if r.maybe(0.3):
                of["rated_force"] = r.kn(200, 2500)
        # A size that goes with the diameters.
        if "outside_diameter" in of:
            of["size"] = of.get("inside_diameter", of["outside_diameter"])
        rigid = kind in ("clay", "concrete", "polymer_concrete")
        if jacked and r.maybe(0.15) and kind != "pulled_steel":
            of["casing"] = r.mm(650, 900)
            if r.maybe(0.7):
                of["casing_wall"] = r.mm(6, 14)
                for key, make in (("casing_yield_strength", lambda: r.mpa(205, 360)), ("casing_factor", lambda: str(r.num(2, 3, 2))),
                                  ("casing_free_length", lambda: r.m(2, 6)), ("casing_joint_thrust", lambda: r.kn(300, 2500))):
                    if r.maybe(0.4):
                        of[key] = make()
        if rigid and r.maybe(0.35):
            of["crushing"] = r.any("en_295_160", "en_295_200", "c76_iii", "c76_v", r.q(30, 120, "kN/m", "lbf/ft", 68.52))
            if r.maybe(0.5):
                of["annulus"] = r.any("open", "grouted")
        if r.maybe(0.12):
            of["bore"] = r.mm(380, 700)
        if not jacked and r.maybe(0.2):
            of["passes"] = [r.mm(150, 250), r.mm(260, 360)]
        return of

    def pull(self):
        r = self
        of = {"pipe_temperature": r.any("20 degC", "25 degC", "77 degF", "35 degC")}
        if r.maybe(0.6):
            of["duration"] = f"{r.num(2, 20, 2)} h"
        else:
            of["rate"] = r.q(4, 20, "m/h", "ft/h", 3.28)
            if r.maybe(0.3):
                of["stem_removal"] = {"every": r.m(1, 3), "takes": "4 min"}
        options = {
            "contents": lambda: r.any("empty", "water", "slurry"), "string_on": lambda: r.any("ground", "rollers"),
            "ramp_angle": lambda: f"{r.num(0, 20, 2)} deg", "bend_radius": lambda: r.m(10, 80),
            "excess_length": lambda: r.m(5, 30), "fluid_stands_for": lambda: f"{r.num(6, 72, 2)} h",
            "welds": lambda: r.any("unknown", "documented"),
            "stress_edition": lambda: r.any("tightest", "astm_f1962_1999", "astm_f1962_2022", "ppi_2008", "gw_321"),
            "reamer": lambda: r.band(r.kn, 5, 40), "reaming_torque": lambda: r.band(r.torque, 2, 20),
            "push_assist": lambda: {"force": r.kn(10, 80), "free_length": r.m(1, 5)} | ({"grip_rating": r.kn(40, 200)} if r.maybe() else {}),
            "hole": lambda: r.any("fluid", "dry_and_stable"), "unit_drag": lambda: r.q(50, 500, "Pa", "psi", 0.000145038),
            "inside_pressure": lambda: r.kpa(20, 200),
            "collapsed_bore": lambda: {"length": r.m(0.5, 4), "unit_weight": r.weight(18, 21)},
            "score": lambda: f"{r.num(0, 10, 2)} %",
            "pull_head": lambda: dict(list({"rating": r.kn(80, 500), "weak_link": r.kn(30, 300)}.items())[: r.r.randint(1, 2)]),
            "laydown": lambda: {"length": r.m(20, 120)} | ({"place": "pit"} if r.maybe(0.2) else {}) | ({"joint_time": "60 min"} if r.maybe() else {}),
            "ramp_room": lambda: r.m(5, 40), "reaction": lambda: {"area": r.q(2, 8, "m2", "ft2", 10.76), "allowable_pressure": r.kpa(80, 300)},
            "returns": lambda: {"flow": r.q(100, 600, "L/min"), "plastic_viscosity": "0.03 Pa*s", "yield_point": "10 Pa"},
            "ground_temperature": lambda: r.any("12 degC", "54 degF"),
        }
        for key, make in options.items():
            if r.maybe(0.14):
                of[key] = make()
        return of

    def space(self):
        r = self
        of = {"length": r.m(4, 10), "width": r.m(2, 4)}
        for key, make in (("floor_depth", lambda: r.m(5, 7)), ("crane", lambda: r.kn(30, 120)),
                          ("permeability", lambda: "1e-5 m/s"), ("tight_base_depth", lambda: r.m(8, 14))):
            if r.maybe(0.35):
                of[key] = make()
        if r.maybe(0.2):
            of |= {"tight_soil": r.m(1, 4), "water_pressure": r.kpa(20, 70)}
        return of

    def make(self):
        r = self
        service = r.any("gravity_sewer", "gravity_sewer", "gravity_sewer", "pressure_main", "casing")
        length = r.num(30, 150) if not r.easy else r.num(25, 90)
        grade = r.num(0.2, 2.0, 2)
        depth = r.num(2.5, 7)
        unit, scale = ("ft", 3.28084) if r.us else ("m", 1.0)
        long = lambda value: f"{round(value * scale, 2)} {unit}"
        of = {"name": "Random drive", "service": service, "length": long(length), "launch": {"invert_depth": long(depth)}}
        if r.maybe(0.5):
            of["grade"] = f"{grade} %"
        else:
            of["reception"] = {"invert_depth": long(depth - length * grade / 100)}
        of["groundwater"] = r.any("none", "none", r.m(1, 8))
        of["lubrication"] = r.any("none", "not_metered", "metered", "logged")
        stretches = [r.stretch() for _ in range(r.any(1, 1, 1, 2, 3))]
        ends = sorted(r.num(0.1, 0.9, 2) for _ in stretches[1:])
        if len(set(ends)) < len(ends):
            stretches = stretches[:1]
        for stretch, end in zip(stretches, ends):
            stretch["to"] = long(round(length * end, 1))
        of["ground"] = stretches
        of["rig"] = {"thrust": r.kn(400, 4000) if not r.easy else r.kn(2500, 9000), "pull": r.kn(150, 1500) if not r.easy else r.kn(900, 3000)}
        if r.maybe(0.25):
            of["rig"]["torque"] = r.torque(5, 40)
            if r.maybe():
                of["rig"]["auger_torque"] = r.band(r.torque, 1, 25)
        if r.maybe(0.25):
            of["rig"]["cylinder_area"] = r.q(95000, 300000, "mm2", "in2", 0.00155)
            if r.maybe(0.5):
                of["rig"]["efficiency"] = "0.95"
        if r.maybe(0.2):
            of["rig"]["station_thrust"] = r.kn(400, 2000)
        if r.maybe(0.45):
            stem = {"outside_diameter": r.any(r.mm(90, 130), r.mm(200, 280), "none") if r.maybe(0.9) else r.mm(50, 90)}
            of["stem"] = stem
            if stem["outside_diameter"] != "none":
                for key, make in (("wall", lambda: r.mm(8, 16)), ("free_length", lambda: r.m(0.8, 3)),
                                  ("joint_thrust", lambda: r.kn(300, 1500)), ("joint_pull", lambda: r.kn(200, 900)),
                                  ("joint_torque", lambda: r.torque(4, 25)), ("torque", lambda: r.band(r.torque, 1, 20)),
                                  ("head_diameter", lambda: r.mm(140, 260))):
                    if r.maybe(0.35):
                        stem[key] = make()
                if "torque" in stem and "joint_torque" not in stem and "torque" not in of["rig"]:
                    del stem["torque"]
        options = {
            "spoil": lambda: r.any("auger", "vacuum", "slurry", "open_edge"), "pilot": lambda: r.any("displacement", "drilled"),
            "face": lambda: r.band(r.kn, 5, 60), "tolerance": lambda: r.mm(15, 100), "plug": lambda: r.m(0.5, 3),
            "traffic": lambda: r.any("none", "highway", "railway"), "line": lambda: {"length": r.m(200, 800)},
            "half_wave": lambda: r.m(8, 40),
            "steering": lambda: r.any({"joint_angle": f"{r.num(0, 0.6, 2)} deg"}, {"deviation": r.mm(1, 8)},
                                      {"deviation": r.mm(1, 5), "curve_radius": r.m(300, 1500)}, {"joint_gap": r.mm(0.5, 4)},
                                      {"wave_amplitude": r.mm(3, 20), "half_wave": r.m(5, 30)}),
            "surface": lambda: {"over": r.any("open", "road", "railway")} | ({"allowed_settlement": r.mm(5, 40)} if r.maybe(0.6) else {}) | ({"allowed_slope": "0.2 %"} if r.maybe() else {}),
            "crossings": lambda: [{"at": r.m(5, 25), "depth": r.m(0.8, 2), "kind": "water main"} | ({"allowed_settlement": r.mm(5, 30)} if r.maybe(0.5) else {}) | ({"clearance": r.m(0.3, 1)} if r.maybe(0.5) else {}) | ({"beside": r.m(0.5, 3)} if r.maybe(0.2) else {}) for _ in range(r.any(1, 1, 2))],
            "pace": lambda: {key: make() for key, make in {
                "pilot": lambda: r.m(10, 60), "casing": lambda: r.m(10, 40), "jacking": lambda: r.m(8, 30), "pullback": lambda: r.m(20, 90),
                "reaming": lambda: r.m(20, 60), "shift_price": lambda: "4000", "setup_price": lambda: "9000", "programme": lambda: "40",
                "budget": lambda: "300000", "pits": lambda: "5", "set_up": lambda: "2", "shift_length": lambda: "8 h", "grouting": lambda: "1",
                "spoil_price": lambda: {"price": "40", "per": "1 m3"}}.items() if r.maybe(0.5)},
            "annulus": lambda: {"filling": r.any("open", "grouted")} | {key: make() for key, make in {
                "spacers": lambda: r.mm(10, 40), "grout_density": lambda: r.q(1200, 1900, "kg/m3", "lb/ft^3", 0.062428),
                "grout_pressure": lambda: r.kpa(20, 120), "grout_sets_in": lambda: "8 h", "grout_waste": lambda: "1.3",
                "soil_modulus": lambda: r.mpa(1, 8), "proof": lambda: r.any("none", "proved")}.items() if r.maybe(0.5)},
            "weights": lambda: [{"criterion": r.any("grade", "load_margin", "ground"), "weight": str(r.num(0.5, 3, 2))}],
            "stops": lambda: [{"at": long(length * r.num(0.2, 0.9, 2))}],
        }
        for key, make in options.items():
            if r.maybe(0.22):
                of[key] = make()
        if service == "gravity_sewer" and r.maybe(0.25):
            of["design_flow"] = {"min": r.q(2, 6, "L/s"), "max": r.q(10, 40, "L/s")}
        if service == "pressure_main" and r.maybe(0.4):
            of["vacuum"] = {"pressure": r.kpa(30, 90), "lasts": "1 h"}
        if r.maybe(0.3):
            of["launch"]["space"] = r.space()
        if r.maybe(0.2) and "reception" in of:
            of["reception"]["space"] = r.space()
        if r.maybe(0.2):
            of["launch"]["area"] = r.q(50, 400, "m2", "ft2", 10.764)
            if "reception" in of and r.maybe(0.8):
                of["reception"]["area"] = r.q(50, 400, "m2", "ft2", 10.764)
        if r.maybe(0.2):
            of["launch"]["soil"] = r.soil(layers=False)
        if r.maybe(0.25):
            of["launch"]["wall"] = {"width": r.m(2, 4), "height": r.m(1.5, 3)} | {key: make() for key, make in {
                "top_depth": lambda: r.m(1, 3), "eye_diameter": lambda: r.mm(300, 700), "spread": lambda: "1.2",
                "safety": lambda: "2", "movement": lambda: r.any("not_checked", "checked")}.items() if r.maybe(0.3)}
        if r.maybe(0.65):
            of["pull"] = r.pull()
        if r.maybe(0.12):
            of["needed_inside_diameter"] = r.mm(180, 400)
        else:
            of["candidates"] = [r.candidate() for _ in range(r.any(1, 2, 2, 3))]
            if "pull" not in of:
                of["candidates"] = [one for one in of["candidates"] if not (one["material"].startswith(("pe", "pvc_", "hdpe", "mdpe")))] or [{"material": "clay", "size": "10 in"}]
        return of

    def break_one(self, of):
        """Puts one or two faults in: a wrong unit, an unknown key, a key too few, a word, a number out of range."""
        blocks = []

        def walk(node):
            if isinstance(node, dict):
                blocks.append(node)
                for child in node.values():
                    walk(child)
            elif isinstance(node, list):
                for child in node:
                    walk(child)

        walk(of)
        for _ in range(self.r.randint(1, 3)):
            block = self.r.choice(blocks)
            keys = [key for key, value in block.items() if isinstance(value, str)]
            if not keys:
                continue
            key = self.r.choice(keys)
            block[key] = self.any("-3 m", "12 lumps", "0 m", "nothing", "5", "1e9 kN", "0 kPa", "-1", "900 mm", "400 %")
            if self.maybe(0.2):
                block[key + "x"] = block.pop(key)


def drives(count, seed):
    for number in range(count):
        yield f"{number:04}", Drive(random.Random(f"{seed}/{number}")), number % 8 == 7


# What is put in where a fault asks for a field without an example of its own.
SOIL = {"moist": "19 kN/m3", "saturated": "20 kN/m3", "friction_angle": "30 deg"}
USUAL = {
    "end_bearing_area": "0.06 m2", "wall": "12 mm", "rated_force": "900 kN", "joint_pull": "120 kN", "joint_deflection": "3 deg",
    "joint_deflection_factor": "0.9", "soil": SOIL, "pull": {"duration": "6 h", "pipe_temperature": "25 degC"},
    "candidates": [{"material": "clay", "size": "10 in"}],
}


def step(text):
    return [int(key) if key.isdigit() else key for key in text.replace("[", ".").replace("]", "").split(".")]


def mend(of, fault):
    """Does what a fault advises for a field that is missing, takes out one that is there."""
    *way, last = step(fault["path"])
    node = of
    try:
        for key in way:
            node = node[key]
        there = last in node if isinstance(node, dict) else last < len(node)
    except (KeyError, IndexError, TypeError):
        return
    wanted = not there or "missing" in fault["message"] or node[last] == []
    usual = USUAL.get(last) if wanted else None
    if isinstance(node, dict) and usual:
        node[last] = usual
        return
    advice = re.findall(r"`(\w+): ([^`{]+)`", fault.get("advice") or "")
    if isinstance(node, dict) and (not there or "missing" in fault["message"]) and advice:
        node[advice[0][0]] = advice[0][1].strip()
    elif there:
        del node[last]


def make(folder, program, count, seed):
    folder.mkdir(parents=True, exist_ok=True)
    made = {folder / f"{name}.yaml": drive.make() | {} for name, drive, _ in drives(count, seed)}
    faulty = {folder / f"{name}.yaml": drive for name, drive, is_faulty in drives(count, seed) if is_faulty}
    left = list(made)
    for _ in range(12):
        for file in left:
            file.write_text(json.dumps(made[file], indent=1))
        told = {}
        for start in range(0, len(left), 50):
            run = subprocess.run([program, "assess", "--format", "json", *map(str, left[start : start + 50])], capture_output=True)
            for line in run.stderr.splitlines():
                fault = json.loads(line)
                told[pathlib.Path(fault["file"])] = fault["faults"]
        for file, faults in told.items():
            for fault in sorted(faults, key=lambda fault: fault["path"], reverse=True):
                mend(made[file], fault)
        left = list(told)
        if not left:
            break
    for file, drive in faulty.items():
        drive.break_one(made[file])
        file.write_text(json.dumps(made[file], indent=1))
    return sorted(made)


def run_one(program, file, form):
    run = subprocess.run([program, "assess", file.name, "--format", form, *(["--full"] if form == "text" else [])],
                         capture_output=True, cwd=file.parent)
    return run.returncode, run.stdout, run.stderr


KEPT = {}


def said_by(program, files, form):
    """What a program says of a batch: kept in a file between runs, by the program and the drives."""
    texts = "".join(file.read_text() for file in files)
    key = (program, pathlib.Path(program).stat().st_mtime, form, hashlib.sha256(texts.encode()).hexdigest())
    if key not in KEPT:
        run = subprocess.run([program, "assess", "--format", form, *(["--full"] if form == "text" else []), *(file.name for file in files)],
                             capture_output=True, cwd=files[0].parent)
        KEPT[key] = (run.returncode, run.stdout, run.stderr)
    return KEPT[key]


def answers(old, new, files, form):
    """What both programs say of each file: exit code, standard output and faults. Equal batches are not looked into."""
    for start in range(0, len(files), 20):
        batch = files[start : start + 20]
        if said_by(old, batch, form) == said_by(new, batch, form):
            continue
        for file in batch:
            yield file, run_one(old, file, form), run_one(new, file, form)


def places(old, new, path=""):
    """Where two JSON values differ, numbers of lists left out of the path."""
    if type(old) is not type(new):
        return [path]
    if isinstance(old, dict):
        of = [f"{path}.{key} (gone)" for key in old if key not in new] + [f"{path}.{key} (new)" for key in new if key not in old]
        return of + [place for key in old if key in new for place in places(old[key], new[key], f"{path}.{key}")]
    if isinstance(old, list):
        if old != new and len(old) == len(new) and sorted(map(repr, old)) == sorted(map(repr, new)):
            return [f"{path}[] (order)"]
        if len(old) != len(new):
            gone = [one for one in old if one not in new]
            come = [one for one in new if one not in old]
            return [f"{path}[] (gone: {json.dumps(one)[:110]})" for one in gone] + [f"{path}[] (new: {json.dumps(one)[:110]})" for one in come] or [f"{path}[] (repeats)"]
        return [place for one, other in zip(old, new) for place in places(one, other, f"{path}[]")]
    return [] if old == new else [f"{path}: {json.dumps(old)[:70]} -> {json.dumps(new)[:70]}"]


def compare(args):
    forms = ["json", "text"] if args.text else ["json"]
    keep = args.keep and pathlib.Path(args.keep)
    if keep and keep.exists():
        KEPT.update(pickle.loads(keep.read_bytes()))
    with tempfile.TemporaryDirectory() as folder:
        folder = pathlib.Path(folder)
        if args.folder:
            files = sorted(pathlib.Path(args.folder).glob("*.yaml"))
            for number, file in enumerate(files):
                files[number] = folder / file.name
                files[number].write_text(file.read_text())
        else:
            files = make(folder, args.old, args.drives, args.seed)
        if args.sample:
            files = files[:: max(1, len(files) // args.sample)]
        for root in (HERE.parent.parent, pathlib.Path.cwd()):
            for example in sorted((root / "examples").glob("*.yaml")):
                file = folder / f"example_{example.name}"
                file.write_text(example.read_text())
                files.append(file)
            if (root / "examples").exists():
                break
        for service in ("gravity_sewer", "pressure_main", "casing"):
            for units in ("si", "us"):
                file = folder / f"template_{service}_{units}.yaml"
                run = subprocess.run([args.old, "template", "--service", service.replace("_", "-"), "--units", units], capture_output=True)
                file.write_bytes(run.stdout)
                files.append(file)
        kinds, worst = collections.defaultdict(list), 0
        for form in forms:
            for file, old, new in answers(args.old, args.new, files, form):
                if old == new:
                    continue
                worst += 1
                found = []
                if old[0] != new[0]:
                    found.append(f"exit code {old[0]} -> {new[0]}")
                for index in (1, 2):
                    if old[index] != new[index]:
                        try:
                            found += places(json.loads(old[index] or b"null"), json.loads(new[index] or b"null"))
                        except ValueError:
                            a, b = old[index].decode().splitlines(), new[index].decode().splitlines()
                            found += [f"{form}: - {line}" for line in a if line not in b][:6] + [f"{form}: + {line}" for line in b if line not in a][:6]
                for place in found or ["bytes"]:
                    kinds[place].append(file.stem)
        if keep:
            keep.write_bytes(pickle.dumps({key: said for key, said in KEPT.items() if key[0] == args.old}))
        print(f"{len(files)} drives as {' and '.join(forms)}: {worst} answers differ")
        for place, where in sorted(kinds.items(), key=lambda item: -len(item[1]))[: args.show]:
            print(f"{len(where):5}  {place}   e.g. {where[0]}")
        return 1 if worst else 0


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("what", choices=["make", "compare"])
    parser.add_argument("paths", nargs="+")
    parser.add_argument("--drives", type=int, default=600)
    parser.add_argument("--seed", default="1")
    parser.add_argument("--sample", type=int)
    parser.add_argument("--show", type=int, default=40)
    parser.add_argument("--keep", help="a file that keeps what the old program said")
    parser.add_argument("--text", action="store_true")
    args = parser.parse_args()
    if args.what == "make":
        made = make(pathlib.Path(args.paths[0]), args.paths[1], args.drives, args.seed)
        print(f"{len(made)} drives")
        return 0
    args.old, args.new, args.folder = [*args.paths, None][:3]
    return compare(args)


if __name__ == "__main__":
    sys.exit(main())

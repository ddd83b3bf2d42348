# SPDX-License-Identifier: Apache-2.0
"""The independent working against published and hand-worked values; each names its source."""

import os
import sys
import unittest

sys.dont_write_bytecode = True  # nothing is left in the source tree
sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))
import cutting
import random_survey
import working
from adjusting import Levelling, adjust_opening, chi_square_quantile
from readings import Readings, typed_mm
from rounding import nearest, up
from rules import House


def network(rows):
    return Levelling([dict(lower=a, upper=b, value=v, u=s, station=a + b, how="measured") for a, b, v, s in rows])


class Adjusting(unittest.TestCase):
    LEVELLING = [("A", "B", 10.509, .006), ("B", "C", 5.360, .004), ("C", "D", -8.523, .005), ("D", "A", -7.348, .003),
                 ("B", "D", -3.167, .004), ("A", "C", 15.881, .012)]

    def test_levelling(self):
        # Ghilani, Adjustment Computations, 2010, example 12.6.
        net = network(self.LEVELLING)
        for mark, height in (("B", 448.1087117), ("C", 453.4684678), ("D", 444.9436053)):
            self.assertAlmostEqual(437.596 + net.difference("A", mark).mm, height, places=7)
        self.assertEqual(net.parts[0]["redundancy"], 3)
        self.assertAlmostEqual(net.parts[0]["chi2"], 1.2721, places=4)

    def test_levelling_with_a_slip(self):
        # The same with CD misread as 8.253: vTPv 1526.25 (derived).
        rows = [(a, b, -8.253 if (a, b) == ("C", "D") else v, s) for a, b, v, s in self.LEVELLING]
        self.assertAlmostEqual(network(rows).parts[0]["chi2"], 1526.25, places=2)

    def test_braced_quadrilateral(self):
        # Benning, example 8-2: one side fixed at 1000, points 3 and 4 below 1 and 2, |w| 0.6882.
        got = adjust_opening([1000.0, 1000.02, 999.98, 1000.0, 1414.24, 1414.20],
                             [1e-6, .01, .01, .01, .01, .01])
        self.assertAlmostEqual(got["chi2"] ** 0.5, 0.6882, places=4)
        self.assertEqual(got["redundancy"], 1)

    def test_chi_square(self):
        # NIST/SEMATECH e-Handbook 1.3.6.7.4, upper critical values at 0.001.
        for degrees, limit in ((1, 10.828), (2, 13.816), (3, 16.266), (4, 18.467), (5, 20.515), (10, 29.588)):
            self.assertAlmostEqual(chi_square_quantile(0.999, degrees), limit, places=3)

    def test_a_proposed_reading_closes_no_loop(self):
        # Contract: `proposed` readings never count as independent evidence (no redundancy from them).
        rows = [dict(lower="a", upper="b", value=10, u=1, station="s1", how="measured"),
                dict(lower="a", upper="b", value=90, u=1, station="s2", how="proposed"),
                dict(lower="b", upper="c", value=5, u=1, station="s3", how="proposed")]
        net = Levelling(rows)
        self.assertEqual((net.difference("a", "b").mm, net.parts[0]["redundancy"]), (10, 0))
        self.assertEqual(net.difference("a", "c").rests_on(), ["s3"])


class Reading(unittest.TestCase):
    def test_one_reading(self):
        # OIML R 35-1, class II, 1.2 m: mpe 0.3 + 0.2 * 2; u of a rectangular distribution, GUM (JCGM 100) 4.3.7.
        window = {"shape": "frame", "readings": []}
        u = Readings(window, {"class": "II", "graduation_mm": 1}, 2.0, "mm").u_of(1200)
        self.assertAlmostEqual(u, (0.7 ** 2 / 3 + 1 / 12 + 4) ** 0.5, places=12)

    def test_typed(self):
        # 1 in = 25.4 mm by definition.
        self.assertAlmostEqual(typed_mm("48 3/8 in", "mm"), 1228.725)
        self.assertAlmostEqual(typed_mm("48 3/8", "in"), 1228.725)
        self.assertAlmostEqual(typed_mm("124,5", "cm"), 1245.0)
        self.assertEqual(typed_mm("1240", "mm"), 1240.0)


class Cutting(unittest.TestCase):
    def test_half_drop(self):
        # Derived (sources D1): repeat 640, three drops: 2500 makes 8000 in batches; 2100 makes 6720 in turn.
        cloth = {"match": "half-drop", "repeat_mm": 640}
        self.assertEqual(cutting.plan(2500, cloth, 3), (2560, 8000))
        self.assertEqual(cutting.plan(2100, cloth, 3), (2240, 6720))

    def test_repeats_in_a_drop(self):
        # How to Make Draperies, Sewing Library 102, 1960: a drop of 84 in, repeat 24 in, becomes 96 in; four make 10 2/3 yd.
        cut, length = cutting.plan(84, {"match": "straight", "repeat_mm": 24}, 4)
        self.assertEqual((cut, length), (96, 384))

    def test_tab(self):
        # Common practice, no source: cut 200 with 10 mm seams over a 28 mm pole hangs about 70; 220 over 35 about 80.
        house = House({})
        self.assertAlmostEqual(cutting.tab_hang(28, 200, house)[1], 70, delta=10)
        self.assertAlmostEqual(cutting.tab_hang(35, 220, house)[1], 80, delta=10)
        self.assertEqual(cutting.tab_hang(28, None, house)[0], 200)

    def test_load(self):
        # Worked by hand: 2.0 m x 2.0 x 2.4 m x 600 g/m2 = 5.76 kg.
        self.assertAlmostEqual(cutting.mass_of([({"width_mm": 4000, "mass_gsm": 600}, 1, 2400)]), 5.76)

    def test_rounding(self):
        self.assertEqual([up(2.0000000001), up(2.1), nearest(2.5), nearest(2.4999999999), nearest(-2.5)], [2, 3, 3, 3, -3])


class RandomSurveys(unittest.TestCase):
    def test_every_survey_is_worked(self):
        headings = set()
        for seed in range(240):
            document = random_survey.survey(seed)
            self.assertEqual(document, random_survey.survey(seed))
            working.work(document)
            for room in document["rooms"]:
                for window in room["windows"]:
                    for layer in working.layers_of(window):
                        headings.add((layer.get("treatment") or {}).get("heading"))
        self.assertEqual(len(headings - {None}), 9)


if __name__ == "__main__":
    unittest.main()

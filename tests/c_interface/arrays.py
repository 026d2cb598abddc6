"""The C interface from Python: ctypes and NumPy arrays in place, whatever their strides.

Run with the library, the demo garden and the command:  arrays.py libnoonleaf_c.so GARDEN NOONLEAF
Every number is compared with one printed in FAO-56, with the same array in another layout, or with the command.
"""
import ctypes
import io
import json
import subprocess
import sys
import tempfile
import unittest

import numpy as np

c_double, c_int32, c_int64, c_size_t = ctypes.c_double, ctypes.c_int32, ctypes.c_int64, ctypes.c_size_t
library_path, garden_folder, command = sys.argv[1:4]
noonleaf = ctypes.CDLL(library_path)
DONE, ROWS_REFUSED, INPUT_REFUSED, CALL_REFUSED = range(4)


class Date(ctypes.Structure):
    _fields_ = [("year", c_int32), ("month", ctypes.c_int16), ("day", ctypes.c_int16)]


class Column(ctypes.Structure):
    """A view of an array, input or result: nothing is copied."""
    _fields_ = [("data", ctypes.c_void_p), ("count", c_size_t), ("stride", ctypes.c_ssize_t)]

    @staticmethod
    def of(array):
        assert array.ndim == 1 and array.itemsize == 8
        assert array.strides[0] % array.itemsize == 0, "stride in whole values"
        return Column(array.__array_interface__["data"][0], array.size, array.strides[0] // array.itemsize)


class Location(ctypes.Structure):
    _fields_ = [("size", c_size_t), ("latitude_deg", c_double), ("longitude_deg", c_double),
                ("elevation_m", c_double)]


class DailyColumns(ctypes.Structure):
    _fields_ = [("size", c_size_t), ("first_day", Date), ("day", Column), ("t_max_c", Column), ("t_min_c", Column),
                ("ea_kpa", Column), ("rs_mj_m2_d", Column), ("u2_m_s", Column), ("pressure_kpa", Column),
                ("g_mj_m2_d", Column), ("equation", c_int32), ("surface", c_int32), ("et0_mm_d", Column)]


class Soil(ctypes.Structure):
    _fields_ = [("size", c_size_t)] + [(name, c_double) for name in (
        "field_capacity_m3_m3", "wilting_point_m3_m3", "saturation_m3_m3", "conductivity_mm_h", "rew_mm",
        "evaporation_depth_m")]


class RunRequest(ctypes.Structure):
    _fields_ = [("size", c_size_t)] + [(name, c_double) for name in (
        "net_depth_mm", "rate_mm_h", "du_lq_frac", "off_target_frac", "spray_loss_frac", "flow_l_min", "bed_area_m2",
        "shortest_min", "longest_min")] + [("basis", c_int32), ("area", c_int32)]


class Run(ctypes.Structure):
    _fields_ = [("size", c_size_t)] + [(name, c_double) for name in (
        "minutes", "exact_min", "multiplier", "depth_in_bed_mm", "delivered_frac", "gross_depth_mm", "mean_depth_mm",
        "low_quarter_depth_mm", "left_over_net_mm", "litres_in_bed", "litres_from_tap")] + [
            ("multiplier_rule", c_int32), ("limit", c_int32)]


class Moment(ctypes.Structure):
    _fields_ = [("size", c_size_t), ("date", Date), ("minute", c_int64)]


class WeekRequest(ctypes.Structure):
    _fields_ = [("size", c_size_t), ("made_date", Date), ("made_minute", c_int64), ("first_day", Date),
                ("days", c_int32), ("language", c_int32)]


class Problem(ctypes.Structure):
    _fields_ = [("size", c_size_t), ("file", ctypes.c_char_p), ("row", ctypes.c_uint64), ("line", ctypes.c_uint64),
                ("column", ctypes.c_uint64), ("field", ctypes.c_char_p), ("text", ctypes.c_char_p),
                ("message", ctypes.c_char_p), ("fix", ctypes.c_char_p)]


noonleaf.noonleaf_version.restype = ctypes.c_char_p
noonleaf.noonleaf_problems_count.restype = c_size_t
noonleaf.noonleaf_problems_count.argtypes = [ctypes.c_void_p]
noonleaf.noonleaf_problems_at.argtypes = [ctypes.c_void_p, c_size_t, ctypes.c_void_p]
for name in ("problems", "site", "garden", "text"):
    getattr(noonleaf, f"noonleaf_{name}_free").argtypes = [ctypes.c_void_p]


def with_defaults(struct, defaults):
    value = struct(ctypes.sizeof(struct))
    assert defaults(ctypes.byref(value)) == DONE
    return value


def problems_of(handle):
    found = []
    for index in range(noonleaf.noonleaf_problems_count(handle)):
        problem = Problem(ctypes.sizeof(Problem))
        assert noonleaf.noonleaf_problems_at(handle, index, ctypes.byref(problem)) == DONE
        found.append((problem.row, problem.field.decode(), problem.message.decode()))
    noonleaf.noonleaf_problems_free(handle)
    return found


def handed_text(call, *arguments):
    text = ctypes.c_void_p()
    status = call(*arguments, ctypes.byref(text), None)
    assert status == DONE, status
    value = ctypes.string_at(text).decode()
    noonleaf.noonleaf_text_free(text)
    return value


class Arrays(unittest.TestCase):
    def setUp(self):
        self.site = ctypes.c_void_p()
        uccle = Location(ctypes.sizeof(Location), 50.8, 4.35, 100.0)
        self.assertEqual(noonleaf.noonleaf_site_make(ctypes.byref(uccle), ctypes.byref(self.site), None), DONE)

    def tearDown(self):
        noonleaf.noonleaf_site_free(self.site)

    def et0(self, table, result, first_day=(2023, 7, 6), day=None, wanted=DONE):
        """ET0 of a mapping of arrays; returns the problems."""
        columns = with_defaults(DailyColumns, noonleaf.noonleaf_daily_columns_defaults)
        columns.first_day = Date(*first_day)
        for name, array in table.items():
            setattr(columns, name, Column.of(array))
        if day is not None:
            columns.day = Column.of(day)
        columns.et0_mm_d = Column.of(result)
        handle = ctypes.c_void_p()
        status = noonleaf.noonleaf_daily_et0(self.site, ctypes.byref(columns), ctypes.byref(handle))
        self.assertEqual(status, wanted)
        return problems_of(handle)

    @staticmethod
    def weather(rows, seed=1):
        random = np.random.default_rng(seed)
        return {"t_max_c": random.uniform(15, 40, rows), "t_min_c": random.uniform(-5, 14, rows),
                "ea_kpa": random.uniform(0.4, 2.5, rows), "rs_mj_m2_d": random.uniform(2, 30, rows),
                "u2_m_s": random.uniform(0.5, 6, rows)}

    def test_printed_example_18(self):
        # FAO-56 (Allen et al. 1998), ch. 4, example 18: 3.9 mm/d for Uccle on 6 July
        day = {"t_max_c": 21.5, "t_min_c": 12.3, "ea_kpa": 1.409, "rs_mj_m2_d": 22.07, "u2_m_s": 2.078}
        result = np.zeros(1)
        self.et0({name: np.array([value]) for name, value in day.items()}, result)
        self.assertAlmostEqual(result[0], 3.9, delta=0.05)

    def test_strided_reversed_and_broadcast_views_give_the_same_bits(self):
        rows = 1300
        weather = self.weather(rows)
        plain = np.zeros(rows)
        self.et0(weather, plain)
        self.assertTrue(np.isfinite(plain).all())

        table = np.full((rows, 7), np.nan)  # one row a day: columns five values apart and more
        for index, name in enumerate(weather):
            table[:, index] = weather[name]
        self.et0({name: table[:, index] for index, name in enumerate(weather)}, table[:, 6])
        np.testing.assert_array_equal(table[:, 6], plain)
        self.assertTrue(np.isnan(table[:, 5]).all())  # the neighbour is untouched

        dates = np.arange(rows) + np.datetime64("2023-07-06")
        backwards = np.zeros(rows)
        self.et0({name: array[::-1] for name, array in weather.items()}, backwards, day=dates[::-1])
        np.testing.assert_array_equal(backwards[::-1], plain)

        into_reversed = np.zeros(rows)
        self.et0(weather, into_reversed[::-1])
        np.testing.assert_array_equal(into_reversed[::-1], plain)

        third = np.zeros(rows)
        self.et0({name: array[::3] for name, array in weather.items()}, third[::3], day=dates[::3])
        np.testing.assert_array_equal(third[::3], plain[::3])
        self.assertTrue((third[1::3] == 0).all())

        windless = dict(weather, u2_m_s=np.broadcast_to(np.float64(2.0), rows))
        still = np.zeros(rows)
        self.et0(windless, still)
        filled = np.zeros(rows)
        self.et0(dict(weather, u2_m_s=np.full(rows, 2.0)), filled)
        np.testing.assert_array_equal(still, filled)

    def test_missing_is_nan_and_a_wrong_row_is_named(self):
        weather = self.weather(6)
        weather["t_max_c"][2] = np.nan
        weather["rs_mj_m2_d"][4] = 3000.0
        result = np.zeros(6)
        problems = self.et0(weather, result, wanted=ROWS_REFUSED)
        np.testing.assert_array_equal(np.isnan(result), [False, False, True, False, True, False])
        self.assertEqual([(row, field) for row, field, _ in problems], [(4, "rs_mj_m2_d")])
        self.assertIn("3000", problems[0][2])

    def test_not_a_time_is_a_missing_day(self):
        weather = self.weather(3)
        dates = np.array(["2023-07-06", "NaT", "2023-07-08"], dtype="datetime64[D]")
        result = np.zeros(3)
        self.assertEqual(self.et0(weather, result, day=dates), [])
        np.testing.assert_array_equal(np.isnan(result), [False, True, False])

    def test_the_command_agrees(self):
        # The same days through `noonleaf et0`: another program, reading a file.
        rows = 400
        random = np.random.default_rng(7)  # days that no quality check would set aside, in winter and summer
        weather = {"t_max_c": random.uniform(15, 25, rows), "t_min_c": random.uniform(3, 10, rows),
                   "ea_kpa": random.uniform(0.4, 0.7, rows), "rs_mj_m2_d": random.uniform(2, 4.5, rows),
                   "u2_m_s": random.uniform(1, 6, rows)}
        dates = np.arange(rows) + np.datetime64("2019-11-03")
        result = np.zeros(rows)
        self.et0(weather, result, first_day=(2019, 11, 3))
        with tempfile.NamedTemporaryFile("w", suffix=".csv") as file:
            file.write("date,tmax_c,tmin_c,ea_kpa,rs_mj_m2,wind_m_s\n")
            for row in range(rows):
                values = ",".join(repr(float(array[row])) for array in weather.values())
                file.write(f"{dates[row]},{values}\n")
            file.flush()
            out = subprocess.run([command, "et0", file.name, "--latitude", "50.8", "--elevation", "100",
                                  "--precision", "9"],
                                 capture_output=True, text=True)
        self.assertEqual((out.returncode, out.stderr), (0, ""))
        lines = [line for line in io.StringIO(out.stdout) if line[:2] in ("20", "da")]
        header = lines[0].strip().split(",")
        printed = [line.split(",")[header.index("et0_mm")] for line in lines[1:]]
        self.assertEqual(len(printed), rows)
        for row, text in enumerate(printed):
            digits = len(text.partition(".")[2])
            self.assertAlmostEqual(float(text), result[row], delta=0.5000001 * 10 ** -digits, msg=str(dates[row]))

    def test_run_time(self):
        request = with_defaults(RunRequest, noonleaf.noonleaf_run_request_defaults)
        request.net_depth_mm, request.rate_mm_h = 10, 12
        run = Run(ctypes.sizeof(Run))
        self.assertEqual(noonleaf.noonleaf_run_time(ctypes.byref(request), ctypes.byref(run), None), DONE)
        self.assertEqual(run.minutes, 50)
        self.assertTrue(np.isnan(run.litres_from_tap))

    def test_soil_of_print(self):
        soil = Soil(ctypes.sizeof(Soil))
        self.assertEqual(noonleaf.noonleaf_soil_of_texture(b"loam", ctypes.byref(soil), None), DONE)
        # FAO-56, Table 19, loam: field capacity 0.20 to 0.30, wilting point 0.07 to 0.17
        self.assertAlmostEqual(soil.field_capacity_m3_m3, 0.25, delta=1e-12)
        self.assertAlmostEqual(soil.wilting_point_m3_m3, 0.12, delta=1e-12)

    def test_plans_as_the_command_prints_them(self):
        garden, problems = ctypes.c_void_p(), ctypes.c_void_p()
        folder = garden_folder.encode()
        self.assertEqual(noonleaf.noonleaf_garden_read(folder, ctypes.byref(garden), ctypes.byref(problems)), DONE)
        moment = Moment(ctypes.sizeof(Moment), Date(2025, 7, 16), 0)
        today = handed_text(noonleaf.noonleaf_today_json, garden, ctypes.byref(moment))
        week = WeekRequest(ctypes.sizeof(WeekRequest), Date(2025, 7, 16), 0, Date(0, 0, 0), 7, 0)
        plan = handed_text(noonleaf.noonleaf_week_json, garden, ctypes.byref(week))
        noonleaf.noonleaf_garden_free(garden)
        for name, text in (("today", today), ("week", plan)):
            out = subprocess.run([command, name, garden_folder, "--format", "json"], capture_output=True, text=True)
            self.assertEqual(out.returncode, 0, out.stderr)
            self.assertEqual(json.loads(text), json.loads(out.stdout))

    def test_a_folder_that_is_not_there(self):
        garden, problems = ctypes.c_void_p(), ctypes.c_void_p()
        status = noonleaf.noonleaf_garden_read(b"no/such/garden", ctypes.byref(garden), ctypes.byref(problems))
        self.assertEqual((status, garden.value), (INPUT_REFUSED, None))
        self.assertEqual(len(problems_of(problems)), 1)


if __name__ == "__main__":
    print("noonleaf", noonleaf.noonleaf_version().decode())
    unittest.main(argv=sys.argv[:1])

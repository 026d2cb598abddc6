"""Every command's JSON answer against its published schema (docs/schema), and broken answers against the same."""
import copy
import json
import os
import subprocess
import sys
import tempfile

import jsonschema

command, schema_folder = os.path.abspath(sys.argv[1]), os.path.abspath(sys.argv[2])
validators, used, failures = {}, {}, []
for name in sorted(os.listdir(schema_folder)):
    with open(os.path.join(schema_folder, name), encoding="utf-8") as file:
        schema = json.load(file)
    jsonschema.Draft7Validator.check_schema(schema)
    validators[name.removesuffix(".schema.json")] = jsonschema.Draft7Validator(schema)


def answer(line):
    run = subprocess.run([command, *line.split(), "--format", "json"], capture_output=True, text=True, check=False)
    if not run.stdout:
        failures.append(f"{line}: no answer; {run.stderr}")
        return None
    return json.loads(run.stdout)


def shape_of(value):
    first = value[0] if isinstance(value, list) else value
    return f"{first['shape'].removeprefix('noonleaf.')}-{first['version']}"


def broken(value):
    """Copies of an answer, each with one thing wrong that a schema must see."""
    whole = value[0] if isinstance(value, list) else value
    for key in whole:
        worse = copy.deepcopy(value)
        part = worse[0] if isinstance(worse, list) else worse
        del part[key]
        yield f"without {key}", worse
        worse = copy.deepcopy(value)
        part = worse[0] if isinstance(worse, list) else worse
        part[key] = {"not": "this"} if not isinstance(part[key], dict) else "text"
        yield f"{key} of the wrong kind", worse


def check(line):
    value = answer(line)
    if value is None:
        return
    shape = shape_of(value)
    if shape not in validators:
        failures.append(f"{line}: no schema for {shape}")
        return
    errors = list(validators[shape].iter_errors(value))
    for error in errors[:5]:
        failures.append(f"{line}: {shape}: {'/'.join(map(str, error.absolute_path))}: {error.message[:200]}")
    used.setdefault(shape, value)


def prepare():
    for name in ("demo", "tight", "looked", "wrong"):
        subprocess.run([command, "new", name, "--demo"], capture_output=True, check=True)
    # Nobody to open a tap but for ten minutes a week: the plan has to leave beds out.
    with open("tight/garden.toml", encoding="utf-8") as file:
        text = file.read()
    with open("tight/garden.toml", "w", encoding="utf-8") as file:
        file.write(text.replace('["daily 05:00-10:00", "daily 19:00-22:00"]', '["mon 06:00-06:10"]'))
    for day, feel in (("2025-07-06", "dry"), ("2025-07-09", "dry"), ("2025-07-12", "dry"), ("2025-07-15", "dry")):
        subprocess.run([command, *f"log looked feel a --feel {feel} --date {day} --at 07:00".split()],
                       capture_output=True, check=True)
    with open("wrong/garden.toml", "a", encoding="utf-8") as file:
        file.write('\n[surprise]\nkey = "value"\n')
    with open("hours.csv", "w", encoding="utf-8") as file:
        file.write("time,t_c,rh_pct,wind_m_s,rs_w_m2\n")
        file.writelines(f"2025-07-16 {hour:02}:00,{15 + hour % 12},60,2,{0 if 6 > hour or hour > 20 else 400}\n"
                        for hour in range(24))
    with open("cans.csv", "w", encoding="utf-8") as file:
        file.write("x_m,y_m,depth_mm\n" + "".join(f"{i % 3},{i // 3},{4 + i % 4}\n" for i in range(9)))


def all_lines():
    for date in ("2025-05-20", "2025-06-10", "2025-07-10", "2025-07-16", "2025-07-20"):
        yield f"today demo --date {date}"
    yield from ("today tight", "today looked", "today demo --lang es", "week demo",
               "week tight --lang es", "week looked --days 3",
                "week demo --from 2025-07-17 --since plan.json", "away demo --from 2025-07-17 --to 2025-07-25",
                "round demo looked nowhere", "check demo", "check wrong", "explain demo a 2025-07-16",
                "explain demo c 2025-06-01", "ledger demo --from 2025-06-01 --to 2025-07-15",
                "et0 demo/weather/station_2025.csv --latitude 46 --elevation 290",
                "et0 demo/weather/station_2025.csv --latitude 46 --elevation 290 --detail",
                "et0 hours.csv --latitude 46 --longitude 7 --elevation 290 --zone Europe/Zurich --stamps begin",
                "crops", "crops tomato", "crops carrot", "crops lavender", "crops bare_soil", "soils", "soils loam",
                "soils --sand 55 --clay 15 --organic 4", "soils --pot --volume 5l --drained 6kg --wilted 4.5kg",
                "cans cans.csv --minutes 30", "outdoors --t-f 96 --rh 65",
                "outdoors --t-f 96 --rh 65 --lang es", "outdoors --t-c 15 --rh 65",
                "outdoors --t-f 96 --rh 65 --wind-m-s 1.5 --sun-w-m2 850",
                "log demo water c --minutes 25 --at 06:00 --date 2025-07-16", "log demo --from sheet.csv")


place = tempfile.TemporaryDirectory(prefix="noonleaf-shapes-")
os.chdir(place.name)
prepare()
with open("plan.json", "w", encoding="utf-8") as file:
    json.dump(answer("week demo"), file)
subprocess.run([command, *"week demo --format csv --out sheet.csv".split()], check=True, capture_output=True)
lines = list(all_lines())
for each in lines:
    check(each)
refused = 0
for shape, value in used.items():
    for what, worse in broken(value):
        if validators[shape].is_valid(worse):
            failures.append(f"{shape}: accepted {what}")
        refused += 1
failures += [f"{name}: no command answers with this shape" for name in validators if name not in used]
print("\n".join(failures))
print(f"{len(lines)} answers, {len(used)} shapes, {refused} broken answers refused" if not failures else "FAILED")
os.chdir("/")
place.cleanup()
sys.exit(bool(failures))

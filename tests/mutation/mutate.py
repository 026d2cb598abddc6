#!/usr/bin/env python3
"""Mutation of the science: does a test notice when a constant, a sign or a comparison is wrong?

    python3 tests/mutation/mutate.py all --scratch /tmp/noonleaf-mutation        # some hours; not part of ctest
    python3 tests/mutation/mutate.py report --scratch /tmp/noonleaf-mutation     # the numbers so far
    python3 tests/mutation/mutate.py run --scratch … --only survived             # once more, after new tests

What is changed, in lib/noonleaf/{atmosphere,reference,crop,balance}, their constants.hpp, and nowhere else:
    constant     a real number x to 1.1 x (0 to 1), a whole number n to n + 1
    sign         + and -, += and -=, and a minus before one value, which is dropped
    comparison   < and >=, > and <=, == and != exchanged
Not changed: tables of data (crop_rows_*.hpp, and TABLES below); what the compiler needs as a constant (array
bounds, template arguments, case labels, what KEEP names below); + that joins texts. `report` counts what is left out.

GCC is needed: a number that only the running program knows may stand in braces where a constant stood (-Wno-narrowing).

How: `prepare` copies the tree to the scratch folder and rewrites the four folders there, so that one build holds all
mutants and the environment variable MUTANT says which one is active (rewrite.py, mutant.hpp). `build` builds the test
programs of the copy. `trace` runs every test once without a mutant, all must pass, and writes down which test case
reaches which mutant. `run` then takes the mutants one after the other: the cases of its own folder that reach it,
quick ones first, then of every other folder those that take 2 s together, up to the first failure. A mutant that no
case reaches survives unseen. A run that takes ten times as long as without it counts as caught, and by itself too.

Results lie in the scratch folder: mutants.csv, reached_<program>.json, results.csv; docs/mutation.md says what came
out of it, and explains the survivors: `report --survivors` lists those that it does not explain.
"""
import argparse
import collections
import csv
import json
import os
import pathlib
import shutil
import signal
import subprocess
import sys
import time

from rewrite import Mutant, Rewriter

HERE = pathlib.Path(__file__).resolve().parent
SOURCE = HERE.parent.parent
FOLDERS = ("atmosphere", "reference", "crop", "balance")
PLACES = ("constants.hpp",) + FOLDERS  # what is mutated; the constants have no program of their own
PROGRAMS = FOLDERS + ("soil", "sprinkler", "heat", "weather", "garden", "report", "plan", "c_interface", "cli")
DATA_ONLY = ("crop_rows_common.hpp", "crop_rows_ornamental.hpp", "crop_rows_other.hpp", "crop_rows_vegetable.hpp")
TABLES = {"lib/noonleaf/crop/emergence.cpp": ("rows",)}  # days printed, not equations
KEEP = {name: "array bound or template argument" for name in (
    "block_rows", "n_boundaries", "column_count", "n_crops", "block_members", "n_series", "row_size", "together")}
UNFREEZE = ("tests/balance/examples_test.cpp",)  # elsewhere, what is constexpr only as long as the science is
OTHERS_SECONDS = 2.0  # a program of another folder runs its quickest cases, as many as take this long
NO_ANSWER_SECONDS = 20.0  # on top of ten times the usual


# Preparing and building ------------------------------------------------------------------------------------------

def lay_out(tree, contents):
    """Makes the tree hold these files and no others, its build aside; leaves alone what is right already."""
    for path in [p for p in tree.rglob("*") if p.is_file() and p.relative_to(tree).parts[0] != "build"]:
        if str(path.relative_to(tree)) not in contents:
            path.unlink()
    for name, content in contents.items():
        path = tree / name
        if not path.exists() or path.read_bytes() != content:
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(content)
            path.chmod((SOURCE / name).stat().st_mode if (SOURCE / name).exists() else 0o644)


def files_of_source():
    names = subprocess.run(["git", "-C", SOURCE, "ls-files", "-co", "--exclude-standard", "lib", "cli", "tests", "docs",
                            "weather_samples", "CMakeLists.txt", "README.md", "DEVELOPERS.md"],
                           check=True, capture_output=True, text=True).stdout.splitlines()
    return {name: (SOURCE / name).read_bytes() for name in names
            if not name.startswith("tests/mutation/") and (SOURCE / name).exists()}


def with_include(text):
    line = '#include "noonleaf/mutant.hpp"\n'
    once = "#pragma once\n"
    return text.replace(once, once + line, 1) if text.startswith(once) else line + text


def prepare(args):
    args.scratch.mkdir(parents=True, exist_ok=True)
    new = args.scratch / "new"
    rewriter = Rewriter(keep=KEEP, data=TABLES)
    rewritten = {}
    for place in PLACES:
        whole = SOURCE / "lib/noonleaf" / place
        for path in sorted(whole.glob("*.?pp")) if whole.is_dir() else [whole]:
            name = str(path.relative_to(SOURCE))
            rewritten[name] = with_include(
                rewriter.rewrite(path.read_text(), name, mutate=path.name not in DATA_ONLY))
    contents = files_of_source()
    contents |= {name: text.encode() for name, text in rewritten.items()}
    for name in UNFREEZE:
        contents[name] = rewriter.rewrite(contents[name].decode(), name, mutate=False).encode()
    contents["lib/noonleaf/mutant.hpp"] = (HERE / "mutant.hpp").read_bytes()
    contents["tests/main.cpp"] = (HERE / "main.cpp").read_bytes()
    lay_out(args.scratch / "tree", contents)
    with open(args.scratch / "mutants.csv", "w", newline="") as file:
        writer = csv.writer(file)
        writer.writerow(Mutant.__dataclass_fields__)
        writer.writerows([getattr(m, name) for name in Mutant.__dataclass_fields__] for m in rewriter.mutants)
    with open(args.scratch / "left_out.csv", "w", newline="") as file:
        csv.writer(file).writerows([*key, count] for key, count in sorted(rewriter.left_out.items()))
    print(f"{len(rewriter.mutants)} mutants, {sum(rewriter.left_out.values())} places left out")


def build(args):
    tree = args.scratch / "tree"
    if not (tree / "build/build.ninja").exists():
        subprocess.run(["cmake", "-G", "Ninja", "-S", tree, "-B", tree / "build", "-DCMAKE_BUILD_TYPE=Debug",
                        "-DCMAKE_CXX_FLAGS_DEBUG=-O1 -w -Wno-narrowing -fpermissive", "-DNOONLEAF_DISPATCH=OFF",
                        *args.cmake], check=True, stdout=subprocess.DEVNULL)
    subprocess.run([*(args.builder.split() if args.builder else ["ninja", "-C", tree / "build"]),
                    *(f"test_{name}" for name in args.programs)], check=True)


# Running ---------------------------------------------------------------------------------------------------------

def program_path(scratch, name):
    return scratch / "tree/build/tests" / name / f"test_{name}"


class Runner:
    """Runs test cases of one program of the copy, in a process group of its own so that a hang can be ended."""

    def __init__(self, scratch):
        self.scratch = scratch
        self.mark = scratch / "not_a_mutant"
        self.temporary = scratch / "tmp"

    def run(self, program, cases, number=0, trace=None, limit=None):
        """caught, crash, hang, no mutant or passed; with what was said."""
        self.mark.unlink(missing_ok=True)
        shutil.rmtree(self.temporary, ignore_errors=True)
        self.temporary.mkdir()
        environment = dict(os.environ, MUTANT=str(number), MUTANT_MARK=str(self.mark), TMPDIR=str(self.temporary))
        if trace:
            environment["MUTANT_TRACE"] = str(trace)
        command = [program_path(self.scratch, program), "--report_level=no", "--color_output=no"]
        if cases:
            command.append("--run_test=" + ":".join(cases))
        process = subprocess.Popen(command, env=environment, stdin=subprocess.DEVNULL, stdout=subprocess.PIPE,
                                   stderr=subprocess.STDOUT, start_new_session=True, errors="replace")
        try:
            said, _ = process.communicate(timeout=limit)
        except subprocess.TimeoutExpired:
            os.killpg(process.pid, signal.SIGKILL)
            process.communicate()
            return "hang", ""
        if self.mark.exists():
            return "no mutant", said
        if process.returncode == 0:
            return "passed", said
        return ("caught" if process.returncode in (1, 3, 201) else "crash"), said


def trace(args):
    runner = Runner(args.scratch)
    for program in args.programs:
        times, reached, senseless = {}, {}, set()
        path = args.scratch / "trace.txt"
        for old in (path, pathlib.Path(f"{path}.child")):
            old.unlink(missing_ok=True)
        outcome, said = runner.run(program, None, trace=path)
        if outcome != "passed":
            raise SystemExit(f"test_{program} without any mutant: {outcome}\n{said[-3000:]}")
        case = None
        for line in path.read_text().splitlines():
            words = line.split()
            if words[0] == "case":
                case = f"{program} {words[1]}"
                times[case] = times.get(case, 0.0) + float(words[2])
            else:
                reached.setdefault(int(words[0]), set()).add(case)
                if int(words[1]) & 2:
                    senseless.add(int(words[0]))
        with open(args.scratch / f"reached_{program}.json", "w") as file:
            json.dump({"times": times, "reached": {n: sorted(cases) for n, cases in reached.items()},
                       "senseless": sorted(senseless)}, file)
        print(f"test_{program}: {len(times)} cases, {sum(times.values()):.1f} s, {len(reached)} mutants reached",
              flush=True)


def read_trace(scratch):
    """What the programs reach that were traced, in one."""
    whole = {"times": {}, "reached": {}, "senseless": set()}
    for program in PROGRAMS:
        path = scratch / f"reached_{program}.json"
        if not path.exists():
            continue
        part = json.loads(path.read_text())
        whole["times"] |= part["times"]
        whole["senseless"] |= set(part["senseless"])
        for number, cases in part["reached"].items():
            whole["reached"].setdefault(int(number), []).extend(cases)
    return whole


def read_mutants(scratch):
    with open(scratch / "mutants.csv", newline="") as file:
        return [Mutant(int(row["number"]), row["file"], int(row["line"]), int(row["column"]), row["kind"],
                       row["before"], row["after"], row.get("text", "")) for row in csv.DictReader(file)]


def identity(mutant):
    """What a result is kept under: numbers move when a file changes."""
    return f"{mutant.file}:{mutant.line}:{mutant.column} {mutant.before}"


def read_results(scratch):
    path = scratch / "results.csv"
    if not path.exists():
        return {}
    with open(path, newline="") as file:
        return {row["mutant"]: row for row in csv.DictReader(file)}  # the last one counts


def batches(mutant, trace_of, folder):
    """Lists of cases of one program, in the order in which they are tried."""
    topic = pathlib.Path(mutant.file).stem.replace("_formula", "").replace("_kernel", "")
    cases = trace_of["reached"].get(mutant.number, [])
    for program in sorted({case.split()[0] for case in cases}, key=lambda p: (p != folder, PROGRAMS.index(p))):
        own = sorted((c for c in cases if c.split()[0] == program), key=lambda c: trace_of["times"][c])
        first, rest, spent = [], [], 0.0
        for case in own:
            seconds = trace_of["times"][case]
            spent += seconds
            if program != folder:
                if spent < OTHERS_SECONDS:
                    first.append(case)
            else:
                (first if spent < 0.3 or (topic in case and seconds < 1.0) else rest).append(case)
        for batch in (first, rest):
            if batch:
                yield program, batch


def test_one(runner, mutant, trace_of):
    folder = mutant.file.split("/")[2]
    begin = time.monotonic()
    if mutant.number in trace_of["senseless"]:
        return "no mutant", "", begin
    if mutant.number not in trace_of["reached"]:
        return "unreached", "", begin
    for program, cases in batches(mutant, trace_of, folder):
        usual = sum(trace_of["times"][case] for case in cases)
        names = [case.split()[1] for case in cases]
        outcome, said = runner.run(program, names, mutant.number, limit=10.0 * usual + NO_ANSWER_SECONDS)
        if outcome != "passed":
            failed = [line for line in said.splitlines() if line.startswith("FAILED ")]
            return outcome, f"{program} {failed[-1][7:] if failed else ''}", begin
    return "survived", "", begin


def run(args):
    mutants, runner = read_mutants(args.scratch), Runner(args.scratch)
    trace_of = read_trace(args.scratch)
    results = read_results(args.scratch)
    new = not (args.scratch / "results.csv").exists()
    mutants = [mutant for mutant in mutants if mutant.kind != "data"]
    order = {"constant": 0, "sign": 1, "comparison": 2}
    mutants.sort(key=lambda m: (order[m.kind] > 0 and not args.in_turn, PLACES.index(m.file.split("/")[2]), m.number))
    with open(args.scratch / "results.csv", "a", newline="") as file:
        writer = csv.writer(file)
        if new:
            writer.writerow(["mutant", "kind", "outcome", "by", "seconds"])
        for mutant in mutants:
            before = results.get(identity(mutant))
            if before and not (args.only == "survived" and before["outcome"] in ("survived", "unreached")):
                continue
            if args.folder and mutant.file.split("/")[2] != args.folder:
                continue
            outcome, by, begin = test_one(runner, mutant, trace_of)
            writer.writerow([identity(mutant), mutant.kind, outcome, by, f"{time.monotonic() - begin:.2f}"])
            file.flush()
            if outcome in ("survived", "unreached"):
                print(f"{outcome}: {mutant.file}:{mutant.line}:{mutant.column} {mutant.before} -> {mutant.after}",
                      flush=True)


# Reporting -------------------------------------------------------------------------------------------------------

def report(args):
    results, count = read_results(args.scratch), collections.Counter()
    seconds, by = collections.Counter(), collections.Counter()
    for mutant in read_mutants(args.scratch):
        if mutant.kind == "data":
            count["data", "", ""] += 1
            continue
        folder = mutant.file.split("/")[2]
        row = results.get(identity(mutant), {"outcome": "to do", "seconds": "0", "by": ""})
        for place in (folder, "all"):
            count[place, mutant.kind, row["outcome"]] += 1
        seconds[folder] += float(row["seconds"])
        if row["by"]:
            by[folder, row["by"].split()[0]] += 1
    outcomes = ("caught", "crash", "hang", "survived", "unreached", "no mutant", "to do")
    print(f"{'place':14}{'kind':12}" + "".join(f"{o:>10}" for o in outcomes) + f"{'share':>8}")
    for folder in (*PLACES, "all"):
        for kind in ("constant", "sign", "comparison"):
            n = [count[folder, kind, o] for o in outcomes]
            share = f"{100 * sum(n[:3]) / sum(n[:5]):7.1f}%" if sum(n[:5]) else ""
            print(f"{folder:14}{kind:12}" + "".join(f"{x:10}" for x in n) + f"{share:>8}")
    left_out = collections.Counter()
    with open(args.scratch / "left_out.csv", newline="") as file:
        for _, kind, reason, n in csv.reader(file):
            left_out[reason, kind] += int(n)
    print("left out:", f"{count['data', '', '']} numbers of data tables;",
          ", ".join(f"{n} {kind}s: {reason}" for (reason, kind), n in sorted(left_out.items())))
    for folder in PLACES:
        print(f"{folder}: {seconds[folder]:.0f} s; caught by",
              ", ".join(f"{p} {n}" for (f, p), n in by.most_common() if f == folder))
    if args.survivors:
        list_survivors(args.scratch, results)


def list_survivors(scratch, results):
    """Each with its line; those that docs/mutation.md does not explain (file and line in one of its lines) first."""
    page = (SOURCE / "docs/mutation.md").read_text().splitlines()
    lines = []
    for mutant in read_mutants(scratch):
        row = results.get(identity(mutant))
        if mutant.kind == "data" or row is None or row["outcome"] not in ("survived", "unreached"):
            continue
        name = mutant.file.removeprefix("lib/noonleaf/")
        code = mutant.text.split("  //")[0].strip()
        explained = any(f"`{name}`" in line and f"`{code}`" in line for line in page)
        lines.append((explained, f"{row['outcome']} {name}:{mutant.line}:{mutant.column} {mutant.before} -> "
                                 f"{mutant.after} | {mutant.text}"))
    unexplained = [line for explained, line in lines if not explained]
    print(f"{len(lines)} survive, {len(unexplained)} of them not in docs/mutation.md:", *unexplained, sep="\n")
    print("explained:", *(line for explained, line in lines if explained), sep="\n")


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("step", choices=("prepare", "build", "trace", "run", "report", "all"))
    parser.add_argument("--scratch", type=pathlib.Path, required=True, help="a folder of its own, outside the tree")
    parser.add_argument("--folder", choices=PLACES, help="only the mutants of this one")
    parser.add_argument("--programs", nargs="*", choices=PROGRAMS, default=PROGRAMS, help="build, trace: only these")
    parser.add_argument("--only", choices=("survived",), help="run those again that survived so far")
    parser.add_argument("--in-turn", action="store_true", help="folder by folder, instead of all constants first")
    parser.add_argument("--survivors", action="store_true", help="report: list them")
    parser.add_argument("--builder", help="a command that builds, instead of ninja -C …; the targets are appended")
    parser.add_argument("--cmake", nargs="*", default=[], help="more arguments for CMake")
    args = parser.parse_args()
    args.scratch = args.scratch.resolve()
    steps = {"prepare": [prepare], "build": [build], "trace": [trace], "run": [run], "report": [report],
             "all": [prepare, build, trace, run, report]}
    for step in steps[args.step]:
        step(args)


if __name__ == "__main__":
    main()

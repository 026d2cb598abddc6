"""Every command that writes, killed at each of its calls that change a file, and refused at each of them.

strace puts the fault in: `inject=fsync:signal=KILL:when=2` kills at the second fsync, `error=ENOSPC` makes a call fail
as a full disk does. After each fault: what was recorded before is there byte for byte, a file under its final name is
whole, and the garden can be read.
"""

import os
import re
import subprocess
import sys

from place import Place, end, expect, not_run

CHANGING = ["write", "writev", "pwrite64", "fsync", "fdatasync", "ftruncate", "rename", "renameat", "renameat2",
            "unlink", "unlinkat", "mkdir", "mkdirat", "flock"]
REFUSALS = {"write": ["ENOSPC", "EIO", "EDQUOT"], "fsync": ["EIO", "ENOSPC"], "rename": ["EXDEV", "EACCES"],
            "flock": ["ENOLCK"], "mkdir": ["EACCES", "EMLINK"], "ftruncate": ["EIO"]}


def calls_of(place, words):
    """How often the command makes each call, when nothing goes wrong."""
    place.run(*words, before=["strace", "-f", "-qq", "-e", "signal=none", "-o", place.path("trace")], expect=0)
    counts = {}
    for line in place.read("trace").decode(errors="replace").splitlines():
        call = re.match(r"\d+\s+(\w+)\(", line)
        if call and call.group(1) in CHANGING:
            counts[call.group(1)] = counts.get(call.group(1), 0) + 1
    return counts


def faults(counts):
    for call, count in sorted(counts.items()):
        for nth in range(1, count + 1):
            yield call, nth, "signal=KILL"
            for error in REFUSALS.get(call, ["EIO"]):
                yield call, nth, f"error={error}"


def journal_holds(place, before, entry, fault, done):
    now = place.read("demo", "journal.csv")
    expect(now.startswith(before), f"{fault}: what was recorded before is not there any more")
    said = done.returncode == 0
    if said:
        expect(entry in now, f"{fault}: exit 0, but the entry is not there")
    elif "signal" not in fault:
        # What is refused says so; the exception is an answer that could not be printed after the entry was written.
        expect("fix:" in done.stderr or "exists" in done.stderr, f"{fault}: no word of it: {done.stderr!r}")
        expect(entry not in now or "answer could not be written" in done.stderr,
               f"{fault}: refused, but written: {done.stderr!r}")
    again = place.run("log", "demo", "note", "after the fault", "--date", "2025-07-16")
    expect(again.returncode == 0, f"{fault}: nothing can be logged afterwards: {again.stderr}")
    after = place.read("demo", "journal.csv")
    expect(after.startswith(before) and b"after the fault" in after, f"{fault}: the entry after it is missing")
    check = place.run("check", "demo")
    expect(check.returncode == 0 or "cut off" in check.stdout + check.stderr,
           f"{fault}: check finds {check.stdout}{check.stderr}")


def whole_or_absent(place, names, whole, fault, done):
    for name in names:
        there = os.path.exists(place.path(name))
        expect(not there or place.read(name) == whole[name], f"{fault}: {name} is there and not whole")
        expect(done.returncode != 0 or there, f"{fault}: exit 0 without {name}")
    if done.returncode != 0 and "signal" not in fault:
        expect("fix:" in done.stderr, f"{fault}: no word of it: {done.stderr!r}")


def inject(place, words, call, nth, what):
    return place.run(*words, before=["strace", "-f", "-qq", "-e", "signal=none", "-o", "/dev/null",
                                     "-e", f"trace={call}",
                                     "-e", f"inject={call}:{what}:when={nth}"])


def journal_command(place, words, entry):
    place.fresh_garden()
    counts = calls_of(place, words)
    expect(counts.get("write", 0) > 0, f"{words}: no write seen")
    for call, nth, what in faults(counts):
        place.fresh_garden()
        before = place.read("demo", "journal.csv")
        done = inject(place, words, call, nth, what)
        journal_holds(place, before, entry, f"{' '.join(words[:3])}, {call} {nth} {what}", done)


def file_command(place, words, names, folder=None):
    def clear():
        for name in names:
            if os.path.exists(place.path(name)):
                os.remove(place.path(name))
        if folder and os.path.exists(place.path(folder)):
            subprocess.run(["rm", "-r", place.path(folder)], check=True)

    place.fresh_garden()
    clear()
    counts = calls_of(place, words)
    whole = {name: place.read(name) for name in names}
    for call, nth, what in faults(counts):
        clear()
        done = inject(place, words, call, nth, what)
        whole_or_absent(place, names, whole, f"{' '.join(words[:3])}, {call} {nth} {what}", done)


def main(command):
    probe = subprocess.run(["strace", "-f", "-qq", "-o", "/dev/null", "true"], capture_output=True, text=True) \
        if subprocess.run(["sh", "-c", "command -v strace"], capture_output=True).returncode == 0 else None
    if probe is None:
        not_run("strace is missing (apt-get install strace)")
    if probe.returncode != 0:
        not_run("strace may not follow a program here: " + probe.stderr.strip())
    with Place(command) as place:
        note = ("log", "demo", "note", "the gate was locked", "--date", "2025-07-16")
        journal_command(place, note, b"the gate was locked")
        journal_command(place, ("log", "demo", "undo", "146", "--date", "2025-07-16"), b",undo,")
        place.fresh_garden()
        place.run("week", "demo", "--format", "csv", "--out", "week.csv", expect=0)
        rows = place.read("week.csv").decode().splitlines()
        rows[1] = ",".join([*rows[1].split(",")[:6], "20", *rows[1].split(",")[7:]])
        with open(place.path("filled.csv"), "w") as file:
            file.write("\n".join(rows) + "\n")
        journal_command(place, ("log", "demo", "--from", "filled.csv"), b"week sheet")
        file_command(place, ("week", "demo", "--format", "html", "--out", "sheet.html"), ["sheet.html"])
        file_command(place, ("new", "another", "--demo"), ["another/garden.toml", "another/journal.csv"],
                     folder="another")
    end()


main(sys.argv[1])

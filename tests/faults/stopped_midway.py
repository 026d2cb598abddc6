"""Readers that stop listening, Ctrl-C in the middle of a long run, a clock set back, no zone database, many at once."""

import os
import shutil
import signal
import subprocess
import sys
import time

from place import Place, end, expect


def reader_stops_listening(place):
    for words in (["today", "demo"], ["week", "demo"], ["check", "demo"], ["crops"], ["--help"]):
        line = f"'{place.command}' {' '.join(words)}"
        done = subprocess.run(["bash", "-c", f"{line} | head -c 20 >/dev/null; exit ${{PIPESTATUS[0]}}"],
                              cwd=place.folder,
                              stderr=subprocess.PIPE, text=True)
        expect(done.returncode == 0 and done.stderr == "", f"{words} into head: {done.returncode} {done.stderr!r}")


def round_of(place, count):
    for number in range(count):
        shutil.copytree(place.pristine, place.path("gardens", f"g{number:03}"))


def interrupted(place):
    """Ctrl-C after a while: gone at once, nothing half-made under its final name, no garden changed."""
    round_of(place, 60)
    journals = [place.read("gardens", name, "journal.csv") for name in place.names("gardens")]
    for wait_s in (0.02, 0.1, 0.3):
        child = subprocess.Popen([place.command, "round", *[f"gardens/{name}" for name in place.names("gardens")]],
                                 cwd=place.folder, stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        time.sleep(wait_s)
        child.send_signal(signal.SIGINT)
        child.communicate(timeout=10)
        expect(child.returncode in (-signal.SIGINT, 0), f"Ctrl-C after {wait_s} s: {child.returncode}")
    expect(journals == [place.read("gardens", name, "journal.csv") for name in place.names("gardens")],
           "Ctrl-C in a round changed a journal")
    for wait_s in (0.005, 0.02, 0.05, 0.1):
        child = subprocess.Popen([place.command, "week", "demo", "--format", "html", "--out", "sheet.html"],
                                 cwd=place.folder, stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        time.sleep(wait_s)
        child.send_signal(signal.SIGINT)
        child.communicate(timeout=10)
        there = os.path.exists(place.path("sheet.html"))
        expect(not there or place.read("sheet.html").rstrip().endswith(b"</html>"), f"half a sheet after {wait_s} s")
        if there:
            os.remove(place.path("sheet.html"))


def clock_set_back(place):
    """An entry dated before the last one keeps its date, gets the next number, and is counted on its day."""
    place.fresh_garden()
    place.run("log", "demo", "note", "first", "--date", "2025-07-16", expect=0)
    done = place.run("log", "demo", "note", "earlier", "--date", "2025-07-10", expect=0)
    first, second = place.read("demo", "journal.csv").decode().splitlines()[-2:]
    expect(int(second.split(",")[0]) == int(first.split(",")[0]) + 1, f"numbers go on: {first} {second}")
    expect(",2025-07-10," in f",{second}".replace(second.split(",")[0] + ",", "", 1), f"the date is kept: {second}")
    expect(place.run("check", "demo").returncode == 0, f"check after it: {done.stdout}")


def without_zones(place):
    """The zone database hidden: refused with the fix, never the wrong clock."""
    place.fresh_garden()
    hide = ["unshare", "--mount", "sh", "-c", 'mount -t tmpfs none /usr/share/zoneinfo && exec "$@"', "sh"]
    probe = subprocess.run([*hide, "true"], capture_output=True, text=True)
    if probe.returncode != 0:
        print("not run here, folders may not be hidden: the zone database")
        return
    done = place.run("today", "demo", before=hide)
    expect(done.returncode == 1 and "fix:" in done.stderr and "zone" in done.stderr
           and "should not happen" not in done.stderr,
           f"without zones: {done.returncode} {done.stdout[:200]!r} {done.stderr!r}")


def little_memory(place):
    """A little less memory than `today` needs: it says that, and does not ask for a report."""
    place.fresh_garden()

    def within(megabytes):
        return place.run("today", "demo", before=["prlimit", f"--as={megabytes << 20}"])

    too_little, enough = 8, 4096
    if within(enough).returncode != 0:
        print("not run here, memory may not be limited: a sanitizer, or no prlimit")
        return
    while enough - too_little > 1:
        middle = (too_little + enough) // 2
        too_little, enough = (too_little, middle) if within(middle).returncode == 0 else (middle, enough)
    refused = 0
    for less in range(1, 7):
        done = within(enough - less)
        if done.returncode == 127:
            break  # the loader needs all of it
        said = "not enough memory" in done.stderr and "fix:" in done.stderr
        refused += said
        expect(done.returncode == 1 and said or done.returncode == 0 and less == 1,
               f"{less} MB less than the {enough} needed: {done.returncode} {done.stderr[-300:]!r}")
    expect(refused > 0, "too little memory was never said")


def four_at_once(place):
    """Four people log at the same time: every entry is there once, with a number of its own."""
    place.fresh_garden()
    before = place.read("demo", "journal.csv")
    ten_notes = ('for i in 1 2 3 4 5 6 7 8 9 10; do "$0" log demo note "writer $1 entry $i." --date 2025-07-16 >/dev/null'
                 " || exit 1; done")
    writers = [subprocess.Popen(["sh", "-c", ten_notes, place.command, str(n)], cwd=place.folder) for n in range(4)]
    expect(all(writer.wait(timeout=60) == 0 for writer in writers), "four at once: one was refused")
    now = place.read("demo", "journal.csv")
    added = now[len(before):].decode().splitlines()
    expect(now.startswith(before) and len(added) == 40, f"four at once: {len(added)} entries of 40")
    expect(len({line.split(",")[0] for line in added}) == 40, "four at once: a number twice")
    for n in range(4):
        for i in range(1, 11):
            expect(sum(f"writer {n} entry {i}." in line for line in added) == 1, f"writer {n} entry {i}")


def main(command):
    with Place(command) as place:
        reader_stops_listening(place)
        interrupted(place)
        clock_set_back(place)
        without_zones(place)
        little_memory(place)
        four_at_once(place)
    end()


main(sys.argv[1])

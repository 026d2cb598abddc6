"""Folders and files that may not be read or written, that lead in a circle, that change while they are read."""

import os
import subprocess
import sys
import threading

from place import Place, end, expect

NOBODY = 65534


def as_nobody():
    """Permissions bind everybody but root: the command runs as nobody, where the tests run as root."""
    return {"user": NOBODY, "group": NOBODY, "extra_groups": []} if os.geteuid() == 0 else {}


def refused(done, what, *words):
    expect(done.returncode == 1, f"{what}: exit {done.returncode}, {done.stdout}{done.stderr}")
    expect("fix:" in done.stderr, f"{what}: no way to mend it is said: {done.stderr!r}")
    expect("should not happen" not in done.stderr, f"{what}: {done.stderr!r}")
    for word in words:
        expect(word in done.stderr, f"{what}: {word!r} is not said: {done.stderr!r}")


def read_only_folder(place):
    place.fresh_garden()
    before = place.read("demo", "journal.csv")
    names = place.names("demo")
    os.chmod(place.path("demo"), 0o555)
    os.chmod(place.path("demo", "journal.csv"), 0o444)
    refused(place.run("log", "demo", "note", "x", "--date", "2025-07-16", **as_nobody()), "log in a read-only folder",
            "journal")
    expect(place.read("demo", "journal.csv") == before, "log in a read-only folder changed the journal")
    expect(place.names("demo") == names, "log in a read-only folder left a file behind")
    expect(place.run("today", "demo", **as_nobody()).returncode == 0, "today needs no more than reading")
    refused(place.run("week", "demo", "--format", "html", "--out", "demo/sheet.html", **as_nobody()),
            "week into a read-only folder", "demo/sheet.html", "ermission")
    refused(place.run("new", "demo/inner", "--demo", **as_nobody()), "new in a read-only folder", "ermission")
    expect(place.names("demo") == names, "a read-only folder has a new file")
    os.chmod(place.path("demo"), 0o755)


def unreadable(place):
    for name in ["garden.toml", "journal.csv", "weather/station_2025.csv"]:
        place.fresh_garden()
        os.chmod(place.path("demo", name), 0o000)
        done = place.run("today", "demo", **as_nobody())
        refused(done, f"today without permission for {name}", name,
                "permission" if name in ("journal.csv", "garden.toml") else "right to read")
    place.fresh_garden()
    os.chmod(place.path("demo", "weather"), 0o000)
    refused(place.run("today", "demo", **as_nobody()), "today without permission for weather/", "weather")
    os.chmod(place.path("demo", "weather"), 0o755)
    os.chmod(place.path("demo"), 0o000)
    refused(place.run("today", "demo", **as_nobody()), "today without permission for the folder", "demo")
    os.chmod(place.path("demo"), 0o755)


def circles(place):
    for name in ["garden.toml", "journal.csv", "weather", "weather/station_2025.csv"]:
        place.fresh_garden()
        path = place.path("demo", name)
        subprocess.run(["rm", "-r", path], check=True)
        os.symlink(os.path.basename(name), path)
        refused(place.run("today", "demo"), f"today where {name} is a link to itself", os.path.basename(name))
    place.fresh_garden()
    os.symlink("..", place.path("demo", "weather", "up"))
    expect(place.run("today", "demo").returncode == 0, "a link upwards in weather/ is not followed for ever")
    place.fresh_garden()
    os.remove(place.path("demo", "journal.csv"))
    os.symlink("journal.csv", place.path("demo", "journal.csv"))
    refused(place.run("log", "demo", "note", "x", "--date", "2025-07-16"), "log where journal.csv is a link to itself",
            "journal.csv")


def full_disk_for_the_answer(place):
    place.fresh_garden()
    for words in (["today", "demo"], ["week", "demo"], ["check", "demo"], ["crops"], ["--help"], ["today", "--help"]):
        with open("/dev/full", "w") as full:
            done = subprocess.run([place.command, *words], cwd=place.folder, stdout=full,
                                  stderr=subprocess.PIPE, text=True)
        expect(done.returncode != 0, f"{words} onto a full disk: exit 0")
        expect("No space left" in done.stderr, f"{words} onto a full disk: {done.stderr!r}")
    closed = place.run("today", "demo", before=["sh", "-c", 'exec "$@" >&-', "sh"])
    expect(closed.returncode != 0 and "could not be written" in closed.stderr,
           f"today with its output closed: {closed.returncode} {closed.stderr!r}")


def changed_while_read(place):
    """Somebody copies a new weather file over the old one, again and again: an answer, or one clear error."""
    place.fresh_garden()
    path = place.path("demo", "weather", "station_2025.csv")
    with open(path, "rb") as file:
        whole = file.read()
    over = threading.Event()

    def copy_over():
        cut = 0
        while not over.is_set():
            cut = (cut + 977) % len(whole)
            with open(path, "wb") as file:
                file.write(whole[:cut])
                file.flush()
                file.write(whole[cut:])

    copier = threading.Thread(target=copy_over)
    copier.start()
    try:
        for _ in range(60):
            done = place.run("today", "demo")
            expect(done.returncode == 0 or "fix:" in done.stderr,
                   f"a file changed while read: {done.returncode} {done.stderr!r}")
            expect(done.returncode in (0, 1) and "should not happen" not in done.stderr,
                   f"a file changed while read: {done.returncode} {done.stderr!r}")
    finally:
        over.set()
        copier.join()


def main(command):
    with Place(command) as place:
        read_only_folder(place)
        unreadable(place)
        circles(place)
        full_disk_for_the_answer(place)
        changed_while_read(place)
    end()


main(sys.argv[1])

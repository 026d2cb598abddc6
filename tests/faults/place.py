"""An empty folder with a demo garden, the command, and how a test says what it found."""

import os
import shutil
import subprocess
import sys
import tempfile

NOT_RUN = 77


class Place:
    def __init__(self, command):
        self.command = command
        self.folder = tempfile.mkdtemp(prefix="noonleaf-faults-")
        os.chmod(self.folder, 0o755)
        self.garden = os.path.join(self.folder, "demo")
        self.run("new", "demo", "--demo", expect=0)
        self.pristine = os.path.join(self.folder, "pristine")
        shutil.copytree(self.garden, self.pristine)

    def __enter__(self):
        return self

    def __exit__(self, *_):
        shutil.rmtree(self.folder, ignore_errors=True)

    def run(self, *words, expect=None, before=(), text_in="", **options):
        done = subprocess.run([*before, self.command, *words], cwd=self.folder, input=text_in, text=True,
                              capture_output=True, timeout=120, errors="replace", **options)
        if expect is not None and done.returncode != expect:
            fail(f"{' '.join(words)}: exit {done.returncode} instead of {expect}\n{done.stdout}{done.stderr}")
        return done

    def path(self, *names):
        return os.path.join(self.folder, *names)

    def fresh_garden(self):
        shutil.rmtree(self.garden, ignore_errors=True)
        shutil.copytree(self.pristine, self.garden)

    def read(self, *names):
        with open(self.path(*names), "rb") as file:
            return file.read()

    def names(self, *below):
        return sorted(os.listdir(self.path(*below)))


failures = []
passed = 0


def fail(what):
    failures.append(what)
    print("FAILED", what)


def expect(condition, what):
    global passed
    if condition:
        passed += 1
    else:
        fail(what)


def end():
    print(f"{passed} passed, {len(failures)} failed")
    sys.exit(1 if failures else 0)


def not_run(why):
    print(f"not run: {why}")
    sys.exit(NOT_RUN)

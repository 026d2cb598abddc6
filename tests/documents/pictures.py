"""pictures.py SOURCE_FOLDER BUILD_FOLDER: draws every picture of README.md, DEVELOPERS.md and docs/ anew and compares
it with the one that is there, byte by byte. A picture without a row in pictures.txt is a fault, and so is a page that
does not say how its picture is drawn. Where a picture's data are not there, that is said and the test is skipped."""
import glob
import os
import re
import subprocess
import sys
import tempfile

SOURCE, BUILD = (os.path.abspath(word) for word in sys.argv[1:3])
HERE = os.path.dirname(os.path.abspath(__file__))
ENDINGS = ("svg", "png", "jpg", "jpeg", "gif", "webp", "pdf")
faults, not_drawn = [], []


def fault(text):
    faults.append(text)
    print("FAULT", text, flush=True)


def drawn_by():
    rows = {}
    with open(os.path.join(HERE, "pictures.txt"), encoding="utf-8") as file:
        for line in file:
            if line.strip() and not line.startswith("#"):
                picture, command = line.strip().split(" | ")
                rows[picture] = command
    return rows


def pages():
    for path in [SOURCE + "/README.md", SOURCE + "/DEVELOPERS.md"] + sorted(glob.glob(SOURCE + "/docs/*.md")):
        with open(path, encoding="utf-8") as file:
            yield os.path.relpath(path, SOURCE), file.read()


def check_page_names(picture, command):
    """The page that shows it has the command behind it, before the next heading."""
    shown = False
    for page, text in pages():
        for found in re.finditer(r"!\[[^\]]*\]\(([^)]+)\)", text):
            if os.path.normpath(os.path.join(os.path.dirname(page), found[1])) != picture:
                continue
            shown = True
            behind = " ".join(re.split(r"\n#", text[found.end():])[0].split())
            if f"`{command}`" not in behind:
                fault(f"{page} does not say what draws {picture}: `{command}`")
    if not shown:
        fault(f"no page shows {picture}")


def check_drawn(picture, command):
    with tempfile.TemporaryDirectory() as folder:
        os.mkdir(os.path.join(folder, "docs"))
        os.symlink(BUILD, os.path.join(folder, "build"))
        done = subprocess.run(["sh", "-c", command], cwd=folder, capture_output=True, text=True)
        path = os.path.join(folder, picture)
        if done.returncode != 0:
            return fault(f"{command} ends with {done.returncode}: {done.stderr}{done.stdout}")
        if not os.path.exists(path) and "SKIPPED" in done.stdout + done.stderr:
            not_drawn.append(picture)
            return print(f"not drawn: {picture}: {(done.stdout + done.stderr).strip()}")
        with open(path, "rb") as now, open(os.path.join(SOURCE, picture), "rb") as before:
            if now.read() != before.read():
                return fault(f"{picture} is not what `{command}` draws; draw it anew and look at it")
    return print(f"the same: {picture}")


rows = drawn_by()
found = sorted(os.path.relpath(path, SOURCE) for path in glob.glob(SOURCE + "/docs/**", recursive=True)
               if path.lower().endswith(ENDINGS))
for page, text in pages():
    for shown in re.findall(r"!\[[^\]]*\]\(([^)]+)\)", text) + re.findall(r"<img[^>]*src=\"([^\"]+)\"", text):
        if "://" in shown:
            fault(f"{page} shows {shown}, which is drawn elsewhere")
        else:
            found.append(os.path.normpath(os.path.join(os.path.dirname(page), shown)))
for picture in sorted(set(found)):
    if picture not in rows:
        fault(f"{picture} is in no row of tests/documents/pictures.txt: nothing draws it anew")
for picture, command in rows.items():
    if picture not in found:
        fault(f"pictures.txt names {picture}, which is not there")
        continue
    check_page_names(picture, command)
    check_drawn(picture, command)
sys.exit(1 if faults else 77 if not_drawn else 0)

"""run_pages.py SOURCE_FOLDER BUILD_FOLDER COMMAND: runs every command of README.md, DEVELOPERS.md and docs/*.md as a
reader would, page by page, each page in a fresh folder, its commands in their order.

A command ends with 0 unless special_commands.txt says otherwise; what is not run stands there with its reason, and its
scripts and options are still looked for. A command of a page that is neither run nor listed cannot be: what is not
listed is run. A line of that file that no page has any more is a fault as well."""
import glob
import os
import re
import shutil
import subprocess
import sys
import tempfile

from page_commands import commands_of, options_of

SOURCE, BUILD, NOONLEAF = (os.path.abspath(word) for word in sys.argv[1:4])
HERE = os.path.dirname(os.path.abspath(__file__))
PAGES = ["README.md", "DEVELOPERS.md"] + sorted("docs/" + os.path.basename(path) for path in glob.glob(SOURCE + "/docs/*.md"))
faults = []


def fault(where, text):
    faults.append(f"{where}: {text}")
    print(f"FAULT {where}: {text}", flush=True)


def special_commands():
    """{page: (setup, {command: {key: value}})}; keys: skip, exit, before, input, instead, then, needs."""
    pages, page, entry = {}, None, None
    with open(os.path.join(HERE, "special_commands.txt"), encoding="utf-8") as file:
        for line in file.read().split("\n"):
            if not line.strip() or line.startswith("#"):
                continue
            if line.startswith("["):
                page = pages.setdefault(line.strip("[]"), {"setup": [], "commands": {}})
                continue
            key, value = line.strip().split(": ", 1)
            if key == "setup":
                page["setup"].append(value)
            elif key == "command":
                entry = page["commands"].setdefault(value, {"used": False})
            else:
                assert key in ("skip", "exit", "before", "input", "instead", "then", "needs"), key
                entry[key] = value
    return pages


def shell(text, folder, given=""):
    """As a reader types it: the built command under its name, the repository's files beside."""
    left_out = ("NO_COLOR", "NOONLEAF_WRITE_GOLDEN")
    environment = {name: value for name, value in os.environ.items() if name not in left_out}
    environment.update(PATH=os.path.join(folder, ".bin") + ":" + environment["PATH"], TERM="dumb", HOME=folder,
                       SOURCE=SOURCE)
    return subprocess.run(["sh", "-c", text], cwd=folder, env=environment, input=given, text=True, capture_output=True,
                          timeout=600)


def fresh_folder():
    folder = tempfile.mkdtemp(prefix="noonleaf-documents-")
    os.mkdir(os.path.join(folder, ".bin"))
    os.symlink(NOONLEAF, os.path.join(folder, ".bin", "noonleaf"))
    os.symlink(BUILD, os.path.join(folder, "build"))
    shutil.copytree(os.path.join(SOURCE, "docs"), os.path.join(folder, "docs"))  # a command may write there
    os.symlink(os.path.join(SOURCE, "weather_samples"), os.path.join(folder, "weather_samples"))
    return folder


def help_of(*words):
    done = subprocess.run([NOONLEAF, *words, "--help"], text=True, capture_output=True)
    return done.stdout if done.returncode == 0 else ""


def check_form(where, text):
    """`noonleaf log DIR --from FILE`: the command and its options are there."""
    words = text.split()
    if words[0] != "noonleaf":
        return check_parts(where, text)
    if words[1].isupper():
        return None  # noonleaf COMMAND --help
    helped = help_of(words[1])
    if not helped:
        return fault(where, f"there is no command `noonleaf {words[1]}`")
    for option in options_of(text):
        if not re.search(rf"{option}\b", helped):
            fault(where, f"`noonleaf {words[1]}` has no option {option}")
    return None


def check_parts(where, text):
    """A command that is not run: it is a line that a shell can read, its script is there, it knows the options."""
    if subprocess.run(["sh", "-n", "-c", text]).returncode != 0:
        fault(where, "a shell cannot read this line")
    scripts = [word for word in re.split(r"[ =]", text) if word.endswith(".sh") or word.endswith(".py")]
    for script in scripts:
        path = os.path.join(SOURCE, script)
        if not os.path.exists(path):
            fault(where, f"there is no {script}")
            continue
        if script.endswith(".sh") and subprocess.run(["sh", "-n", path]).returncode != 0:
            fault(where, f"{script} is not a script that a shell can read")
        with open(path, encoding="utf-8") as file:
            known = file.read()
        for option in options_of(text):
            if option not in known:
                fault(where, f"{script} does not know {option}")
    with open(os.path.join(SOURCE, "CMakeLists.txt"), encoding="utf-8") as file:
        choices = file.read()
    for choice in re.findall(r"-D(NOONLEAF_\w+)", text):
        if not re.search(rf"(option|set)\({choice} ", choices):
            fault(where, f"CMake is not asked for {choice} anywhere")


def run_command(where, command, special, folder):
    missing = [tool for tool in special.get("needs", "").split() if not is_there(tool)]
    if missing:
        print(f"not run, {', '.join(missing)} missing: {command.text}")
        return
    if "before" in special:
        prepared = shell(special["before"], folder)
        if prepared.returncode != 0:
            fault(where, f"what stands before it in special_commands.txt fails: {prepared.stderr}")
    done = shell(special.get("instead", command.text), folder, special.get("input", "").replace("\\n", "\n"))
    if done.returncode != int(special.get("exit", 0)):
        fault(where, f"{command.text}\n  ended with {done.returncode}, not {special.get('exit', 0)}\n{done.stderr[-600:]}"
                     f"{done.stdout[-300:]}")
    if "then" in special:
        checked = shell(special["then"], folder, done.stdout)
        if checked.returncode != 0:
            fault(where, f"{command.text}\n  does not do what the page says: {special['then']}\n"
                         f"{checked.stderr[-300:]}")


def is_there(tool):
    if tool.startswith("python:"):
        return subprocess.run([sys.executable, "-c", "import " + tool[7:]], capture_output=True).returncode == 0
    if tool.startswith("build:"):
        return os.path.exists(os.path.join(BUILD, tool[6:]))
    return shutil.which(tool) is not None


def run_page(page, specials):
    folder, ran, listed, forms = fresh_folder(), 0, 0, 0
    try:
        for text in specials["setup"]:
            done = shell(text, folder)
            if done.returncode != 0:
                fault(page, f"setup in special_commands.txt fails: {text}\n{done.stderr}")
        for command in commands_of(os.path.join(SOURCE, page)):
            where = f"{page}:{command.line}"
            special = specials["commands"].get(command.text, {})
            special["used"] = True
            if "skip" in special:
                check_parts(where, command.text)
                listed += 1
            elif command.form:
                check_form(where, command.text)
                forms += 1
            else:
                run_command(where, command, special, folder)
                ran += 1
    finally:
        shutil.rmtree(folder)
    for text, special in specials["commands"].items():
        if not special["used"]:
            fault("special_commands.txt", f"{page} has no command: {text}")
    if ran + listed + forms:
        print(f"{page}: {ran} run, {forms} mentioned, {listed} listed as not run", flush=True)
    return ran


specials = special_commands()
total = 0
for page in PAGES:
    total += run_page(page, specials.pop(page, {"setup": [], "commands": {}}))
for page in specials:
    fault("special_commands.txt", f"there is no page {page}")
if total < 60:
    fault("run_pages.py", f"only {total} commands were found and run: the pages are no longer read rightly")
print(f"{total} commands run, {len(faults)} faults")
sys.exit(1 if faults else 0)

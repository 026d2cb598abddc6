"""The commands that a page shows: every line of a shell block, the command lines of indented and unmarked blocks, and
those between backticks within a sentence."""
import re
import shlex

# What a command line begins with; in a block marked sh every line is one.
FIRST_WORD = re.compile(r"(?:[A-Z_]+=\S+ +)*(?:noonleaf|sh|bash|cmake|ctest|cpack|ninja|doxygen|python3|"
                        r"g\+\+|clang\+\+|export|"
                        r"pkg-config|apt|apt-get|sudo|git|(?:\./)?build[a-z-]*/\S+|tests/\S+\.sh) ")
# A stand-in for what the reader puts there: DIR, FILE, "DIR…"; not C++ or a locale's name.
STAND_IN = re.compile(r"(?<![\w.=/-])[A-Z]{2,}(?![\w.=/])|…|(?<=\s)--(?:from|to)(?= --)")


class Command:
    def __init__(self, text, line, form):
        self.text = text  # one line, without what explains it
        self.line = line
        self.form = form  # only how a command looks: its words and options exist, it is not run


def without_explanation(line):
    """A command without the remark behind it: after two blanks or a #, outside quotation marks."""
    quote = ""
    for place, letter in enumerate(line):
        if quote:
            quote = "" if letter == quote else quote
        elif letter in "\"'":
            quote = letter
        elif line.startswith("  ", place) or line.startswith(" #", place):
            return line[:place]
    return line.rstrip()


def has_open_quote(text):
    try:
        shlex.split(text)
    except ValueError:
        return True
    return False


def in_block(lines, first_line, every_line):
    commands, open_text, begun = [], "", 0
    for number, line in enumerate(lines, first_line):
        text = without_explanation(line.strip())
        if not text or text.startswith("#"):
            continue
        if not open_text and not (every_line or FIRST_WORD.match(text + " ")):
            continue
        begun = begun if open_text else number
        open_text += text
        if every_line and has_open_quote(open_text):  # what stands between the marks may take several lines
            open_text += "\n"
            continue
        if open_text.endswith("\\"):
            open_text = open_text[:-1].rstrip() + " "
            continue
        commands.append(Command(open_text, begun, False))
        open_text = ""
    if open_text:
        commands.append(Command(open_text, begun, False))
    return commands


def in_sentences(lines, first_line):
    text = "\n".join(lines)
    for found in re.finditer(r"`([^`]+)`", text):
        words = " ".join(found.group(1).split())
        if " " not in words or not FIRST_WORD.match(words + " "):
            continue
        first = words.split()
        mention = first[0] == "noonleaf" and len(first) == 2 and not first[1].startswith("-")
        yield Command(words, first_line + text.count("\n", 0, found.start()), mention or bool(STAND_IN.search(words)))


def commands_of(path):
    """Result: the commands in the order of the page."""
    found, block, kind, begun = [], [], "sentence", 1

    def close():
        if kind == "sentence":
            found.extend(in_sentences(block, begun))
        elif kind == "indented":
            found.extend(in_block(block, begun, False))
        elif kind in ("sh", ""):
            found.extend(in_block(block, begun, kind == "sh"))

    with open(path, encoding="utf-8") as file:
        for number, line in enumerate(file.read().split("\n"), 1):
            fence = re.match(r" *```(\w*)", line)
            inside = kind not in ("sentence", "indented")
            if fence:
                close()
                block, begun = [], number + 1
                kind = "sentence" if inside else {"bash": "sh", "console": "sh"}.get(fence[1], fence[1])
                continue
            if not inside:
                # Four blanks are a block after an empty line; within a list they carry a sentence on.
                fresh = line.startswith("    ") and (kind == "indented" or not block or not block[-1].strip())
                now = "indented" if fresh else "sentence"
                if now != kind:
                    close()
                    block, kind, begun = [], now, number
            block.append(line)
    close()
    return found


def options_of(text):
    """The options of a command line, without their values."""
    try:
        words = shlex.split(text)
    except ValueError:
        words = text.split()
    return [word.split("=")[0] for word in words if word.startswith("--") and len(word) > 2]

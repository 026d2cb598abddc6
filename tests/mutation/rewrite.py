"""Rewrites C++ files so that each constant, sign and comparison can be made wrong at run time: see mutate.py.

A tokenizer, no parser: the sources are kept in shape by clang-format, so that `a < b` has spaces around its `<` and
a template argument list has none. What must stay a constant for the compiler is left as it is, and counted.
"""
import re
from dataclasses import dataclass, field

TOKEN = re.compile(r"""
    (?P<comment>//[^\n]*|/\*.*?\*/)
  | (?P<text>(?:u8|[uUL])?R"\((?:.|\n)*?\)"|(?:u8|[uUL])?"(?:\\.|[^"\\\n])*"|'(?:\\.|[^'\\\n])+')
  | (?P<directive>^[ \t]*\#(?:\\\n|[^\n])*)
  | (?P<number>0[xX][0-9a-fA-F'.]+(?:[pP][+-]?[0-9]+)?\w*|\.?[0-9][0-9']*(?:\.[0-9']*)?(?:[eE][+-]?[0-9]+)?\w*)
  | (?P<name>[A-Za-z_]\w*)
  | (?P<sign><=>|->\*|->|<<=|>>=|\+\+|--|<<|(?<=\s)>>(?=\s)|<=|>=|==|!=|\+=|-=|\*=|/=|&&|\|\||::
      |[-+*/%<>=!&|^~?:;,.(){}\[\]])
  | (?P<space>\s+)
""", re.VERBOSE | re.MULTILINE | re.DOTALL)

COMPARISONS = {"<": "Less", ">=": "GreaterEqual", ">": "Greater", "<=": "LessEqual", "==": "Equal", "!=": "NotEqual"}
OTHER = {"<": ">=", ">=": "<", ">": "<=", "<=": ">", "==": "!=", "!=": "==", "+": "-", "-": "+", "+=": "-=", "-=": "+="}
SIGNS = {"+": "Plus", "-": "Minus"}
ASSIGNMENTS = {"+=": "PlusAssign", "-=": "MinusAssign"}


@dataclass
class Token:
    kind: str
    text: str
    at: int
    space_before: bool = False
    space_after: bool = False


@dataclass
class Mutant:
    number: int
    file: str
    line: int
    column: int
    kind: str  # constant, sign, comparison; data: a constant of a table of data
    before: str
    after: str
    text: str  # the whole line


@dataclass
class Rewriter:
    """One numbering over all files.

    keep   names of variables that must stay constexpr, and conditions of `if constexpr`, each with why
    data   file -> names of its tables that are data: their numbers get the kind "data"
    """
    keep: dict = field(default_factory=dict)
    data: dict = field(default_factory=dict)
    mutants: list = field(default_factory=list)
    left_out: dict = field(default_factory=dict)  # (file, kind, reason) -> count

    def rewrite(self, text, file, mutate=True):
        """The text with a choice in the place of each mutant; `mutate` False only takes constexpr away."""
        return _File(self, text, file, mutate).run()


def tokens_of(text):
    tokens, at, space = [], 0, True
    while at < len(text):
        match = TOKEN.match(text, at)
        if match is None:
            raise SystemExit(f"not a token: {text[at:at + 40]!r}")
        kind = match.lastgroup
        if kind in ("space", "comment"):
            if tokens:
                tokens[-1].space_after = True
            space = True
        else:
            tokens.append(Token(kind, match.group(), at, space))
            space = False
        at = match.end()
    return tokens


class _File:
    def __init__(self, rewriter, text, file, mutate):
        self.rewriter, self.source, self.file, self.mutate = rewriter, text, file, mutate
        self.tokens = tokens_of(text)
        self.reason = [None] * len(self.tokens)  # why a token is left out
        self.in_table = set()  # tokens of a table of data
        self.edits = []  # (at, length, replacement)

    # What is left out ------------------------------------------------------------------------------------------

    def mark(self, first, last, reason):
        for i in range(first, last + 1):
            self.reason[i] = self.reason[i] or reason

    def closing(self, at):
        """The bracket that closes the one at `at`."""
        pairs, depth = {"(": ")", "{": "}", "[": "]"}, 0
        opening, close = self.tokens[at].text, pairs[self.tokens[at].text]
        for i in range(at, len(self.tokens)):
            depth += (self.tokens[i].text == opening) - (self.tokens[i].text == close)
            if depth == 0:
                return i
        raise SystemExit(f"{self.file}: nothing closes {opening}")

    def closing_angle(self, at):
        depth = 0
        for i in range(at, len(self.tokens)):
            token = self.tokens[i]
            if token.text == "<" and (i == at or not token.space_before):
                depth += 1
            elif token.text == ">" and not (token.space_before and token.space_after):
                depth -= 1
                if depth == 0:
                    return i
            elif token.text in (";", "{", "}"):
                break
        return None

    def find_conditional(self):
        """What lies between #if and #endif is compiled for one machine and not for another."""
        depth = 0
        for i, token in enumerate(self.tokens):
            if token.kind != "directive":
                self.reason[i] = "compiled on some machines only" if depth else None
            elif re.match(r"\s*#\s*if", token.text):
                depth += 1
            elif re.match(r"\s*#\s*endif", token.text):
                depth -= 1

    def find_left_out(self):
        self.find_conditional()
        for i, token in enumerate(self.tokens):
            before = self.tokens[i - 1].text if i else ""
            if token.kind == "directive":
                self.mark(i, i, "preprocessor")
            elif token.text == "[" and self.tokens[i + 1].text == "[" and not token.space_after:
                self.mark(i, self.closing(i), "attribute")
            elif token.text == "<" and (before == "template" or not token.space_before):
                end = self.closing_angle(i)
                if end is not None:
                    self.mark(i, end, "template argument")
            elif token.text in ("static_assert", "alignas"):
                self.mark(i, self.closing(i + 1), token.text)
            elif token.text == "operator":
                self.mark(i + 1, i + 1, "operator's name")
            elif token.text == "case":
                end = next(j for j in range(i, len(self.tokens)) if self.tokens[j].text == ":")
                self.mark(i, end, "case label")
            elif token.text == "enum":
                brace = next(j for j in range(i, len(self.tokens)) if self.tokens[j].text in "{;")
                if self.tokens[brace].text == "{":
                    self.mark(brace, self.closing(brace), "enum")
            elif token.kind == "name" and before != "case":
                self.find_array_bound(i)

    def find_array_bound(self, i):
        """`double name[4]` and `char digits[32]`: a type, a name, a bound."""
        if i == 0 or i + 1 >= len(self.tokens) or self.tokens[i + 1].text != "[":
            return
        before = self.tokens[i - 1]
        declares = before.kind == "name" and before.text not in ("return", "else", "case") and before.space_after
        if declares or self.tokens[i].text in ("double", "char", "int"):
            self.mark(i + 1, self.closing(i + 1), "array bound")

    # constexpr -------------------------------------------------------------------------------------------------

    def statement_end(self, i):
        depth = 0
        for j in range(i, len(self.tokens)):
            depth += (self.tokens[j].text in "({[") - (self.tokens[j].text in ")}]")
            if self.tokens[j].text == ";" and depth == 0:
                return j
        raise SystemExit(f"{self.file}: a statement without end")

    def in_class(self, at):
        """Whether the innermost brace around a token is that of a class."""
        depth = 0
        for i in range(at - 1, -1, -1):
            depth += (self.tokens[i].text == "}") - (self.tokens[i].text == "{")
            if depth < 0:
                j = i - 1
                while j >= 0 and self.tokens[j].text not in (";", "{", "}"):
                    j -= 1
                words = [token.text for token in self.tokens[j + 1:i]]
                return ("struct" in words or "class" in words) and "(" not in words and "=" not in words
        return False

    def unfreeze(self):
        for i, token in enumerate(self.tokens):
            if token.text not in ("constexpr", "consteval") or self.reason[i]:
                continue
            if self.tokens[i - 1].text == "if":
                self.unfreeze_if(i)
                continue
            j, declared = i + 1, None
            while self.tokens[j].text not in ("=", "{", ";", "(") or self.reason[j] == "template argument":
                if self.tokens[j].kind == "name" and not self.reason[j]:
                    declared = self.tokens[j].text
                j += 1
            if self.tokens[j].text == "(":
                self.edits.append((token.at, len(token.text), ""))  # a function
                continue
            end = self.statement_end(i)
            if declared in self.rewriter.keep:
                self.mark(i, end, self.rewriter.keep[declared])
                continue
            if declared in self.rewriter.data.get(self.file, ()):
                self.in_table.update(range(i, end))
            inside = self.in_class(i)
            self.edits.append((token.at, len(token.text), "inline const" if inside else "const"))

    def unfreeze_if(self, i):
        """`if constexpr` becomes a plain `if`, but where its condition is in the list of those that cannot."""
        close = self.closing(i + 1)
        condition = " ".join(token.text for token in self.tokens[i + 2:close])
        if condition in self.rewriter.keep:
            self.mark(i, close, self.rewriter.keep[condition])
        else:
            self.edits.append((self.tokens[i].at, len("constexpr"), ""))

    # Mutants ---------------------------------------------------------------------------------------------------

    def add(self, i, kind, before, after):
        """The number of a new mutant at token i; none where it is left out."""
        if self.reason[i]:
            key = (self.file, kind, self.reason[i])
            self.rewriter.left_out[key] = self.rewriter.left_out.get(key, 0) + 1
            return None
        kind = "data" if i in self.in_table else kind
        at = self.tokens[i].at
        line = self.source.count("\n", 0, at) + 1
        column = at - (self.source.rfind("\n", 0, at) + 1) + 1
        number = len(self.rewriter.mutants) + 1
        self.rewriter.mutants.append(Mutant(number, self.file, line, column, kind, before, after,
                                            self.source.splitlines()[line - 1].strip()))
        return number

    def is_unary(self, i):
        before = self.tokens[i - 1]
        if before.kind in ("number", "text"):
            return False
        if before.kind == "name":
            return before.text in ("return", "case", "co_return", "else")
        return before.text not in (")", "]", "}")

    def joins_text(self, i):
        return self.tokens[i - 1].kind == "text" and self.tokens[i - 1].text.endswith('"') or \
            self.tokens[i + 1].kind == "text" and self.tokens[i + 1].text.endswith('"')

    def constant(self, i, token):
        if re.search(r"[0-9](h|min|s|ms|us|ns|y|d|sv)$", token.text) and not token.text.startswith("0x"):
            raise SystemExit(f"{self.file}: a literal of its own kind, {token.text}")
        real = "." in token.text or re.fullmatch(r"[0-9]+[eE][-+]?[0-9]+", token.text) or "p" in token.text.lower()
        after = f"{token.text} + 1"
        if real:
            digits = token.text.replace("'", "")
            value = float.fromhex(digits) if digits.lower().startswith("0x") else float(digits)
            after = "1.0" if value == 0 else f"{token.text} * 1.1"
        if number := self.add(i, "constant", token.text, after):
            self.edits.append((token.at, len(token.text), f"mutant::number({number}, {token.text})"))

    def operator(self, i, token):
        text = token.text
        if text in SIGNS and self.is_unary(i):
            if text == "-" and (number := self.add(i, "sign", "-x", "x")):
                self.edits.append((token.at, 1, f"mutant::Negative{{{number}}}->*"))
        elif text in SIGNS or text in ASSIGNMENTS:
            if self.joins_text(i):
                self.reason[i] = self.reason[i] or "joined texts"
            if number := self.add(i, "sign", text, OTHER[text]):
                name = SIGNS.get(text) or ASSIGNMENTS[text]
                self.edits.append((token.at, len(text), f"{text} mutant::{name}{{{number}}} {text}"))
        elif text in COMPARISONS:
            if number := self.add(i, "comparison", text, OTHER[text]):
                self.edits.append((token.at, len(text), f"{text} mutant::{COMPARISONS[text]}{{{number}}} {text}"))

    def run(self):
        self.find_left_out()
        self.unfreeze()
        for i, token in enumerate(self.tokens):
            if not self.mutate:
                break
            if token.kind == "number":
                self.constant(i, token)
            elif token.kind == "sign" and self.reason[i] not in ("template argument", "attribute", "operator's name"):
                self.operator(i, token)
            elif token.kind == "sign" and self.reason[i] == "template argument" and token.text in "+-":
                self.add(i, "sign", token.text, "")
        out, at = [], 0
        for start, length, replacement in sorted(self.edits):
            out += [self.source[at:start], replacement]
            at = start + length
        return "".join(out) + self.source[at:]

"""Rewrites example.cpp and runs it: without a mutant it does as before, and each of its mutants can be seen.

Run with the compiler and a folder to write to:  check_rewriting.py c++ FOLDER
"""
import os
import pathlib
import subprocess
import sys

from rewrite import Rewriter

HERE = pathlib.Path(__file__).resolve().parent
# As counted by hand in example.cpp.
EXPECTED = {"constant": 38, "sign": 11, "comparison": 6}
LEFT_OUT = {"joined texts": 3, "template argument": 1, "enum": 2, "static_assert": 2, "must stay": 3,
            "compiled on some machines only": 3}


def run(program, number=0):
    done = subprocess.run([program], env=dict(os.environ, MUTANT=str(number)), capture_output=True, text=True)
    return done.returncode, done.stdout


def main():
    compiler, folder = sys.argv[1], pathlib.Path(sys.argv[2])
    (folder / "noonleaf").mkdir(parents=True, exist_ok=True)
    (folder / "noonleaf/mutant.hpp").write_text((HERE / "mutant.hpp").read_text())
    text = (HERE / "example.cpp").read_text()
    rewriter = Rewriter(keep={"bound": "must stay", "sizeof ( int ) != 4": "must stay"})
    rewritten = '#include "noonleaf/mutant.hpp"\n' + rewriter.rewrite(text, "example.cpp")
    (folder / "rewritten.cpp").write_text(rewritten)
    flags = ["-std=c++20", "-w", f"-I{folder}"]
    subprocess.run([compiler, *flags, HERE / "example.cpp", "-o", folder / "as_it_is"], check=True)
    subprocess.run([compiler, *flags, folder / "rewritten.cpp", "-o", folder / "rewritten"], check=True)

    problems = []
    found = {kind: sum(m.kind == kind for m in rewriter.mutants) for kind in EXPECTED}
    if found != EXPECTED:
        problems.append(f"found {found}, expected {EXPECTED}")
    left = {}
    for (_, _, reason), count in rewriter.left_out.items():
        left[reason] = left.get(reason, 0) + count
    if left != LEFT_OUT:
        problems.append(f"left out {left}, expected {LEFT_OUT}")
    usual = run(folder / "as_it_is")
    if run(folder / "rewritten") != usual:
        problems.append("without a mutant the rewritten program says something else")
    lines = text.splitlines()
    unseen = [m for m in rewriter.mutants if run(folder / "rewritten", m.number) == usual]
    problems += [f"not seen: {m}" for m in unseen if "// never" not in lines[m.line - 1]]
    print("\n".join(problems) or f"{len(rewriter.mutants)} mutants, {len(unseen)} in lines that are never reached")
    return 1 if problems else 0


if __name__ == "__main__":
    sys.exit(main())

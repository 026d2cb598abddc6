"""uncovered.py COVERAGE.json: the lines of each file that no test reaches, with their text.

Reads what gcovr wrote (--json) from the folder in which the paths hold."""
import json
import sys


def main():
    total = reached = 0
    for entry in sorted(json.load(open(sys.argv[1]))["files"], key=lambda each: each["file"]):
        lines = [line for line in entry["lines"] if not line.get("gcovr/noncode")]
        missed = sorted({line["line_number"] for line in lines} -
                        {line["line_number"] for line in lines if line["count"]})
        total += len({line["line_number"] for line in lines})
        reached += len({line["line_number"] for line in lines}) - len(missed)
        if not missed:
            continue
        text = open(entry["file"], encoding="utf-8").read().splitlines()
        print(f"{entry['file']}: {len(missed)}")
        for number in missed:
            print(f"  {number:5d}  {text[number - 1].strip()}")
    print(f"{reached} of {total} lines reached, {100 * reached / total:.2f} %")


if __name__ == "__main__":
    main()

"""Runs the tests against every switched mutant: only those that reach it, the quickest first.

    judged.py LIST TREE [--every N] [ROOM…]

LIST and TREE as for switched.py; rooms are source files of the core, without them all are. With N, only every
Nth of the mutants is run: a sample. Which test reaches which mutant is recorded first, one test at a time.
What comes out is written into tests/MUTANTS.md, where other rooms stay as they were; a sample writes nothing
over a room that was run whole. sources.json beside LIST has the hash of each room's source.
"""

import collections
import concurrent.futures
import json
import os
import pathlib
import re
import signal
import subprocess
import sys
import tempfile

# How a process over its limit ends.
OVER = (-signal.SIGXCPU, -signal.SIGKILL)

OPEN = "not yet killed"
UNREACHED = "not yet killed; no test comes here"

HEAD = """# Mutants

What cargo-mutants 27.1.0 would change in the core, and whether the tests notice: the unit tests of
`crates/cupwright` and `tests/core`. `cargo xtask mutants [ROOM…]` writes this file. One build holds all mutants
behind switches (`tests/mutants`), with the core at opt-level 1; each is run with only the tests that reach it, to
the first that fails. Where an operator changes, operands stay as the source groups them. Properties are tried on as
many random inputs as ever.

A mutant that does not compile is none. What cannot be switched (a constant, an iterator's type, a condition with
`let`) has not been run. The share is of those that were run. A sample's mutants are spread evenly over the file.
Tests that take longer than two seconds of processor were not asked (with `ALL_TESTS` in the environment they are):
shares are lower bounds.
Nor were the comparisons of bits with `tests/vectors/GOLDEN` and `tests/traces/GOLDEN`, which notice nearly every change
and cannot say which side is right.

Of two mutants of a function with the same words the record says which it is. Lines are those of the source when a
room was run; its hash, without comments and unit tests, stands in the last column. `cargo xtask mutants --check` says
which rooms have changed since, and holds the share of all.
"""

# Limits, in seconds of processor: they hold on a busy computer too. A group of tests may take ten times what it
# took without a mutant, and this.
LEAST = 5
# A first run of the quickest tests, together this long; most mutants are caught there.
QUICK = 0.5
# Tests longer than this come last, one by one; and only where ALL_TESTS is in the environment.
SLOW = 2
ONLY_QUICK = "ALL_TESTS" not in os.environ


def surroundings(**more):
    shared = {"PROPTEST_DISABLE_FAILURE_PERSISTENCE": "1", "PROPTEST_MAX_SHRINK_ITERS": "0",
              "RUST_BACKTRACE": "0"}
    return {**os.environ, **shared, **more}


def tests_of(binary):
    shown = subprocess.run([binary, "--list", "--format=terse"], capture_output=True, text=True, check=True)
    return [line.removesuffix(": test") for line in shown.stdout.splitlines() if line.endswith(": test")]


def ran(tree, binary, names, seconds, **more):
    """Some tests of a binary: how they ended, what they said, and their seconds of processor."""
    # The shell sets the limit; a process over it is ended by a signal.
    command = ["sh", "-c", 'ulimit -t "$0"; exec "$@"', str(seconds), binary, "--exact", *names,
               "--test-threads=1"]
    with tempfile.TemporaryFile(mode="w+", errors="replace") as said:
        child = subprocess.Popen(command, cwd=tree, stdout=said, stderr=subprocess.DEVNULL,
                                 env=surroundings(**more))
        _, status, used = os.wait4(child.pid, 0)
        child.returncode = os.waitstatus_to_exitcode(status)
        said.seek(0)
        return child.returncode, said.read(), used.ru_utime + used.ru_stime


def reach(tree, binary, name):
    with tempfile.NamedTemporaryFile(mode="r") as seen:
        limit = 2 * SLOW if ONLY_QUICK else "unlimited"
        ended, _, seconds = ran(tree, binary, [name], limit, MUTANTS_SEEN=seen.name)
        reached = sorted(map(int, seen.read().split()))
    return {"binary": binary, "name": name, "seconds": seconds, "reached": reached,
            "passed": ended == 0 or ended in OVER and seconds >= SLOW}


def recorded(pool, tree, binaries):
    """Which test reaches which mutants, and how long it takes; kept for as long as the build is the same."""
    kept = tree.parent / "reached.json"
    built = max(os.stat(binary).st_mtime for binary in binaries)
    if not kept.exists() or kept.stat().st_mtime < built:
        asked = [(binary, name) for binary in binaries for name in tests_of(binary)]
        told = list(pool.map(lambda test: reach(tree, *test), asked))
        if failed := [test["name"] for test in told if not test["passed"]]:
            sys.exit(f"without a mutant these fail: {failed}")
        kept.write_text(json.dumps(told))
    return json.loads(kept.read_text())


def attempt(tree, number, tests):
    """The word for some tests of one binary, and what ended them."""
    limit = LEAST + round(10 * sum(test["seconds"] for test in tests))
    names = [test["name"] for test in tests]
    ended, said, seconds = ran(tree, tests[0]["binary"], names, limit, MUTANT=str(number))
    if ended == 0:
        return None
    if ended in OVER and seconds >= limit - 1:
        return "timeout", names[0]
    failed = [line.split()[1] for line in said.splitlines() if line.endswith("... FAILED")]
    return "caught", failed[0] if failed else f"ended with {ended}"


def judge(tree, number, tests):
    if not tests:
        return "unreached", "-"
    groups, left = [], 0.0
    for test in sorted(tests, key=lambda test: test["seconds"]):
        if test["seconds"] >= SLOW and ONLY_QUICK:
            break
        # A run goes on after a failure: so first short ones, then each twice as long.
        left -= test["seconds"]
        if left < 0.0:
            left = QUICK * 2 ** len(groups)
            groups.append([])
        groups[-1].append(test)
    groups = [[t for t in group if t["binary"] == b] for group in groups for b in {t["binary"] for t in group}]
    for group in groups:
        if told := attempt(tree, number, group):
            return told
    return "survived", f"{len(tests)} tests reach it"


class Record:
    """tests/MUTANTS.md: a row for each room, and its survivors with their reasons."""

    def __init__(self, path):
        self.path = path
        text = path.read_text() if path.exists() else ""
        rows = re.findall(r"^\| ([\w/]+) \|(.*)\|$", text, re.M)
        self.rows = {room: [cell.strip() for cell in cells.split("|")] for room, cells in rows}
        self.rows.pop("room", None)
        self.reasons = {}
        for room, lines in re.findall(r"^## (\S+)\n\n((?:- .*\n)+)", text, re.M):
            told = re.findall(r"^- (`.*?`(?:, \d+)?) \((\d+)\): (.*)$", lines, re.M)
            self.reasons[room] = {name: (line, reason) for name, line, reason in told}

    def is_whole(self, room):
        return room in self.rows and self.rows[room][8] == "whole"

    def add(self, room, mutants, words, every, unviable, unswitched, source):
        count = collections.Counter(words.values())
        lost = [n for n, word in words.items() if word in ("survived", "unreached")]
        viable = sum(count.values())
        whole = "whole" if every == 1 else f"every {every}th"
        share = f"{100 * (1 - len(lost) / viable):.1f} %" if viable else "-"
        self.rows[room] = [str(c) for c in (
            len(mutants), unviable, unswitched, viable, count["caught"], count["timeout"], len(lost), share,
            whole, source)]
        known, names = self.reasons.get(room, {}), named(mutants)
        told = {}
        for number in sorted(lost):
            blank = OPEN if words[number] == "survived" else UNREACHED
            _, reason = known.get(names[number], (None, blank))
            # What is open is told as it is now.
            told[names[number]] = (line_of(mutants[number]), blank if reason in (OPEN, UNREACHED) else reason)
        self.reasons[room] = told

    def write(self):
        sums = [0] * 7
        for cells in self.rows.values():
            sums = [a + int(b) for a, b in zip(sums, cells)]
        caught = sums[4] + sums[5]
        out = [HEAD, "| room | mutants | do not compile | no switch | run | caught | by timeout "
               "| survived | share caught | sample | source |",
               "|---|---:|---:|---:|---:|---:|---:|---:|---:|---|---|"]
        for room in sorted(self.rows):
            out.append("| " + " | ".join([room, *self.rows[room]]) + " |")
        share = f"{100 * caught / sums[3]:.1f} %" if sums[3] else "-"
        out.append("| " + " | ".join(["**all**", *map(str, sums), share, "", ""]) + " |")
        for room in sorted(self.reasons):
            if self.reasons[room]:
                out += ["", f"## {room}", ""]
                out += [f"- {name} ({line}): {reason}" for name, (line, reason) in self.reasons[room].items()]
        self.path.write_text("\n".join(out) + "\n")


def line_of(mutant):
    return mutant["span"]["start"]["line"]


def named(mutants):
    """What each of a room's mutants is called wherever its line may be: its words, and which it is of those with
    the same words."""
    words = {number: mutant["name"].split(": ", 1)[1] for number, mutant in mutants.items()}
    place = lambda number: (line_of(mutants[number]), mutants[number]["span"]["start"]["column"])
    names, seen = {}, collections.Counter()
    for number in sorted(mutants, key=place):
        seen[words[number]] += 1
        names[number] = f"`{words[number]}`, {seen[words[number]]}"
    return {n: name if seen[words[n]] > 1 else name.removesuffix(", 1") for n, name in names.items()}


def room_of(mutant):
    return mutant["file"].removeprefix("crates/cupwright/src/").removesuffix(".rs")


def main():
    listed, tree, *rooms = sys.argv[1:]
    every = 1
    if rooms[:1] == ["--every"]:
        every, rooms = int(rooms[1]), rooms[2:]
    mutants = json.loads(pathlib.Path(listed).read_text())
    tree = pathlib.Path(tree).resolve()
    build = json.loads((tree.parent / "build.json").read_text())
    sources = json.loads((tree.parent / "sources.json").read_text())
    skipped = set(build["unviable"]) | set(build["unswitched"])
    rooms = rooms or sorted({room_of(m) for m in mutants})
    with concurrent.futures.ThreadPoolExecutor(os.cpu_count()) as pool:
        told = recorded(pool, tree, build["binaries"])
        reaching = {}
        for test in told:
            for number in test["reached"]:
                reaching.setdefault(number, []).append(test)
        kept = pathlib.Path(__file__).resolve().parents[1] / "MUTANTS.md"
        for room in rooms:
            here = {n: m for n, m in enumerate(mutants) if room_of(m) == room}
            numbers = [n for n in here if n % every == every // 2 and n not in skipped]
            tasks = {n: pool.submit(judge, tree, n, reaching.get(n, [])) for n in numbers}
            words = {}
            for number, task in tasks.items():
                words[number], test = task.result()
                if words[number] in ("survived", "unreached"):
                    print(number, words[number], mutants[number]["name"], flush=True)
            count = lambda kind: sum(n in here for n in build[kind])
            record = Record(kept)
            if every > 1 and record.is_whole(room):
                print(room, "was run whole, which stays:", *record.rows[room], flush=True)
                continue
            record.add(room, here, words, every, count("unviable"), count("unswitched"), sources[room])
            record.write()
            print(room, *record.rows[room], flush=True)


main()

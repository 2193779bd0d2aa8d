"""Measures how many digits of the library's answers are right, and writes a table.

    python tests/reference/accuracy.py --formulas
    python tests/reference/accuracy.py [--check | --accept] POINTS TABLE

POINTS are answers of the library at many inputs, a line of JSON each, every number by its bits (`cargo xtask
accuracy` makes them). They are compared with `exact.py` in 24 to 50 digits. Errors count in units of 2^-52
of the exact answer. The condition number is Σ |xᵢ ∂f/∂xᵢ| / |f| over the inputs: rounding each of them to a double
may move the answer by as many halves of a unit, whatever the code does; the code's own part is the error over that.
Temperatures count from absolute zero, here as in the equations, and probabilities beside 100 %.
"""

import json
import multiprocessing
import os
import pathlib
import re
import struct
import sys

from mpmath import mp, mpf

import exact

UNIT = mpf(2) ** -52
# An error may grow by this much before it counts as grown: another point may be the worst.
MARGIN = 1.5

WHY = {
    "water.enthalpy": "heat content near 0 °C is a difference of two near-equal ones; its error is 2·10⁻¹³ J/g there too",
    "water.vapour_pressure": "a fourth power of a quotient in which two thirds of two near-equal terms cancel; 14 digits are left",
    "water.altitude_at_pressure": "near sea level 1 − (p/p₀)^(1/n) is a difference of near-equal numbers; 10⁻⁹ m",
    "extraction.retained_liquid": "water less beverage, two near-equal masses; so with `extraction.beverage`",
    "retention.retention_of_brew": "water less beverage less losses; so with `retention.beverage` and `dose_for_beverage`",
    "retention.true_retention": "retention, yield and moisture less vapour per dose",
    "retention.retention_of_spent_moisture": "1 − E where nearly everything was extracted",
    "dilution.split": "cup less brew, and brew less what all cups take",
    "dilution.iced": "ice that is left or melted where hardly any is: heat of the drink less that of warming the ice",
    "dilution.ice_to_reach": "two near-equal temperatures' heat contents",
    "heat.vessel_heat_capacity": "the liquid's heat before and after where it hardly cooled",
    "heat.time_to_cool": "start and goal nearly equal, or near where cooling ends; so with `heat.cooling_rate`",
    "heat.temperature_after": "a start near where cooling ends",
    "reading.brix_of_index": "the index less that of water, 1.33299; so with `reading.strength_of_index`",
    "reading.brix_at_20": "a Brix near zero is a difference of the reading and its correction",
    "verdict.stand": "a value near the centre less the centre",
    "uncertainty.of_repeats": "a mean near zero of repeats on either side",
    "uncertainty.coverage_factor": "Halley's steps end at 10⁻¹¹ by design; so with all that has a coverage factor in it",
    "decision.acceptance": "edges are moved inwards by hairs until `decide` calls them inside",
    "decision.joint": "Owen's function by fixed quadrature, and edges at which few degrees of freedom are turned into a normal value",
}

# What docs promise: formula, output, largest error, of what. Those of a probability are in percent.
CLAIMS = [
    ("uncertainty.coverage_factor", "coverage_factor", 1e-11, "relative"),
    ("decision.chances", "below_pct", 1e-12, "of one"),
    ("decision.chances", "inside_pct", 1e-12, "of one"),
    ("decision.chances", "above_pct", 1e-12, "of one"),
    ("decision.joint", "both_pct", 1e-10, "of one"),
    ("heat.time_to_cool", "time_s", 2e-7, "relative"),
]


def number(bits):
    return mpf(struct.unpack(">d", bytes.fromhex(bits))[0])


def numbers(values):
    return {k: [number(x) for x in v] if isinstance(v, list) else number(v) for k, v in values.items()}


def size(name, value):
    """What an error or a change counts beside."""
    if name.startswith("decision.") and name.endswith("_pct"):
        return mpf(100)
    return abs(value + mpf("273.15")) if name.endswith("_c") else abs(value)


# Quadratures and roots of them.
THIRTY = ("heat.", "decision.", "uncertainty.coverage_factor", "uncertainty.expanded", "dilution.")


# A quadrature that takes seconds: no differences of it.
UNCONDITIONED = ("decision.joint",)


def condition(function, given, out, name, value):
    """Σ |x ∂f/∂x| / |f|, by differences; `name` after the formula's."""
    short = name.split(":")[1]
    total = mpf(0)
    step = mpf(10) ** (-mp.dps // 3)
    for field, x in given.items():
        for at in range(len(x)) if isinstance(x, list) else [None]:
            single = x if at is None else x[at]
            if not size(field, single):
                continue
            moved = dict(given)
            for side in (1, -1):
                near = single + side * step * size(field, single)
                moved[field] = near if at is None else x[:at] + [near] + x[at + 1:]
                try:
                    there = function(moved, out).get(short)
                except (AssertionError, ZeroDivisionError, ValueError, KeyError, TypeError):
                    there = None
                if isinstance(there, mpf):
                    total += abs(there - value) / step
                    break
    return total / size(name, value)


def shown(given):
    def text(x):
        return "[" + ", ".join(map(text, x)) + "]" if isinstance(x, list) else repr(float(x)).removesuffix(".0")

    return ", ".join(f"{k} {text(v)}" for k, v in given.items())


def measure(job):
    """Rows of a formula: output, points, worst error, its condition, worst error over condition, where."""
    name, lines = job
    mp.dps = 24 if name in UNCONDITIONED else 30 if name.startswith(THIRTY) else 50
    function = exact.FORMULAS[name]
    rows = {}
    for line in lines:
        given, out = numbers(line["in"]), numbers(line["out"])
        try:
            wanted = function(given, out)
        except AssertionError as error:
            return name, f"{error} at {shown(given)}"
        for output, value in wanted.items():
            # Numbered outputs are one: the items of a list.
            of = re.sub(r"\.\d+\.", ".", output)
            row = rows.setdefault(of, {"points": 0, "worst": mpf(0), "where": given, "condition": mpf(0), "own": mpf(0),
                                       "absolute": mpf(0)})
            row["points"] += 1
            off = abs(out[output] - value)
            row["absolute"] = max(row["absolute"], off)
            if off == 0:
                continue
            named = f"{name}:{output}"
            beside = size(named, value)
            error = off / beside / UNIT if beside else mpf("inf")
            if error > row["worst"] or 2 * error > row["own"]:
                c = mpf(0) if name in UNCONDITIONED else condition(function, given, out, named, value) if beside else mpf("inf")
                if error > row["worst"]:
                    row |= {"worst": error, "where": given, "condition": c}
                row["own"] = max(row["own"], 2 * error / (1 + c))
    return name, {k: {**v, "worst": float(v["worst"]), "condition": float(v["condition"]), "own": float(v["own"]),
                      "absolute": float(v["absolute"]), "where": shown(v["where"])} for k, v in rows.items()}


def figure(x):
    if x == 0:
        return "0"
    return f"{x:.2g}" if x < 100 else f"{x:.1e}"


def digits(units):
    return "all" if units == 0 else f"{max(0.0, -float(mp.log10(mpf(units) * UNIT))):.1f}" if units != float("inf") else "0"


HEAD = """\
# How many digits are right

Made by `cargo xtask accuracy`, which fails where an error grows past these figures by half of one; `--check` runs with
the tests. The library's answers at points scattered over every input's whole range, its ends included, and around
an example, against the documented equations in 24 to 50 digits (`exact.py`, written from the docs, not from the
code). Temperatures count from absolute zero, as in the equations, and probabilities beside 100 %.

* **error**: the worst relative error, in units of 2⁻⁵² (2.2·10⁻¹⁶), and the right **digits** of that answer;
* **condition** there: Σ |xᵢ ∂f/∂xᵢ|/|f|. Rounding the inputs to doubles moves the answer by up to half as many units, and so does
  any code: a large error beside a large condition is the question's, not the answer's;
* **own**: the worst of error/(½ (1 + condition)) over all points: what the code adds, in roundings of its inputs.
"""


def table(results, checked):
    text = HEAD + "\n| formula | answer | points | error | digits | condition | own | worst at |\n|---|---|---:|---:|---:|---:|---:|---|\n"
    for name, rows in results:
        for output, row in rows.items():
            where = row["where"] if row["worst"] > 4 else ""
            text += (f"| `{name}` | {output} | {row['points']} | {figure(row['worst'])} | {digits(row['worst'])} | "
                     f"{figure(row['condition'])} | {figure(row['own'])} | {where} |\n")
    text += "\n## What loses digits\n\n" + "".join(f"* `{k}`: {v}\n" for k, v in WHY.items())
    text += "\n## Errors that the docs promise\n\n| formula | answer | promised | worst |\n|---|---|---:|---:|\n"
    rows_of = dict(results)
    for name, output, bound, kind in CLAIMS:
        worst = claimed(rows_of[name][output], kind)
        text += f"| `{name}` | {output} | {bound:.0e} {kind} | {worst:.1e} |\n"
    text += ("\n## Without a row above\n\nChoices and codes, fits, budgets, plans, forecasts and advice: their answers are "
             "checked by the values of `tests/vectors` in the files named, each from its own method.\n\n| formula | files |\n|---|---|\n")
    return text + "".join(f"| `{k}` | {', '.join(v) or '**none**'} |\n" for k, v in checked)


def claimed(row, kind):
    return row["worst"] * 2.0 ** -52 if kind == "relative" else row["absolute"] / 100


def accepted(text):
    rows = re.findall(r"^\| `([^`]+)` \| (\S+) \| (\d+) \| (\S+) \| \S+ \| \S+ \| (\S+) \|", text, re.M)
    return {(name, output): (int(points), float(error), float(own)) for name, output, points, error, own in rows}


def grown(results, before):
    """What is worse than before, beyond the margin, and what is new or gone."""
    now = {(name, output): row for name, rows in results for output, row in rows.items()}
    words = [f"{name} {output}: not measured any more" for name, output in before.keys() - now.keys()]
    for key, row in now.items():
        if key not in before:
            words.append(f"{key[0]} {key[1]}: not in the table")
            continue
        points, error, own = before[key]
        for what, new, old in (("error", row["worst"], error), ("own", row["own"], own)):
            if new > MARGIN * old + 0.5:
                words.append(f"{key[0]} {key[1]}: {what} {figure(new)}, was {figure(old)}, at {row['where']}")
        if row["points"] < points:
            words.append(f"{key[0]} {key[1]}: {row['points']} points, were {points}")
    return words


def broken(results):
    rows = dict(results)
    return [f"{name} {output}: the docs promise {bound:.0e} {kind}, {claimed(rows[name][output], kind):.1e} came out"
            for name, output, bound, kind in CLAIMS if claimed(rows[name][output], kind) > bound]


def main():
    arguments = sys.argv[1:]
    if arguments == ["--formulas"]:
        print("\n".join(exact.FORMULAS))
        return
    *options, points, path = arguments
    jobs, checked = {}, []
    for line in pathlib.Path(points).read_text().splitlines():
        line = json.loads(line)
        if "checked_by" in line:
            checked.append((line["formula"], line["checked_by"]))
        else:
            jobs.setdefault(line["formula"], []).append(line)
    missing = exact.FORMULAS.keys() - jobs.keys()
    if missing:
        sys.exit(f"never answered: {', '.join(sorted(missing))}")
    with multiprocessing.Pool(os.cpu_count()) as pool:
        results = pool.map(measure, jobs.items(), chunksize=1)
    failed = [f"{name}: {rows}" for name, rows in results if isinstance(rows, str)]
    if not failed:
        path = pathlib.Path(path)
        text = table(results, checked)
        failed = broken(results)
        if "--accept" in options:
            path.write_text(text, encoding="utf-8")
        else:
            failed += grown(results, accepted(path.read_text(encoding="utf-8")) if path.exists() else {})
            if not failed and "--check" not in options:
                path.write_text(text, encoding="utf-8")
    total = sum(len(lines) for lines in jobs.values())
    print(f"{total} points of {len(jobs)} formulas")
    if failed:
        sys.exit("\n".join(failed))


if __name__ == "__main__":
    main()

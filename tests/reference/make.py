"""Computes check values with reference libraries and writes them as JSON.

    python tests/reference/make.py --out tests/vectors

`cargo xtask reference` runs it in an environment of the versions in requirements.txt. Each module
makes one file and says by what method, which is never the formula under test written again where
there is another way. Inputs and outputs are rounded to the module's DIGITS, tolerances to two, so
that the last bits of a processor's exponentials or of a solver do not show.
"""

import argparse
import json
import math
import pathlib

import budgets
import calibration
import cooling
import distributions
import forecasts
import heat_balance
import mass_balance
import monte_carlo
import readings
import slopes
import water_coolprop
import water_iapws

MODULES = (
    budgets, calibration, cooling, distributions, forecasts, heat_balance, mass_balance, monte_carlo, readings,
    slopes, water_coolprop, water_iapws,
)


def plain(value, digits):
    if isinstance(value, list):
        return [plain(v, digits) for v in value]
    value = float(value)
    assert math.isfinite(value), value
    return float(f"{value:.{digits}g}")


def line(check, digits):
    formula, inputs, outputs, tolerance, why = check
    return json.dumps(
        {
            "formula": formula,
            "in": {k: plain(v, digits) for k, v in inputs.items()},
            "out": {k: plain(v, digits) for k, v in outputs.items()},
            "tolerance": {k: plain(tolerance[k] if isinstance(tolerance, dict) else tolerance, 2) for k in outputs},
            "why": why,
        },
        ensure_ascii=False,
    )


def write(folder, module):
    head = {
        "source": module.SOURCE,
        "seen": "computed",
        "made_by": f"tests/reference/{module.__name__}.py with {module.WITH}",
    }
    rows = ",\n    ".join(line(check, module.DIGITS) for check in module.checks())
    text = json.dumps(head, indent=2, ensure_ascii=False)[:-2] + ',\n  "checks": [\n    ' + rows + "\n  ]\n}\n"
    folder = folder / getattr(module, "FOLDER", "")
    folder.mkdir(exist_ok=True)
    (folder / f"{module.__name__}.json").write_text(text, encoding="utf-8")


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--out", type=pathlib.Path, required=True)
    folder = parser.parse_args().out
    for module in MODULES:
        write(folder, module)


if __name__ == "__main__":
    main()

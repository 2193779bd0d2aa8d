"""Computes check values with reference libraries and writes them as JSON.

    python tests/reference/make.py --out tests/vectors

`cargo xtask reference` runs it in an environment of the versions in requirements.txt. Each module
makes one file and says by what method, which is never the formula under test written again where
there is another way. Numbers are rounded to twelve significant digits, so that a last bit of a
library's build does not show.
"""

import argparse
import json
import math
import pathlib

import cooling
import heat_balance
import mass_balance
import readings
import water_coolprop
import water_iapws

MODULES = (cooling, heat_balance, mass_balance, readings, water_coolprop, water_iapws)


def plain(value, exact):
    if isinstance(value, list):
        return [plain(v, exact) for v in value]
    value = float(value)
    assert math.isfinite(value), value
    return value if exact else float(f"{value:.12g}")


def line(check, exact):
    formula, inputs, outputs, tolerance, why = check
    return json.dumps(
        {
            "formula": formula,
            "in": {k: plain(v, True) for k, v in inputs.items()},
            "out": {k: plain(v, exact) for k, v in outputs.items()},
            "tolerance": {k: tolerance[k] if isinstance(tolerance, dict) else tolerance for k in outputs},
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
    exact = getattr(module, "EXACT", False)
    rows = ",\n    ".join(line(check, exact) for check in module.checks())
    text = json.dumps(head, indent=2, ensure_ascii=False)[:-2] + ',\n  "checks": [\n    ' + rows + "\n  ]\n}\n"
    (folder / f"{module.__name__}.json").write_text(text, encoding="utf-8")


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--out", type=pathlib.Path, required=True)
    folder = parser.parse_args().out
    for module in MODULES:
        write(folder, module)


if __name__ == "__main__":
    main()

#!/usr/bin/env python3
"""Dew points by another formula: PsychroLib, after ASHRAE Handbook Fundamentals (2017), chapter 1.

It solves the saturation pressure of Hyland and Wexler for the temperature, where the crate uses a Magnus form. Below
0 °C it gives frost points, over ice; the crate gives dew points over water, so those are left out.

    python tests/outside/scripts/dew_point.py    # writes tests/outside/fixtures/dew-point.json

Needs `pip install psychrolib`. The result is committed; nothing in the build needs this script.
"""

import json
from importlib.metadata import version
from pathlib import Path

import psychrolib

FIXTURE = Path(__file__).resolve().parent.parent / "fixtures" / "dew-point.json"


def cases():
    for celsius in range(1, 51):
        for humidity in range(5, 101, 5):
            dew_point = psychrolib.GetTDewPointFromRelHum(celsius, humidity / 100)
            if dew_point > 0.01:
                yield {"celsius": celsius, "humidity": humidity, "dew_point": round(dew_point, 4)}


def main():
    psychrolib.SetUnitSystem(psychrolib.SI)
    lines = ",\n".join("    " + json.dumps(case) for case in cases())
    made = f"PsychroLib {version('psychrolib')}"
    text = f'{{\n  "made_with": "{made}",\n  "cases": [\n{lines}\n  ]\n}}\n'
    FIXTURE.write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main()

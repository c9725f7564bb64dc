"""Writes references-working-time.json: deadlines in working hours and working days computed with pandas and numpy.

Run with any Python 3 that has both:  python3 tests/published/compute-working-time-references.py

Winter and summer days are chosen where no working shift spans a change of the clocks: pandas counts wall-clock time there.
"""

import json
from pathlib import Path

import numpy as np
import pandas as pd
from pandas.tseries.offsets import CustomBusinessHour

PROVENANCE = [f"computed-with-pandas {pd.__version__}", f"computed-with-numpy {np.__version__}"]
HOLIDAYS = ["2026-04-03", "2026-04-06", "2026-05-01", "2026-12-25", "2026-12-28"]
WEEK = "1111100"
STARTS = [
    "2026-03-27T07:10", "2026-03-27T11:45", "2026-03-27T16:30", "2026-03-28T12:00", "2026-04-02T15:59", "2026-04-03T09:00",
    "2026-04-30T13:30", "2026-10-23T08:00", "2026-10-24T23:30", "2026-12-24T10:15", "2026-12-31T18:00",
]


def hours(case):
    offset = CustomBusinessHour(
        case["hours"], weekmask=WEEK_DAYS, holidays=HOLIDAYS, start=["08:00", "12:30"], end=["12:00", "16:30"]
    )
    return (pd.Timestamp(case["start"]) + offset).strftime("%Y-%m-%dT%H:%M")


def days(case):
    day = np.busday_offset(case["start"][:10], case["days"], roll="backward", weekmask=WEEK, holidays=HOLIDAYS)
    return f"{day}T16:30"


WEEK_DAYS = "Mon Tue Wed Thu Fri"
CALENDAR = {"hours": [["08:00", "12:00"], ["12:30", "16:30"]], "holidays": HOLIDAYS, "workdays": WEEK}


def entry(name, what, source, cases, of):
    return {
        "id": name,
        "what": what,
        "source": source,
        "provenance": PROVENANCE,
        "input": CALENDAR,
        "cases": [{"input": case, "expected": of(case)} for case in cases],
    }


ENTRIES = [
    entry(
        "working-hours",
        "wall-clock time at which so many working hours have passed",
        "pandas CustomBusinessHour",
        [{"start": start, "hours": count} for start in STARTS for count in (1, 3, 8, 20, 75)],
        hours,
    ),
    entry(
        "working-days",
        "close of work on the n-th working day after the day of the event",
        "numpy busday_offset",
        [{"start": start, "days": count} for start in STARTS for count in (1, 2, 5, 10, 30)],
        days,
    ),
]
Path(__file__).with_name("references-working-time.json").write_text(json.dumps(ENTRIES, indent=1) + "\n")

"""Records how the icalendar package of Python reads our files of reminders (see README.md)."""

import json
from datetime import datetime
from pathlib import Path

from icalendar import Calendar

HERE = Path(__file__).parent


def start_of(event):
    """The start as the format writes it: a day, or an instant in UTC."""
    start = event.decoded("DTSTART")
    if isinstance(start, datetime):
        assert start.utcoffset().total_seconds() == 0, start
        return start.strftime("%Y%m%dT%H%M%SZ")
    return start.strftime("%Y%m%d")


def read(name):
    """What stands in a file, and what the package found wrong with it."""
    calendar = Calendar.from_ical((HERE / name).read_bytes())
    faults = [str(fault) for part in calendar.walk() for fault in part.errors]
    events = []
    for event in calendar.walk("VEVENT"):
        if "DTEND" in event:
            assert event.decoded("DTEND") > event.decoded("DTSTART"), event
        events.append(
            {
                "uid": str(event["UID"]),
                "summary": str(event["SUMMARY"]),
                "description": str(event["DESCRIPTION"]),
                "start": start_of(event),
                "alarms": len(event.walk("VALARM")),
            }
        )
    return {
        "name": str(calendar["NAME"]),
        "method": str(calendar["METHOD"]),
        "refresh_s": calendar.decoded("REFRESH-INTERVAL").total_seconds(),
        "events": events,
        "faults": faults,
    }


answers = {name: read(name) for name in ("demo.ics", "troubled.ics", "empty.ics")}
with open(HERE / "answers.json", "w", encoding="utf-8") as file:
    json.dump(answers, file, ensure_ascii=False, indent=1)
    file.write("\n")

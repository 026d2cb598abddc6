"""What an independent reader makes of the calendars: times across the clock change, alarms, identifiers."""
import sys
from datetime import datetime, timedelta, timezone
from pathlib import Path

from icalendar import Calendar


def events(name):
    calendar = Calendar.from_ical((Path(sys.argv[1]) / name).read_bytes())
    return {str(event["UID"]): event for event in calendar.walk("VEVENT")}


first, again = events("first.ics"), events("again.ics")
assert len(first) == 5, "five runs, five identifiers"

# 06:00 on the wall is 13:00 UTC while the summer clock holds, 14:00 UTC from Sunday 2 November 2025 on.
utc = sorted(event["DTSTART"].dt.astimezone(timezone.utc) for event in first.values())
assert utc == [datetime(2025, 10, 31, 13, tzinfo=timezone.utc), datetime(2025, 11, 1, 13, tzinfo=timezone.utc),
               datetime(2025, 11, 2, 14, tzinfo=timezone.utc), datetime(2025, 11, 3, 14, tzinfo=timezone.utc),
               datetime(2025, 11, 4, 14, tzinfo=timezone.utc)], utc
for event in first.values():
    assert event["DTEND"].dt - event["DTSTART"].dt == timedelta(minutes=30)
    alarms = [(alarm["TRIGGER"].dt, str(alarm["TRIGGER"].params.get("RELATED", "START")))
              for alarm in event.walk("VALARM")]
    assert sorted(alarms) == [(timedelta(minutes=-10), "START"), (timedelta(0), "END")], alarms

# Made again: the same identifiers, a higher sequence, the moved run moved, the run that is off cancelled.
assert set(first) == set(again), "a plan made again adds no event"
assert all(again[uid]["SEQUENCE"] > first[uid]["SEQUENCE"] for uid in first)
cancelled = [event for event in again.values() if event["STATUS"] == "CANCELLED"]
assert len(cancelled) == 1 and cancelled[0]["DTSTART"].dt.date().isoformat() == "2025-11-04"
moved = [uid for uid in first if again[uid]["DTSTART"].dt != first[uid]["DTSTART"].dt]
assert len(moved) == 1 and again[moved[0]]["DTSTART"].dt.hour == 7
print("calendars read: 5 runs across the clock change, made again")

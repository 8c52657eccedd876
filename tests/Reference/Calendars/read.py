# Reads an iCalendar file with Debian's python3-icalendar and prints what it understood, an event a line:
# UID, first day, day after the last, sequence, errors, then summary and description as JSON.
import json
import sys

import icalendar

with open(sys.argv[1], "rb") as file:
    calendar = icalendar.Calendar.from_ical(file.read())
print(json.dumps([
    {
        "uid": str(event["UID"]),
        "from": event.decoded("DTSTART").isoformat(),
        "to": event.decoded("DTEND").isoformat(),
        "sequence": int(event["SEQUENCE"]),
        "stamp": event.decoded("DTSTAMP").isoformat(),
        "summary": str(event["SUMMARY"]),
        "description": str(event["DESCRIPTION"]),
        "errors": len(event.errors),
    }
    for event in calendar.walk("VEVENT")
]))

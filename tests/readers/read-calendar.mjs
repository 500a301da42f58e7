// Reads an iCalendar file from standard input and writes what it understood as JSON.
import { readFileSync } from "node:fs";
import ICAL from "ical.js";

const root = new ICAL.Component(ICAL.parse(readFileSync(0, "utf8")));
const moment = (time) => ({ text: time.toString(), isDate: time.isDate, zone: time.zone?.tzid ?? null, unix: time.toUnixTime() });
const entries = root.getAllSubcomponents("vevent").map((component) => {
  const event = new ICAL.Event(component);
  return {
    uid: event.uid,
    sequence: event.sequence,
    summary: event.summary,
    location: event.location,
    description: event.description,
    status: component.getFirstPropertyValue("status"),
    stamp: moment(component.getFirstPropertyValue("dtstamp")),
    start: moment(event.startDate),
    end: moment(event.endDate),
  };
});
process.stdout.write(
  JSON.stringify({
    version: root.getFirstPropertyValue("version"),
    product: root.getFirstPropertyValue("prodid"),
    name: root.getFirstPropertyValue("x-wr-calname"),
    entries,
  }),
);

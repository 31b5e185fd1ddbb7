import fc from "fast-check";
import ICAL from "ical.js";
import { describe, expect, test } from "vitest";
import { type DueEvent, iCalendar } from "./icalendar";

const asOf = "2026-11-29T10:20:30.123Z";
const event: DueEvent = {
  uid: "0193-harness@trunnion",
  on: "2026-12-31",
  summary: "S2-0145: harness, last day",
  category: "Harness",
  url: "http://127.0.0.1:3000/club/sandvaer/car/S2-0145",
};
/** A percent sign for each octet that is not plain ASCII. */
const octetsOf = (line: string) => encodeURIComponent(line).replace(/%[0-9A-F]{2}/g, "x").length;
const read = (events: readonly DueEvent[], name = "Sandvær Register: what falls due") => {
  const text = iCalendar({ name, asOf, events });
  const calendar = new ICAL.Component(ICAL.parse(text));
  return { text, calendar, events: calendar.getAllSubcomponents("vevent").map((one) => new ICAL.Event(one)) };
};

describe("what falls due as iCalendar, read by ical.js", () => {
  test("is one whole day without an hour, that takes nobody's time", () => {
    const { events, calendar } = read([event]);
    const [one] = events;
    expect(calendar.getFirstPropertyValue("version")).toBe("2.0");
    expect(calendar.getFirstPropertyValue("name")).toBe("Sandvær Register: what falls due");
    expect(one?.uid).toBe(event.uid);
    expect(one?.summary).toBe(event.summary);
    expect(one?.startDate.isDate).toBe(true);
    expect(one?.startDate.toString()).toBe("2026-12-31");
    expect(one?.endDate.toString()).toBe("2027-01-01");
    expect(one?.component.getFirstPropertyValue("transp")).toBe("TRANSPARENT");
    expect(String(one?.component.getFirstPropertyValue("dtstamp"))).toBe("2026-11-29T10:20:30Z");
    expect(one?.component.getFirstPropertyValue("url")).toBe(event.url);
  });

  test("gives any text back to the letter, control characters aside", () => {
    const printable = fc.string({ unit: "grapheme", maxLength: 200 });
    fc.assert(
      fc.property(fc.array(printable, { maxLength: 4 }), (summaries) => {
        const kept = summaries.map((one) =>
          one.replace(/\r\n?/g, "\n").replace(/(?!\n|\t)\p{Cc}/gu, (sign) => (sign > "\u007f" ? sign : "")),
        );
        const { events } = read(summaries.map((summary, index) => ({ ...event, uid: `${index}`, summary })));
        expect(events.map(({ summary }) => summary ?? "")).toEqual(kept);
      }),
    );
  });

  test("has no line over 75 octets and ends each with CR LF (RFC 5545, 3.1)", () => {
    const { text } = read([{ ...event, summary: "Øystein æøå; ".repeat(30) }]);
    const lines = text.split("\r\n");
    expect(lines.at(-1)).toBe("");
    for (const line of lines) expect(octetsOf(line)).toBeLessThanOrEqual(75);
    expect(text.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
  });

  test("a text cannot add a property of its own", () => {
    const { events, text } = read([{ ...event, summary: "x\r\nATTENDEE:mailto:a@b.test\nEND:VEVENT" }]);
    expect(events).toHaveLength(1);
    expect(text).not.toMatch(/^ATTENDEE/m);
  });

  test("without anything due is a calendar all the same; what is no day is refused", () => {
    expect(read([]).events).toEqual([]);
    expect(() => iCalendar({ name: "x", asOf, events: [{ ...event, on: "31/12/2026" }] })).toThrow(
      '"31/12/2026" is no ISO day',
    );
    expect(() => iCalendar({ name: "x", asOf: "today", events: [] })).toThrow('"today" is no instant in UTC');
  });
});

/** One day on which something falls due, as a calendar program shows it: all day, taking nobody's time. */
export interface DueEvent {
  /** Stays the same however often the calendar is read, so that a program moves the event rather than adding another. */
  readonly uid: string;
  /** ISO day. */
  readonly on: string;
  readonly summary: string;
  readonly category: string;
  /** Address of the car's page. */
  readonly url?: string;
}

export interface DueCalendar {
  readonly name: string;
  /** Instant it is as of, ISO. */
  readonly asOf: string;
  readonly events: readonly DueEvent[];
}

/** Octets of a line without its end (RFC 5545, 3.1). */
const LINE = 75;

/** Octets of a character in UTF-8. */
function octets(character: string): number {
  const code = character.codePointAt(0) ?? 0;
  if (code < 0x80) return 1;
  if (code < 0x800) return 2;
  return code < 0x10000 ? 3 : 4;
}

/** Folds a line at 75 octets, never within a character; what goes on begins with a blank (RFC 5545, 3.1). */
function folded(line: string): string {
  let text = "";
  let length = 0;
  for (const character of line) {
    const size = octets(character);
    if (length + size > LINE) {
      text += "\r\n ";
      length = 1;
    }
    text += character;
    length += size;
  }
  return text;
}

// No value of a text may hold control characters but the line feed, which is written \n (RFC 5545, 3.3.11).
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is meant
const CONTROL = /[\u0000-\u0008\u000b-\u001f\u007f]/g;

/** A text as a value: backslash, semicolon, comma and line end escaped (RFC 5545, 3.3.11). */
function escaped(text: string): string {
  return text
    .replace(/\r\n?/g, "\n")
    .replace(CONTROL, "")
    .replace(/[\\;,]/g, (sign) => `\\${sign}`)
    .replace(/\n/g, "\\n");
}

const bare = (iso: string) => iso.replace(/[-:]|\.\d+/g, "");

function eventLines({ uid, on, summary, category, url }: DueEvent, stamp: string): readonly string[] {
  return [
    "BEGIN:VEVENT",
    `UID:${escaped(uid)}`,
    `DTSTAMP:${stamp}`,
    // A date without an end is that one day (RFC 5545, 3.6.1).
    `DTSTART;VALUE=DATE:${bare(on)}`,
    `SUMMARY:${escaped(summary)}`,
    `CATEGORIES:${escaped(category)}`,
    "TRANSP:TRANSPARENT",
    ...(url === undefined ? [] : [`URL:${url.replace(CONTROL, "")}`]),
    "END:VEVENT",
  ];
}

/**
 * What falls due as an iCalendar object (RFC 5545; name and interval of reading again by RFC 7986): for a program that reads
 * it by an address.
 *
 * @throws RangeError for a day or an instant that is none
 */
export function iCalendar({ name, asOf, events }: DueCalendar): string {
  if (!/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(?:\.\d+)?Z$/.test(asOf))
    throw new RangeError(`"${asOf}" is no instant in UTC`);
  const odd = events.find(({ on }) => !/^\d{4}-\d\d-\d\d$/.test(on));
  if (odd) throw new RangeError(`"${odd.on}" is no ISO day`);
  const stamp = bare(asOf);
  const lines = [
    "BEGIN:VCALENDAR",
    "VERSION:2.0",
    "PRODID:-//Trunnion//Dated items//EN",
    "CALSCALE:GREGORIAN",
    `NAME:${escaped(name)}`,
    `X-WR-CALNAME:${escaped(name)}`,
    "REFRESH-INTERVAL;VALUE=DURATION:P1D",
    ...events.flatMap((event) => eventLines(event, stamp)),
    "END:VCALENDAR",
  ];
  return `${lines.map(folded).join("\r\n")}\r\n`;
}

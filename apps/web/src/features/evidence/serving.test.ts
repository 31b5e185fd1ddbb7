import { describe, expect, test } from "vitest";
import { byteRange } from "./byte-range";
import { contentDisposition } from "./disposition";

/** Examples of RFC 9110, 14.1.2, on a representation of 10,000 bytes. */
describe("a range of bytes", () => {
  test.each([
    ["bytes=0-499", { first: 0, last: 499 }],
    ["bytes=500-999", { first: 500, last: 999 }],
    ["bytes=-500", { first: 9_500, last: 9_999 }],
    ["bytes=9500-", { first: 9_500, last: 9_999 }],
    ["bytes=9000-20000", { first: 9_000, last: 9_999 }],
    ["bytes=-20000", { first: 0, last: 9_999 }],
  ])("%s", (header, range) => {
    expect(byteRange(header, 10_000)).toEqual(range);
  });

  test.each([
    null,
    "",
    "bytes=-",
    "bytes=-0",
    "bytes=20000-",
    "bytes=5-4",
    "bytes=0-0,-1",
    "pages=1-2",
    "bytes=a-b",
  ])("%j is none: the whole is sent", (header) => {
    expect(byteRange(header, 10_000)).toBeUndefined();
  });
});

describe("what a file is called on its way out", () => {
  test.each([
    ["letter.pdf", "attachment; filename=\"letter.pdf\"; filename*=UTF-8''letter.pdf"],
    // RFC 8187, 3.2.3: the euro sign is %E2%82%AC.
    ["€ rates.pdf", "attachment; filename=\"_ rates.pdf\"; filename*=UTF-8''%E2%82%AC%20rates.pdf"],
    [
      "Bråtvær's (1).pdf",
      "attachment; filename=\"Bratv_r_s (1).pdf\"; filename*=UTF-8''Br%C3%A5tv%C3%A6r%27s%20%281%29.pdf",
    ],
    ['a"; x="b.pdf', "attachment; filename=\"a__ x__b.pdf\"; filename*=UTF-8''a%22%3B%20x%3D%22b.pdf"],
  ])("%s", (name, header) => {
    expect(contentDisposition("attachment", name)).toBe(header);
    // A header is one line of plain characters.
    expect(header).toMatch(/^[\x20-\x7e]+$/);
  });
});

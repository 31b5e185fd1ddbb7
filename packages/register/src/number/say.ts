import { sayDay } from "../identity/say-day";
import type { NumberFinding, NumberKind } from "./finding";

const kindWords: Readonly<Record<NumberKind, string>> = {
  chassis: "chassis number",
  commission: "commission number",
  engine: "engine number",
  body: "body number",
  registration: "registration mark",
};

/** A kind of number as people call it: "engine number". */
export const sayNumberKind = (kind: NumberKind): string => kindWords[kind];

const capital = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** A finding in one sentence, and how sure it is. */
export function sayFinding(finding: NumberFinding): { readonly what: string; readonly sure: string } {
  switch (finding.kind) {
    case "doesNotFit":
      return { what: `${capital(finding.problem)}.`, sure: "certain, by the series' pattern" };
    case "claimed": {
      const who = `${finding.cars.length} cars claim ${kindWords[finding.numberKind]} ${finding.number}.`;
      if (finding.sure === "certain") return { what: who, sure: "certain" };
      return { what: who, sure: "possible: the dates known do not rule out that they bore it in turn" };
    }
    case "lookAlike": {
      const [one, other] = finding.numbers;
      const what = `${capital(kindWords[finding.numberKind])}s ${one} and ${other} differ only by letters that look like digits.`;
      return { what, sure: "possible: they may be two numbers" };
    }
    case "outsideSeries": {
      const { car, series, sure } = finding;
      const span = `${sayDay(series.builtFrom)} to ${sayDay(series.builtTo)}`;
      const what = `Built ${car.built?.text}, and ${series.pattern.series} was built ${span}.`;
      return { what, sure: sure === "certain" ? "certain" : "likely: the date is rough" };
    }
    case "outOfOrder": {
      const { car, order, series } = finding;
      const { from, to } = order.window;
      const between = [
        ...(from === undefined ? [] : [`not before ${sayDay(from)}`]),
        ...(to === undefined ? [] : [`not after ${sayDay(to)}`]),
      ].join(" and ");
      const expected = between === "" ? "" : ` Its neighbours in ${series.pattern.series} say ${between}.`;
      const sure =
        order.sure === "likely"
          ? `likely: ${order.against.length} cars say otherwise`
          : `cannot tell which is wrong: this one or ${order.against.join(", ")}`;
      return { what: `Built ${car.built?.text}, out of order with its number.${expected}`, sure };
    }
  }
}

import type { StudyAnswer, StudyResult } from "@trunnion/register";
import type { ReactNode } from "react";

/** One arrangement of springs and bars with what comes of it. */
export interface Case {
  readonly key: string;
  readonly label: string;
  readonly result: StudyResult;
}

interface Shown {
  readonly key: string;
  readonly label: string;
  readonly unit: string;
  readonly decimals: number;
  readonly of: (answer: StudyAnswer) => number | undefined;
}

const G = 9.80665;
const figures: readonly Shown[] = [
  { key: "roll", label: "Roll", unit: "°", decimals: 2, of: ({ roll }) => (roll * 180) / Math.PI },
  {
    key: "transfer",
    label: "Front share of load transfer",
    unit: "%",
    decimals: 1,
    of: ({ transferShare }) => transferShare * 100,
  },
  {
    key: "rate",
    label: "Front share of roll rate",
    unit: "%",
    decimals: 1,
    of: ({ rateShare }) => rateShare * 100,
  },
  {
    key: "front",
    label: "Front ride frequency",
    unit: "Hz",
    decimals: 2,
    of: ({ frequency }) => frequency.front,
  },
  {
    key: "rear",
    label: "Rear ride frequency",
    unit: "Hz",
    decimals: 2,
    of: ({ frequency }) => frequency.rear,
  },
  {
    key: "lift",
    label: "First wheel lifts at",
    unit: "g",
    decimals: 2,
    of: ({ lift }) => (lift === undefined ? undefined : lift.acceleration / G),
  },
];

const answerOf = ({ result }: Case) => (result.ok ? result.answer : undefined);

/** Every answer as a figure and as a bar from nought, the car as it stands beside what was moved. */
export function Answers({ cases }: { readonly cases: readonly Case[] }): ReactNode {
  const refusals = cases.flatMap(({ key, label, result }) =>
    result.ok ? [] : [{ key, label, because: result.because }],
  );
  return (
    <div className="grid content-start gap-4">
      <div className="overflow-x-auto">
        <table className="roll-table">
          <caption className="sr-only">Roll, load transfer and ride, as it stands and as moved</caption>
          <thead>
            <tr>
              <th scope="col">
                <span className="sr-only">Arrangement</span>
              </th>
              {figures.map(({ key, label }) => (
                <th key={key} scope="col">
                  {label}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {cases.map((one) => (
              <Row key={one.key} one={one} cases={cases} />
            ))}
          </tbody>
        </table>
      </div>
      <div role="status" className="grid gap-1 text-small">
        {refusals.map(({ key, label, because }) => (
          <p key={key} className="border-red border-l-4 pl-2">
            <span className="font-semibold">{label}: </span>
            {because}.
          </p>
        ))}
      </div>
      <p className="max-w-prose text-fine text-soft">
        Steady cornering, independent suspension, roll centres where they stand, tyres taken as rigid. Ride
        frequency of half the axle's sprung mass on one spring; a bar takes no part in it.
      </p>
    </div>
  );
}

function Row({ one, cases }: { readonly one: Case; readonly cases: readonly Case[] }) {
  return (
    <tr className={one.key === "moved" ? "font-semibold" : ""}>
      <th scope="row" className={one.key === "moved" ? "" : "font-normal"}>
        {one.label}
      </th>
      {figures.map((figure) => (
        <td key={figure.key}>
          <span aria-hidden className="roll-label">
            {figure.label}
          </span>
          <Cell figure={figure} one={one} cases={cases} />
        </td>
      ))}
    </tr>
  );
}

function Cell({
  figure,
  one,
  cases,
}: {
  readonly figure: Shown;
  readonly one: Case;
  readonly cases: readonly Case[];
}) {
  const answer = answerOf(one);
  const value = answer && figure.of(answer);
  if (value === undefined)
    return <span className="text-soft">{answer === undefined ? "no answer" : "none to 3 g"}</span>;
  const most = Math.max(
    ...cases.flatMap((each) => {
      const other = answerOf(each);
      return other === undefined ? [] : [figure.of(other) ?? 0];
    }),
  );
  const full = figure.unit === "%" ? 100 : most;
  return (
    <>
      <span className="whitespace-nowrap">
        {value.toFixed(figure.decimals)}
        <span className="font-light">{figure.unit === "°" ? "°" : `\u00A0${figure.unit}`}</span>
      </span>
      <svg aria-hidden width="72" height="6" viewBox="0 0 72 6" className="block">
        <path d="M0 5.5H72" className="stroke-hair" />
        <rect
          width={full > 0 ? Math.max(0, Math.min(72, (72 * value) / full)) : 0}
          height="5"
          className={one.key === "moved" ? "fill-red" : "fill-ink"}
        />
      </svg>
    </>
  );
}

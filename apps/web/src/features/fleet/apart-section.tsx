import type { Spread } from "@trunnion/api";
import { Figure } from "../../components/figure";
import { SectionHead } from "../../components/page-head";
import { SmallPlate } from "../../components/plate";
import { sideWords } from "../../lib/assembly";
import { carPath } from "../../lib/path";

/** Cars whose value stands apart, with the way to each. */
export function ApartSection({ page }: { readonly page: Spread }) {
  const { apart, apartCount, club, figures } = page;
  if (figures === undefined) return null;
  const words = sideWords[club.sideWords];
  return (
    <section aria-labelledby="apart" className="grid grid-cols-1 gap-2">
      <SectionHead id="apart" title="Cars that stand apart" />
      {apart.length === 0 ? (
        <p className="max-w-prose">
          {figures.count < 5
            ? "Fewer than five values are too few to say which stands apart."
            : "None lies further than 3.5 robust standard deviations from the median."}
        </p>
      ) : (
        <>
          <p className="max-w-prose text-small">
            {apartCount === 1 ? "One value lies" : `${apartCount} values lie`} further than 3.5 robust
            standard deviations (1.4826 × median absolute deviation) from the median. Each is one to look at:
            a slip of the pen, a unit misread, or a car worth knowing about.
            {apartCount > apart.length ? ` The ${apart.length} furthest:` : ""}
          </p>
          <table className="plain-table">
            <caption className="sr-only">Values that stand apart, the furthest first</caption>
            <thead>
              <tr>
                <th scope="col">Car</th>
                <th scope="col">Value</th>
                <th scope="col" className="num">
                  Standard deviations off
                </th>
              </tr>
            </thead>
            <tbody>
              {apart.map(({ reference, chassis, side, value, score }) => (
                <tr key={`${reference} ${side}`}>
                  <th scope="row">
                    <SmallPlate chassis={chassis} href={carPath(club.slug, reference)} />
                  </th>
                  <td>
                    <Figure text={value} column />
                    {side === "whole" ? "" : `, ${words[side].toLowerCase()}`}
                  </td>
                  <td className="num">{score.toFixed(1)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </>
      )}
    </section>
  );
}

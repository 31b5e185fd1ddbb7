import type { Survival, ThinRecord } from "@trunnion/api";
import { carStatusWords, sayDay } from "@trunnion/register";
import { SectionHead } from "../../components/page-head";
import { SmallPlate } from "../../components/plate";
import { carPath, eventPath } from "../../lib/path";

const lowerFirst = (text: string) => text.charAt(0).toLowerCase() + text.slice(1);

/** Whom to ask, by role; a name only where the reader may see keepers. */
export function sayWhom({ whom }: Pick<ThinRecord, "whom">): string {
  if (whom.who === "registrar") return "through the registrar, who knows the keeper";
  if (whom.who === "nobody") return "no keeper is known: the works' records, or whoever sees it next";
  const name = whom.name === undefined ? "" : `, ${whom.name}`;
  const who = whom.who === "keeper" ? "its keeper" : "a former keeper";
  return `${who}${name} (${whom.member ? "a member here" : "not a member here"})`;
}

/** Records of which little is known, and what to ask next of whom. */
export function ThinSection({ page: { club, thin: thinnest } }: { readonly page: Survival }) {
  const thin = thinnest.filter(({ ask }) => ask.length > 0);
  return (
    <section aria-labelledby="thin" className="grid grid-cols-1 gap-2">
      <SectionHead id="thin" title="What to ask next, and of whom" />
      {thin.length === 0 ? (
        <p className="max-w-prose">
          {thinnest.length === 0
            ? "There is no car left to ask about."
            : "Nothing: no record lacks what most cars of its series have recorded."}
        </p>
      ) : (
        <>
          <p className="max-w-prose text-small">
            The thinnest records, cars in use first. Asked for is what most other cars of the series have
            recorded.
          </p>
          <table className="stack-table">
            <caption className="sr-only">The thinnest records, with what to ask next of whom</caption>
            <thead>
              <tr>
                <th scope="col">Car</th>
                <th scope="col">Series</th>
                <th scope="col">Status</th>
                <th scope="col" className="num">
                  Values
                </th>
                <th scope="col">Ask</th>
                <th scope="col">Of whom</th>
              </tr>
            </thead>
            <tbody>
              {thin.map((one) => (
                <ThinRow key={one.reference} club={club.slug} one={one} />
              ))}
            </tbody>
          </table>
        </>
      )}
    </section>
  );
}

function ThinRow({ club, one }: { readonly club: string; readonly one: ThinRecord }) {
  const { reference, chassis, series, status, values, ask, seenAt } = one;
  return (
    <tr>
      <th scope="row">
        <SmallPlate chassis={chassis} href={carPath(club, reference)} />
      </th>
      <td className="run">{series}</td>
      <td className="run">{lowerFirst(carStatusWords[status])}</td>
      <td className="run num" data-label="Values">
        {values}
      </td>
      <td data-label="Ask">{ask.map(lowerFirst).join("; ")}</td>
      <td data-label="Of whom">
        {sayWhom(one)}
        {seenAt === undefined ? null : (
          <>
            ; the scrutineer at <a href={eventPath(club, seenAt.slug)}>{seenAt.name}</a>, {sayDay(seenAt.on)}
          </>
        )}
      </td>
    </tr>
  );
}

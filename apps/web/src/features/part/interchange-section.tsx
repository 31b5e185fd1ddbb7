import type { PartPage, StandIn } from "@trunnion/api";
import { partKindWords, type Value } from "@trunnion/register";
import { Figure } from "../../components/figure";
import { SectionHead } from "../../components/page-head";
import { partPath } from "../../lib/path";
import { sayFit } from "./say";

/** What else goes there, and what differs that matters. */
export function InterchangeSection({ club, page }: { readonly club: string; readonly page: PartPage }) {
  const { standIns, need } = page;
  return (
    <section aria-labelledby="interchange" className="pt-8">
      <SectionHead id="interchange" title="What else goes there" />
      {standIns.length === 0 ? (
        <p>No other part of this place is on the list.</p>
      ) : (
        <ul className="grid gap-6">
          {standIns.map((one) => (
            <Other key={one.part.slug} club={club} here={need.part.name} one={one} />
          ))}
        </ul>
      )}
    </section>
  );
}

interface OtherProps {
  readonly club: string;
  readonly here: string;
  readonly one: StandIn;
}

function Other({ club, here, one: { part, differences } }: OtherProps) {
  return (
    <li>
      <p>
        <a href={partPath(club, part.slug)} className="text-lead">
          {part.name}
        </a>
        <span className="text-soft">
          {" "}
          {partKindWords[part.kind]}
          {part.origin === "" ? "" : `, ${part.origin}`}
        </span>
      </p>
      <p className="text-small text-soft">{part.fits.map(sayFit).join("; ") || "No series said."}</p>
      {differences.length === 0 ? (
        <p className="text-small">Nothing known that differs.</p>
      ) : (
        <table className="list-table">
          <caption className="sr-only">What differs between this part and {part.name}</caption>
          <thead>
            <tr>
              <th scope="col">What differs</th>
              <th scope="col">{here}</th>
              <th scope="col">{part.name}</th>
              <th scope="col">Take care</th>
            </tr>
          </thead>
          <tbody>
            {differences.map(({ label, here: own, there, alike }) => (
              <tr key={label}>
                <th scope="row" className="list-lead font-normal">
                  {label}
                </th>
                <td>
                  <Side name="This part" value={own} />
                </td>
                <td>
                  <Side name="The other" value={there} />
                </td>
                <td className={alike === undefined ? "text-soft" : "border-red border-l-4 pl-2"}>
                  {alike ?? ""}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </li>
  );
}

function Side({ name, value }: { readonly name: string; readonly value: Value | undefined }) {
  return (
    <>
      <span className="text-soft wide:hidden">{name}: </span>
      {value === undefined ? <span className="text-soft">not said</span> : <Figure text={value.entered} />}
    </>
  );
}

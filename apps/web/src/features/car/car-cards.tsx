import { carStatusWords } from "@trunnion/register";
import { Differing, stripText } from "../../components/assembly-strip";
import { SmallPlate } from "../../components/plate";
import { carPath, smallPicturePath } from "../../lib/path";
import { type Column, saidIn } from "./order-head";
import type { RegisterRow } from "./register-table";
import { TickBox } from "./tick-box";

/** What a card shows of a car beside what a row does. */
export interface CarCard {
  /** The latest photograph of the car as a whole. */
  readonly photo?: { readonly id: string; readonly quarterTurns: number; readonly caption: string };
}

export interface CarCardsProps {
  readonly club: string;
  readonly rows: readonly (RegisterRow & CarCard)[];
  readonly columns: readonly Column[];
}

/** The cars found by their plates and photographs, and where each differs: for whoever knows them by sight. */
export function CarCards({ club, rows, columns }: CarCardsProps) {
  return (
    <ul data-rows aria-label="Cars of the register" className="car-cards">
      {rows.map((row) => (
        <li key={row.reference}>
          <Card club={club} row={row} columns={columns} />
        </li>
      ))}
    </ul>
  );
}

interface CardProps extends Pick<CarCardsProps, "club" | "columns"> {
  readonly row: RegisterRow & CarCard;
}

function Card({ club, row, columns }: CardProps) {
  const { photo, assemblies = [], deviating, compared } = row;
  const facts = [row.built, row.colour, row.registration].filter(
    (text) => text !== "" && text !== "not known",
  );
  return (
    <article className="car-card">
      <div className="grid min-w-0 content-start gap-1">
        <h2 className="flex flex-wrap items-center gap-2 font-normal">
          <TickBox reference={row.reference} />
          <SmallPlate chassis={row.chassis} href={carPath(club, row.reference)} />
          {row.claim > 1 ? <span className="text-fine text-soft">claim {row.claim}</span> : null}
        </h2>
        <p>
          {row.series} · {carStatusWords[row.status].toLowerCase()}
        </p>
        {facts.length === 0 ? null : <p className="text-small">{facts.join(" · ")}</p>}
        {columns.map((column) => (
          <p key={column.key} className="text-small">
            <span className="text-soft">{column.label}</span> {saidIn(column, row.values) || "not recorded"}
          </p>
        ))}
        <p className="pt-1 text-small">
          {compared === 0 ? (
            <span className="text-soft">Nothing to compare with specification.</span>
          ) : (
            <>
              <Differing
                deviating={deviating}
                assemblies={assemblies}
                {...(compared === undefined ? {} : { compared })}
              />
              {deviating === 0 ? null : <span className="block">{stripText(assemblies)}.</span>}
            </>
          )}
        </p>
      </div>
      {photo === undefined ? null : (
        // biome-ignore lint/performance/noImgElement: made small by the service, for its members alone
        <img
          src={smallPicturePath(club, photo, 320)}
          alt={photo.caption === "" ? `Photograph of ${row.chassis}` : photo.caption}
          loading="lazy"
          decoding="async"
          className="car-card-photo"
        />
      )}
    </article>
  );
}

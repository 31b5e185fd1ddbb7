import { CopyButton } from "./copy-button";

export interface PlateProps {
  readonly chassis: string;
  /** Stamped above the number: the marque and series. */
  readonly maker?: string;
  /** Under the number: "1 of 2 cars that claim this number". */
  readonly note?: string;
}

/** The chassis number as a stamped plate; the number is plain text and selects whole with one click. */
export function Plate({ chassis, maker, note }: PlateProps) {
  return (
    <div className="flex flex-wrap items-end gap-x-4 gap-y-1">
      <div className="plate">
        <span aria-hidden className="plate-rivet" />
        <span aria-hidden className="plate-rivet" />
        <span aria-hidden className="plate-rivet" />
        <span aria-hidden className="plate-rivet" />
        <p className="text-center text-fine leading-none">{maker ?? "Chassis"}</p>
        <p className="plate-number select-all">
          <span className="sr-only">Chassis number </span>
          {chassis}
        </p>
        {note === undefined ? null : <p className="text-center text-fine leading-tight">{note}</p>}
      </div>
      <CopyButton text={chassis} label={`chassis number ${chassis}`} />
    </div>
  );
}

/** The small plate of lists: a number between two rivets, a link where it leads somewhere. */
export function SmallPlate({ chassis, href }: { readonly chassis: string; readonly href?: string }) {
  const number = <span className="plate-small-number">{chassis}</span>;
  if (href === undefined) return <span className="plate-small">{number}</span>;
  return (
    <a href={href} className="plate-small">
      {number}
    </a>
  );
}

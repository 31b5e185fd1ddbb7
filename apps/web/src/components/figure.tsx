import { figureParts } from "../lib/figure";

export interface FigureProps {
  /** A figure as the trade writes it, with its unit: "19.05 mm", "9/16 in"; or words. */
  readonly text: string;
  /** In a column, decimal points stand under each other. */
  readonly column?: boolean;
}

/** A figure with its unit in a lighter weight. Words are set as they are. */
export function Figure({ text, column = false }: FigureProps) {
  const parts = figureParts(text);
  if (parts === undefined) return <span>{text}</span>;
  const { whole, fraction, unit } = parts;
  const gap = unit === "°" || unit === ":1" ? "" : "\u00A0";
  return (
    <span className={column ? "figure-column" : "whitespace-nowrap"}>
      <span>{whole}</span>
      <span>
        {fraction}
        {unit === "" ? null : <span className="font-light">{gap + unit}</span>}
      </span>
    </span>
  );
}

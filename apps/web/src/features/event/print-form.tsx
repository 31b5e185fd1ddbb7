import { Button } from "../../components/button";
import { sheetsPath } from "../../lib/path";

export const papers = ["A4", "Letter"] as const;
export type Paper = (typeof papers)[number];

const kinds = [
  { value: "plain", label: "To print" },
  { value: "fillable", label: "To fill in on a screen" },
  { value: "tagged", label: "To fill in, and read out" },
] as const;

/** Lists that are printed alone; the names are those of the address. */
const lists = [
  { value: "overview", label: "Print the overview" },
  { value: "stations", label: "Print a list for each station" },
  { value: "openPoints", label: "Print open points" },
  { value: "results", label: "Print results" },
] as const;

export interface PrintFormProps {
  readonly club: string;
  readonly event: string;
  /** How many sheets the file will hold: one an entry. */
  readonly sheets: number;
  readonly paper: Paper;
}

/** Asks for the stack of sheets as one PDF. A plain GET form: it works without a script, and offers the paper. */
export function PrintForm({ club, event, sheets, paper }: PrintFormProps) {
  return (
    <form
      action={sheetsPath(club, event)}
      method="get"
      className="print:hidden flex flex-wrap items-end gap-x-6 gap-y-3"
    >
      <fieldset className="flex gap-5">
        <legend className="font-semibold text-small">Paper</legend>
        {papers.map((size) => (
          <label key={size} className="inline-flex min-h-11 cursor-pointer items-center gap-2">
            <input
              type="radio"
              name="paper"
              value={size}
              defaultChecked={size === paper}
              className="size-5 accent-ink"
            />
            {size}
          </label>
        ))}
      </fieldset>
      <fieldset className="flex flex-wrap gap-x-5">
        <legend className="font-semibold text-small">File</legend>
        {kinds.map(({ value, label }) => (
          <label key={value} className="inline-flex min-h-11 cursor-pointer items-center gap-2">
            <input
              type="radio"
              name="kind"
              value={value}
              defaultChecked={value === "plain"}
              className="size-5 accent-ink"
            />
            {label}
          </label>
        ))}
      </fieldset>
      <label className="inline-flex min-h-11 cursor-pointer items-center gap-2">
        <input type="checkbox" name="with" value="lists" className="size-5 accent-ink" />
        With overview and open points
      </label>
      <Button weight="mark">{sheets === 1 ? "Print 1 sheet" : `Print ${sheets} sheets`}</Button>
      <Button name="blank" value="yes">
        Print a blank sheet
      </Button>
      <fieldset className="flex w-full flex-wrap gap-x-3 gap-y-2">
        <legend className="pb-1 font-semibold text-small">Lists of the whole event</legend>
        {lists.map(({ value, label }) => (
          <Button key={value} name="parts" value={value}>
            {label}
          </Button>
        ))}
      </fieldset>
    </form>
  );
}

import { type FindingResult, findingResults } from "@trunnion/register";
import { useHand } from "./hand";

const verbs: Readonly<Record<FindingResult, string>> = {
  pass: "Pass",
  advise: "Advise",
  refuse: "Refuse",
  notApplicable: "Not applicable",
};

const shape = "min-h-16 border px-0.5 font-semibold text-small leading-tight cursor-pointer sm:text-body";
const plain = "border-ink bg-paper text-ink";
const chosen: Readonly<Record<FindingResult, string>> = {
  pass: "border-ink bg-ink text-paper",
  advise: "border-ink bg-ink text-paper",
  refuse: "border-red bg-red text-on-red",
  notApplicable: "border-ink bg-ink text-paper",
};

export interface ResultButtonsProps {
  /** Read out before the verbs: what is decided. */
  readonly label: string;
  readonly result: FindingResult | undefined;
  readonly onChoose: (result: FindingResult) => void;
}

/** The four results of a check, each as large as a cold thumb, the commonest at the edge where the thumb is. */
export function ResultButtons({ label, result, onChoose }: ResultButtonsProps) {
  const order = useHand() === "left" ? findingResults : [...findingResults].reverse();
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset's legend cannot be the card's own heading
    <div role="group" aria-label={label} className="grid grid-cols-4 gap-1.5">
      {order.map((one) => (
        <button
          key={one}
          type="button"
          aria-pressed={one === result}
          onClick={() => onChoose(one)}
          className={`${shape} ${one === result ? chosen[one] : plain}`}
        >
          {verbs[one]}
        </button>
      ))}
    </div>
  );
}

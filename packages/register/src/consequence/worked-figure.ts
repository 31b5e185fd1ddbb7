import type { CharacteristicBook } from "../characteristic/book";
import type { State } from "../state/state";
import { BindingTable } from "./binding-table";
import { Solver } from "./solve";
import { bindings } from "./table";

const table = new BindingTable(bindings);

/** Most of what is missing that is named. */
const NAMED = 2;

/** Whether the table has a figure of this name: `front.link.bolt` and `yieldForce`. */
export function isFigure(binding: string, output: string): boolean {
  return table.byId.get(binding)?.figures.some((figure) => figure.output === output) ?? false;
}

/** Figures of one car for one state, each worked out when it is asked for and at most once. */
export class WorkedFigures {
  readonly #solver: Solver;

  constructor(state: State, book: CharacteristicBook) {
    this.#solver = new Solver(state, book, table);
  }

  /**
   * A figure in words, "1.9 kN"; where it cannot be worked out, what lacks: "not worked out, lacks Front drop link bolt
   * thread". Never a default in place of what is not known.
   */
  say(binding: string, output: string): string {
    if (!isFigure(binding, output)) return "not worked out";
    const solved = this.#solver.solve(binding);
    if (solved.kind === "run") {
      const answer = solved.answers.outputs[output];
      return answer === undefined || answer.si == null ? "not worked out" : answer.text;
    }
    if (solved.kind === "notFitted") return "none";
    if (solved.kind === "refused" || solved.kind === "otherwise") return `not worked out: ${solved.because}`;
    const labels = [...new Set(solved.missing.map(({ label }) => label))];
    const named = labels.slice(0, NAMED).join(", ");
    const more = labels.length > NAMED ? ` and ${labels.length - NAMED} more` : "";
    return `not worked out, lacks ${named}${more}`;
  }
}

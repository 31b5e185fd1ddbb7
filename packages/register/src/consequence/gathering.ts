import type { Origin } from "../state/state";

/** An input as it was used, and where it came from. */
export interface UsedInput {
  /** Path in the computation's input: `front.track`. */
  readonly field: string;
  /** What it is: the characteristic's label, or the assumption in words. */
  readonly label: string;
  /** Empty for an assumption, whose label says all. */
  readonly text: string;
  /** `assumed` where nobody measured it; `computed` where another computation gave it. */
  readonly origin: Origin | "assumed" | "computed";
  readonly characteristic?: string;
}

/** A characteristic that is not known of the car, and is needed. */
export interface MissingInput {
  readonly characteristic: string;
  readonly label: string;
}

/** What is gathered while a computation's input is read. */
export class Gathering {
  readonly used: (() => UsedInput)[] = [];
  readonly missing: MissingInput[] = [];
  failed = false;
  because: string | undefined;

  /** Hands on a value, with how it is told where somebody asks. */
  use<T>(raw: T, input: () => UsedInput): T {
    this.used.push(input);
    return raw;
  }

  fail(missing: readonly MissingInput[], because?: string): undefined {
    this.failed = true;
    this.missing.push(...missing);
    this.because ??= because;
  }

  /** Takes over what a trial gathered. */
  take({ used, missing, failed, because }: Gathering): void {
    this.used.push(...used);
    if (failed) this.fail(missing, because);
  }
}

export interface RateLimitInput {
  /** Times that one may come within the span. */
  readonly most: number;
  /** Milliseconds. */
  readonly within: number;
}

interface Window {
  readonly from: number;
  count: number;
}

/** Names kept at once; beyond it those whose span is over are forgotten, then the oldest. */
const NAMES = 10_000;

/**
 * How often somebody may come, in spans that begin with the first time: kept in this process, so several servers allow as
 * often each. Names are kept no longer than their span, and never more than ten thousand.
 */
export class RateLimit {
  readonly #windows = new Map<string, Window>();
  readonly #most: number;
  readonly #within: number;

  constructor({ most, within }: RateLimitInput) {
    this.#most = most;
    this.#within = within;
  }

  /**
   * Counts one more time.
   *
   * @param now milliseconds since the epoch
   * @returns 0 where one may, else milliseconds until one may again
   */
  take(name: string, now: number): number {
    const known = this.#windows.get(name);
    if (known && now < known.from + this.#within) {
      known.count += 1;
      return known.count <= this.#most ? 0 : known.from + this.#within - now;
    }
    this.#windows.delete(name);
    if (this.#windows.size >= NAMES) this.#forget(now);
    this.#windows.set(name, { from: now, count: 1 });
    return 0;
  }

  #forget(now: number): void {
    for (const [name, { from }] of this.#windows) {
      if (now < from + this.#within && this.#windows.size < NAMES) return;
      this.#windows.delete(name);
    }
  }
}

import { wholeNumber } from "../spring/guard";

/** How many of the things looked at have both of two properties, one of them, neither. */
export interface Fourfold {
  readonly both: number;
  readonly firstOnly: number;
  readonly secondOnly: number;
  readonly neither: number;
}

/** How two properties go together in a fourfold table. */
export interface Association {
  /** Things looked at. */
  readonly count: number;
  /**
   * Phi, the correlation of the two: −1 (never together) over 0 (independent) to 1 (always together); nothing where all
   * have a property or none has. Yule, Journal of the Royal Statistical Society 75 (1912) 579-652.
   */
  readonly phi?: number;
  /**
   * How many times the odds of the second are where the first is there: (both × neither)/(firstOnly × secondOnly);
   * nothing where that divides by nought. Agresti, Categorical Data Analysis, 2.2.3.
   */
  readonly oddsRatio?: number;
  /**
   * Fisher's exact test, two-sided: the probability, with these margins and no connection, of a table as improbable as this
   * or more so. Exact, so that it holds for small numbers. Fisher, The Design of Experiments, chapter II; Agresti 3.5.
   */
  readonly exactProbability: number;
  /** Least count to be expected in a cell without a connection. */
  readonly leastExpected: number;
}

/** Expected counts below this are small: phi and the ratio of odds then swing with single cars. Cochran, Biometrics 10 (1954) 417-451. */
export const smallExpected = 5;

/** Natural logarithms of factorials, as far as they were asked for. */
const logFactorials = [0];

function logFactorial(n: number): number {
  for (let next = logFactorials.length; next <= n; next += 1) {
    logFactorials.push((logFactorials[next - 1] ?? 0) + Math.log(next));
  }
  return logFactorials[n] ?? Number.NaN;
}

const logChoose = (n: number, k: number) => logFactorial(n) - logFactorial(k) - logFactorial(n - k);

/** Tables this little more probable than the one found count as equally so: rounding alone told them apart. */
const ALIKE = 1e-7;

/** A part of a sum that no longer changes a double. */
const NEGLIGIBLE = 2 ** -60;

function exactOf({ both, firstOnly, secondOnly, neither }: Fourfold): number {
  const [first, second] = [both + firstOnly, both + secondOnly];
  const count = first + secondOnly + neither;
  const probability = (k: number) =>
    Math.exp(logChoose(first, k) + logChoose(count - first, second - k) - logChoose(count, second));
  const limit = probability(both) * (1 + ALIKE);
  const [least, most] = [Math.max(0, first + second - count), Math.min(first, second)];
  const mode = Math.min(most, Math.max(least, Math.floor(((first + 1) * (second + 1)) / (count + 2))));
  if (probability(mode) <= limit) return 1;
  // From the mode outwards tables become ever less probable: each tail begins where they are improbable enough.
  const tail = (step: -1 | 1): number => {
    let [near, far] = [0, (step < 0 ? mode - least : most - mode) + 1];
    while (near < far) {
      const between = Math.floor((near + far) / 2);
      if (probability(mode + step * between) <= limit) far = between;
      else near = between + 1;
    }
    let sum = 0;
    for (let k = mode + step * near; k >= least && k <= most; k += step) {
      const one = probability(k);
      sum += one;
      if (one <= sum * NEGLIGIBLE) break;
    }
    return sum;
  };
  return Math.min(1, tail(-1) + tail(1));
}

/**
 * How two properties go together: counts that are known of both alone go in, so that what is not recorded of a car is not
 * taken for its not having it.
 *
 * @throws CalcRefusal for a count that is not 0, 1, 2, …
 * @example association({ both: 3, firstOnly: 1, secondOnly: 1, neither: 3 }).exactProbability // => 0.4857142857142857
 */
export function association(table: Fourfold): Association {
  const { both, firstOnly, secondOnly, neither } = table;
  for (const [name, count] of Object.entries({ both, firstOnly, secondOnly, neither }))
    wholeNumber(count, name);
  const [first, second] = [both + firstOnly, both + secondOnly];
  const count = first + secondOnly + neither;
  const [notFirst, notSecond] = [count - first, count - second];
  const margins = Math.sqrt(first) * Math.sqrt(notFirst) * Math.sqrt(second) * Math.sqrt(notSecond);
  const crossed = firstOnly * secondOnly;
  return {
    count,
    ...(margins === 0 ? {} : { phi: (both * neither - crossed) / margins }),
    ...(crossed === 0 ? {} : { oddsRatio: (both * neither) / crossed }),
    exactProbability: exactOf(table),
    leastExpected: count === 0 ? 0 : (Math.min(first, notFirst) * Math.min(second, notSecond)) / count,
  };
}

/**
 * Whether a connection still stands out once it is remembered how many were looked for: Bonferroni's bound at one in twenty
 * (Dunn, Journal of the American Statistical Association 56 (1961) 52-64). Not holding up is no proof of independence.
 *
 * @param looked how many connections were looked for, this one included
 */
export function holdsUp({ exactProbability }: Association, looked: number): boolean {
  return exactProbability * Math.max(1, wholeNumber(looked, "looked")) < 0.05;
}

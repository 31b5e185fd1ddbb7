/**
 * What `work` gives, worked out when it is first asked for and kept. For outputs and workings that cost much and that a
 * reader of few answers never looks at: hand them out by a getter.
 *
 * @example lazily(() => 2 + 2)() // => 4
 */
export function lazily<T>(work: () => T): () => T {
  let done: { readonly value: T } | undefined;
  return () => {
    done ??= { value: work() };
    return done.value;
  };
}

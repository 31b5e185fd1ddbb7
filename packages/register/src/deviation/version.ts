/**
 * Version of the engines that state and verdicts are worked out by. Counted up whenever the fold, the comparison or the
 * dictionary comes to another state or verdict of the same records: what an earlier version left in the database is then
 * known to be stale, and is worked out again when the program starts.
 */
export const ENGINE_VERSION = 1;

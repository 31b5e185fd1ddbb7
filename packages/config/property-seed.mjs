import fc from "fast-check";

// One seed for everybody: the same commit passes or fails alike on every machine. To look further than it does,
// give another one: TRUNNION_SEED=42 npx vitest run.
fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: Number(process.env.TRUNNION_SEED ?? 19_680_301) });

import { preset } from "./vitest.mjs";

export default preset({ include: ["bin/**/*.test.mjs"] });

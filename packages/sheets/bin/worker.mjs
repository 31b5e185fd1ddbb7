// A thread of its own for drawing and reading: TypeScript as it lies, so that nothing has to be built for it.
import { register } from "tsx/esm/api";

register();
await import("../src/worker/serve.ts");

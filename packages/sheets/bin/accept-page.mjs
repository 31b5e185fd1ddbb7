// Keeps pages of the sheet as they are drawn now as the reviewed ones: node packages/sheets/bin/accept-page.mjs [name …]
import { register } from "tsx/esm/api";

register();
await import("../src/picture/accept.ts");

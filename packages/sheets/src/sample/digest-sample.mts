import { createHash } from "node:crypto";
import { drawSheets } from "../draw-sheets";
import { sampleSheet } from "./sample-sheet";

/** Run as a process of its own by the test that compares bytes across processes. */
const bytes = await drawSheets([sampleSheet()], { paper: "A4" });
console.log(createHash("sha256").update(bytes).digest("hex"));

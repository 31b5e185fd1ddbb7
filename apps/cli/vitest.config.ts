import { preset } from "@trunnion/config/vitest";

export default preset();

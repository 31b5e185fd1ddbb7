/** True under `next dev`, where the framework's own tools need what a served page must not have. */
export const inDevelopment = process.env.NODE_ENV === "development";

/** Keeps the framework from reporting anything to anybody; called before it has read its configuration. */
export function keepQuiet(): void {
  process.env.NEXT_TELEMETRY_DISABLED = "1";
}

/** What the service needs to know; given by `npm start`. */
export interface ServiceSettings {
  /** Connection as the role that owns nothing. */
  readonly serviceUrl: string;
  /** Secret that signs cookies. */
  readonly authSecret: string;
  /** Address the service is reached at. */
  readonly baseUrl: string;
}

function needed(name: string): string {
  const value = process.env[name];
  if (value === undefined || value === "")
    throw new Error(`${name} is not set; start the service with npm start`);
  return value;
}

/** @throws Error naming the setting that is missing */
export function serviceSettings(): ServiceSettings {
  return {
    serviceUrl: needed("TRUNNION_SERVICE_URL"),
    authSecret: needed("TRUNNION_AUTH_SECRET"),
    baseUrl: needed("TRUNNION_ORIGIN"),
  };
}

/** Where photos and documents are kept, as the surroundings say it, and the folder of all data. */
export function storeSurroundings(): {
  readonly settings: Readonly<Record<string, string | undefined>>;
  readonly dataFolder: string;
} {
  return { settings: process.env, dataFolder: needed("TRUNNION_DATA") };
}

/** Who can be tried in the demo, told by `npm start` where the demo's accounts are there; nothing anywhere else. */
export interface Demo {
  readonly password: string;
  readonly people: readonly { readonly email: string; readonly as: string }[];
}

export function demo(): Demo | undefined {
  const told = process.env.TRUNNION_DEMO;
  return told === undefined || told === "" ? undefined : (JSON.parse(told) as Demo);
}

/** How members are written to, as the surroundings say it; without a mail server into a folder of the data. */
export function mailSurroundings(): {
  readonly url: string | undefined;
  readonly from: string | undefined;
  readonly folder: string;
} {
  return {
    url: process.env.TRUNNION_SMTP_URL,
    from: process.env.TRUNNION_SMTP_FROM,
    folder: `${needed("TRUNNION_DATA")}/outbox`,
  };
}

import "server-only";
import { type createCaller, logFault, refusalOf } from "@trunnion/api";
import { refused, sayRefusal } from "@trunnion/register";
import { notFound, redirect } from "next/navigation";
import type { ReactNode } from "react";
import { Frame } from "../components/shell/frame";
import { OutcomePage } from "../components/shell/outcome-page";
import { type ClubFace, type Place, Shell } from "../components/shell/shell";
import { isUnreadable } from "./address";
import { clubPath, clubsPath, signInPath } from "./path";
import { api, pageRequest } from "./service";

type Api = ReturnType<typeof createCaller>;

export interface ClubPageInput<T> {
  readonly club: string;
  readonly at?: Place;
  /** Address of the page, to come back to after signing in. */
  readonly path: string;
  readonly load: (api: Api) => Promise<T>;
  readonly draw: (loaded: T, club: ClubFace) => ReactNode;
  /** Without the frame around it: for a page's own script, which has the frame. */
  readonly bare?: boolean;
}

/** Sends whoever is not signed in to sign in, and back here afterwards. */
export async function requireSignedIn(path: string): Promise<void> {
  const { signedIn } = await pageRequest();
  if (!signedIn) redirect(`${signInPath}?next=${encodeURIComponent(path)}`);
}

type Loaded<T> = { readonly data: T } | { readonly refusal: NonNullable<ReturnType<typeof refusalOf>> };

async function loadOr<T>(load: () => Promise<T>, path: string): Promise<Loaded<T>> {
  try {
    return { data: await load() };
  } catch (error) {
    const refusal = refusalOf(error);
    if (refusal) return { refusal };
    if (isUnreadable(error)) notFound();
    logFault(error, path);
    throw error;
  }
}

/** A page of a club: signed in, a member, loaded in one transaction; a refusal becomes a page that says so, an address that names nothing possible the one for no such page. */
export async function clubPage<T>({
  club: slug,
  at,
  path,
  load,
  draw,
  bare = false,
}: ClubPageInput<T>): Promise<ReactNode> {
  await requireSignedIn(path);
  const { person, clubs } = await (await api()).club.mine();
  const club = clubs.find((one) => one.slug === slug);
  if (!club) {
    const text = sayRefusal(refused("NOT_A_MEMBER", { club: slug }));
    return (
      <Frame>
        <OutcomePage title="Not your club" text={text} on={{ href: clubsPath, label: "Go to your clubs" }} />
      </Frame>
    );
  }
  const loaded = await loadOr(async () => load(await api()), path);
  if (bare && "data" in loaded) return draw(loaded.data, club);
  return (
    <Shell
      club={club}
      clubs={clubs}
      person={{ name: person.name, roles: club.roles }}
      {...(at === undefined ? {} : { at })}
    >
      {"data" in loaded ? (
        draw(loaded.data, club)
      ) : (
        <OutcomePage
          title="That did not work"
          text={loaded.refusal.text}
          on={{ href: clubPath(slug), label: "Go to today" }}
        />
      )}
    </Shell>
  );
}

import { dueSoon } from "@trunnion/register";
import { sayCount } from "../../lib/car-count";
import { carPath, duePath, eventPath, garagePath, reviewPath } from "../../lib/path";

export type Role = "registrar" | "owner" | "scrutineer" | "fleetManager";

/** What the day's list is worked out from. */
export interface HomeFacts {
  readonly cars: number;
  /** Numbers that more than one car claims; the first three are shown. */
  readonly disputed?: readonly {
    readonly reference: string;
    readonly chassis: string;
    readonly claims: number;
  }[];
  readonly nextEvent?: {
    readonly slug: string;
    readonly name: string;
    /** As written. */
    readonly on: string;
    readonly entryCount: number;
  };
  /** Submissions that wait for a decision; left out for who does not decide. */
  readonly toReview?: number;
  /** The reader's own submissions about which the registrar asked something. */
  readonly toAnswer?: number;
  /** Dated items past their day and soon due, across the fleet; left out for who runs none. */
  readonly due?: { readonly past: number; readonly soon: number };
}

/** One thing to do next: a verb, why, and where. */
export interface NextStep {
  readonly key: string;
  readonly title: string;
  readonly text: string;
  readonly href: string;
}

function eventStep(club: string, { nextEvent }: HomeFacts): readonly NextStep[] {
  if (nextEvent === undefined) return [];
  const { slug, name, on, entryCount } = nextEvent;
  const href = eventPath(club, slug);
  if (entryCount === 0) {
    return [{ key: "event", title: `Look at ${name}`, text: `On ${on}. Nobody is entered yet.`, href }];
  }
  const sheets = entryCount === 1 ? "the sheet" : `${entryCount} sheets`;
  return [
    {
      key: "event",
      title: `Print ${sheets} for ${name}`,
      text: `On ${on}, one sheet a car, in running-number order.`,
      href,
    },
  ];
}

function disputeSteps(club: string, { disputed = [] }: HomeFacts): readonly NextStep[] {
  return disputed.slice(0, 3).map(({ reference, chassis, claims }) => ({
    key: reference,
    title: `Settle who is ${chassis}`,
    text: `${claims} cars claim this number.`,
    href: carPath(club, reference),
  }));
}

function submissionSteps(club: string, { toReview = 0, toAnswer = 0 }: HomeFacts): readonly NextStep[] {
  const many = (count: number, one: string, more: string) => (count === 1 ? one : `${count} ${more}`);
  const answer = {
    key: "answer",
    title: `Answer ${many(toAnswer, "the registrar's question", "questions of the registrar")}`,
    text: "About what you handed in; it is decided once you answer.",
    href: garagePath(club),
  };
  const review = {
    key: "review",
    title: `Review ${many(toReview, "the change", "changes")} handed in`,
    text: "With what each does to the car; the longest waiting first.",
    href: reviewPath(club),
  };
  return [...(toAnswer > 0 ? [answer] : []), ...(toReview > 0 ? [review] : [])];
}

function dueSteps(club: string, { due = { past: 0, soon: 0 } }: HomeFacts): readonly NextStep[] {
  const { past, soon } = due;
  if (past + soon === 0) return [];
  const ahead = soon === 1 ? "one more falls due" : `${sayCount(soon)} more fall due`;
  if (past === 0)
    return [
      {
        key: "due",
        title: soon === 1 ? "Renew what falls due" : `Renew ${sayCount(soon)} things that fall due`,
        text: `Within ${dueSoon} days; none is past its day.`,
        href: duePath(club, { standing: "soon" }),
      },
    ];
  return [
    {
      key: "due",
      title: past === 1 ? "Renew one thing past its day" : `Renew ${sayCount(past)} things past their day`,
      text: soon === 0 ? `Nothing falls due within ${dueSoon} days.` : `Within ${dueSoon} days ${ahead}.`,
      href: duePath(club, { standing: "past" }),
    },
  ];
}

/** What this person should do next, by what they may do; nobody is told of what they cannot. */
export function nextSteps(club: string, roles: readonly Role[], facts: HomeFacts): readonly NextStep[] {
  const runsEvents = roles.some((role) => role !== "owner");
  const keepsRecords = roles.includes("registrar") || roles.includes("fleetManager");
  return [
    ...submissionSteps(club, facts),
    ...dueSteps(club, facts),
    ...(runsEvents ? eventStep(club, facts) : []),
    ...(keepsRecords ? disputeSteps(club, facts) : []),
  ];
}

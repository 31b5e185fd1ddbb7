import type { Garage, GarageCar } from "@trunnion/api";
import { submissionStatusWords } from "@trunnion/register";
import { PageHead, SectionHead } from "../../components/page-head";
import { Plate, SmallPlate } from "../../components/plate";
import { sayLongDay } from "../../lib/day";
import {
  carPath,
  eventPath,
  newSettingSheetPath,
  noticesPath,
  othersPath,
  startChangePath,
  submissionPath,
} from "../../lib/path";
import { WaitingPhotos } from "../submission/waiting-photos";

const link = "inline-flex min-h-11 items-center";

/** What an owner comes back to: what waits for him, then car by car what is due, missing and going to be looked at. */
export function GaragePage({ club, garage }: { readonly club: string; readonly garage: Garage }) {
  const { cars, open, done } = garage;
  return (
    <>
      <PageHead
        title="My garage"
        lead={cars.length === 0 ? "By the register you keep no car now." : undefined}
      >
        <a href={noticesPath(club)} className={link}>
          Messages
        </a>
      </PageHead>
      <div className="grid gap-10">
        {cars.length > 0 ? null : (
          <p className="max-w-prose">
            If you do keep one, ask the registrar to record you as its keeper; then what you change on it can
            be handed in here.
          </p>
        )}
        <WaitingPhotos club={club} />
        <Submissions club={club} title="Open" list={open} id="open" />
        {cars.map((car) => (
          <Car key={car.reference} club={club} car={car} />
        ))}
        <Submissions club={club} title="Decided" list={done} id="done" />
      </div>
    </>
  );
}

function Submissions({
  club,
  title,
  list,
  id,
}: {
  readonly club: string;
  readonly title: string;
  readonly list: Garage["open"];
  readonly id: string;
}) {
  if (list.length === 0) return null;
  return (
    <section aria-labelledby={id}>
      <SectionHead id={id} title={title} />
      <ul>
        {list.map((one) => (
          <li key={one.id} className="flex flex-wrap items-center gap-x-6 gap-y-1 border-hair border-b py-2">
            <SmallPlate chassis={one.car.chassis} href={submissionPath(club, one.id)} />
            <span className="min-w-0 grow">
              <a href={submissionPath(club, one.id)}>{one.what}</a>
              <span className="block text-small">
                <strong>{submissionStatusWords[one.status]}</strong>
                <span className="text-soft">, {one.on}</span>
                {one.status === "queried" ? `: ${one.lastSaid}` : ""}
              </span>
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

const standings = { past: "ran out", soon: "runs out", unknown: "" } as const;

function Car({ club, car }: { readonly club: string; readonly car: GarageCar }) {
  const id = `car-${car.reference.replace(/[^A-Za-z0-9]+/g, "-")}`;
  return (
    <section aria-labelledby={id} className="grid gap-4">
      <div className="flex flex-wrap items-center gap-x-8 gap-y-3 border-ink border-t-2 pt-4">
        <Plate chassis={car.chassis} />
        <div>
          <h2 id={id} className="text-head">
            {car.series}
          </h2>
          <a href={carPath(club, car.reference)} className={link}>
            Its record
          </a>
        </div>
        <div className="flex flex-wrap gap-3">
          <a
            href={startChangePath(club, car.reference)}
            className="inline-flex min-h-12 items-center border border-red bg-red px-5 py-2 font-semibold text-on-red no-underline hover:border-ink hover:bg-ink hover:text-paper"
          >
            Record a change
          </a>
          <a
            href={newSettingSheetPath(club, car.reference)}
            className="inline-flex min-h-12 items-center border border-ink px-5 py-2 font-semibold no-underline hover:bg-ink hover:text-paper"
          >
            Write a setting sheet
          </a>
        </div>
      </div>
      <div className="grid gap-x-12 gap-y-6 wide:grid-cols-2">
        <Due car={car} />
        <Missing car={car} />
      </div>
      <Carried car={car} />
      <Ahead club={club} car={car} />
      <Others club={club} car={car} />
    </section>
  );
}

function Others({ club, car: { reference, series } }: { readonly club: string; readonly car: GarageCar }) {
  return (
    <div>
      <h3 className="text-lead">What others run</h3>
      <p className="max-w-prose">
        What owners of {series} have changed, how many of them, and what they have instead, beside what your
        car has.
      </p>
      <a href={othersPath(club, reference)} className={link}>
        See what others of {series} run
      </a>
    </div>
  );
}

function Due({ car: { due } }: { readonly car: GarageCar }) {
  return (
    <div>
      <h3 className="text-lead">Falls due</h3>
      {due.length === 0 ? <p className="text-soft">Nothing recorded runs out within 90 days.</p> : null}
      <ul>
        {due.map(({ label, on, standing }) => (
          <li key={`${label} ${on}`} className="border-hair border-b py-1.5">
            {label}: {standings[standing]} <strong>{on}</strong>
          </li>
        ))}
      </ul>
    </div>
  );
}

/** What a scrutineer advised or refused: it comes back on the next sheet until it is passed. */
function Carried({ car: { carried } }: { readonly car: GarageCar }) {
  if (carried.length === 0) return null;
  return (
    <div>
      <h3 className="text-lead">Open from scrutineering</h3>
      <p className="max-w-prose text-soft">
        Put right, or looked at again, it stands on the next sheet all the same.
      </p>
      <ul>
        {carried.map(({ checkCode, result, text, note, event, on }) => (
          <li
            key={checkCode}
            className={`max-w-prose border-l-4 py-1.5 pl-4 ${result === "refuse" ? "border-red" : "border-line"}`}
          >
            <strong>{result === "refuse" ? "Refused" : "Advised"}</strong>
            {text === "" ? "" : `: ${text}`}
            {note === "" ? null : <span className="block whitespace-pre-line">“{note}”</span>}
            <span className="block text-small text-soft">
              {event}, {sayLongDay(on)}
            </span>
          </li>
        ))}
      </ul>
    </div>
  );
}

function Missing({ car: { missing } }: { readonly car: GarageCar }) {
  if (missing.length === 0) return null;
  return (
    <div>
      <h3 className="text-lead">Missing from the record</h3>
      <ul>
        {missing.map(({ label, adds }) => (
          <li key={label} className="border-hair border-b py-1.5">
            {label}
            <span className="block text-small text-soft">would add: {adds.join(", ").toLowerCase()}</span>
          </li>
        ))}
      </ul>
    </div>
  );
}

function Ahead({ club, car: { event } }: { readonly club: string; readonly car: GarageCar }) {
  if (event === undefined) return null;
  const { slug, name, on, runningNumber, expected, unrecorded, besides } = event;
  return (
    <div className="grid gap-2">
      <h3 className="text-lead">
        <a href={eventPath(club, slug)}>{name}</a>, {on}, running number {runningNumber}
      </h3>
      <p className="max-w-prose text-soft">
        {expected.length === 0
          ? "Nothing on the record sets this car apart: "
          : "Because of what is recorded of this car, the scrutineer will look at this; have it ready. "}
        {besides} checks that every car gets come besides. What the organiser's regulations ask decides.
      </p>
      <ol className="grid gap-x-12 gap-y-3 wide:grid-cols-2">
        {expected.map(({ text, why, prepare }) => (
          <li key={text} className="border-hair border-b pb-2">
            <p className="font-semibold">{text}</p>
            <p className="text-small">Why: {why}</p>
            {prepare === "" ? null : <p className="text-small">On his sheet: {prepare}</p>}
          </li>
        ))}
      </ol>
      {unrecorded.length === 0 ? null : (
        <details>
          <summary className="min-h-11 cursor-pointer py-2">
            What he has to look for because the record does not say it
          </summary>
          <ul className="grid max-w-prose list-disc gap-1 pl-5 text-small">
            {unrecorded.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}

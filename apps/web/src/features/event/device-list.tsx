import type { DeviceLine } from "@trunnion/api";
import { SectionHead } from "../../components/page-head";

const instant = (iso: string) => `${iso.slice(0, 10)} ${iso.slice(11, 16)} UTC`;

/** A clock this far out is told, seconds. */
const CLOCK = 120;

function sayClock({ clockOff }: DeviceLine): string {
  const off = Math.abs(clockOff);
  if (off < CLOCK) return "";
  const days = Math.round(off / 86_400);
  const how = days >= 2 ? `${days} days` : `${Math.round(off / 60)} minutes`;
  return ` Its clock is ${how} ${clockOff > 0 ? "ahead" : "behind"}; what it sent was dated by the server's.`;
}

/** Phones that took the event along: when each was last heard of, and what it said that it held then. */
export function Devices({ devices }: { readonly devices: readonly DeviceLine[] }) {
  if (devices.length === 0) return null;
  const holding = devices.filter(({ held }) => held > 0).length;
  return (
    <section aria-labelledby="phones" className="pt-8">
      <SectionHead id="phones" title="In the paddock">
        <span className="text-small text-soft">
          {holding === 0 ? "everything that phones told of is here" : `${holding} had not sent everything`}
        </span>
      </SectionHead>
      <ul>
        {devices.map((device) => {
          const { id, by, heardAt, made, held } = device;
          return (
            <li
              key={id}
              className={`border-hair border-b py-2 ${held > 0 ? "border-l-4 border-l-red pl-2" : ""}`}
            >
              {by === "" ? "A phone" : `${by}'s phone`}, last heard of {instant(heardAt)}:{" "}
              {held === 0 ? (
                <>it had made {made} and held nothing unsent.</>
              ) : (
                <b>
                  it had made {made} and held {held} not sent. They are missing here.
                </b>
              )}
              {sayClock(device)}
            </li>
          );
        })}
      </ul>
      <p className="max-w-prose pt-1 text-small text-soft">
        What a phone found after it was last heard of is on that phone alone. What was sent is here whole,
        whatever becomes of the phone; checks it does not show are told as not looked at.
      </p>
    </section>
  );
}

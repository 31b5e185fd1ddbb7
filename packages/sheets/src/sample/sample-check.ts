import type { SheetCheck, SheetModel } from "@trunnion/register";

type Station = SheetModel["stations"][number];

const everyCar = "made on every car at this event.";

function plain(id: string, text: string, more: Partial<SheetCheck> = {}): SheetCheck {
  return {
    id,
    text,
    short: text.replace(/\.$/, ""),
    wanted: more.criterion !== undefined && "text" in more.criterion ? more.criterion.text : "",
    criterion: { kind: "seen" },
    why: everyCar,
    readings:
      more.criterion?.kind === "measured"
        ? [{ key: "whole", characteristic: "", side: "whole", label: "" }]
        : [],
    special: false,
    undecided: false,
    source: "Club starter rules 2026, 3",
    ...more,
  };
}

function special(id: string, text: string, why: string, more: Partial<SheetCheck> = {}): SheetCheck {
  return plain(id, text, { why, special: true, source: "Club starter rules 2026, 7", ...more });
}

/** An invented walk round an invented car; wording as a club might write it. */
export const sampleStations: readonly Station[] = [
  {
    station: "documents",
    label: "Documents",
    checks: [
      plain("licence", "See the driver's licence and the signed declaration", {
        criterion: { kind: "document" },
      }),
      plain("membership", "See the membership card, valid on the day", {
        criterion: { kind: "datedItem", text: "Valid on 16 May 2026" },
      }),
    ],
  },
  {
    station: "front",
    label: "Front",
    checks: [
      plain("front-bearing", "Rock each front wheel at six and twelve o'clock, then at three and nine", {
        method:
          "Wheel off the ground; play you can feel at the rim is from bearing, ball joint or rack, in that order.",
      }),
      special(
        "rod-end",
        "Look for play and loose lock nuts at both adjustable drop links of the front anti-roll bar",
        "adjustable rod-end links instead of bushed ones, since 12 March 2024; thread left in the rod end not recorded.",
        {
          method: "Twist each link by hand; turn the lock nut with a spanner; count the threads that show.",
          criterion: { kind: "measured", text: "At least 8 mm of thread in the rod end" },
        },
      ),
      special(
        "disc",
        "Look for cracks between the holes of the drilled front discs",
        "drilled discs where plain ones were specified.",
        {
          method: "Both faces, with a lamp held flat along the disc.",
          criterion: { kind: "measured", text: "Thickness at least 10.2 mm" },
        },
      ),
      plain("front-hose", "Look along both front brake hoses at full lock each way", {
        method: "No chafing, no bulge, no weeping at the unions.",
      }),
      plain("towing", "Find the front towing point and pull on it"),
    ],
  },
  {
    station: "driverSide",
    label: "Driver's side",
    checks: [
      plain("tread", "Tread depth across the width of both tyres", {
        criterion: { kind: "measured", text: "At least 1.6 mm over three quarters of the width" },
      }),
      special(
        "tyre-date",
        "Read the date code of all four tyres",
        "14 inch wheels, ×1.077 of specified; tyre date not recorded.",
        {
          criterion: { kind: "datedItem", text: "Made within ten years of the day" },
          undecided: true,
        },
      ),
      plain("nuts", "Count the wheel nuts and turn each with the brace"),
    ],
  },
  {
    station: "cockpit",
    label: "Cockpit",
    checks: [
      plain("harness", "Pull each harness strap sharply; look at its label and its bolts", {
        criterion: { kind: "datedItem", text: "Label valid on the day" },
        method: "Straps free of cuts and sun-bleaching; eye bolts do up to the shoulder.",
      }),
      plain("seat", "Push the seat back hard against its mountings"),
      plain(
        "extinguisher",
        "Extinguisher within the strapped-in driver's reach, pin in, gauge in the green",
        {
          criterion: { kind: "datedItem", text: "Serviced within 24 months" },
        },
      ),
      plain("pedals", "Press the brake pedal hard for ten seconds: it must not sink"),
      plain("lock", "Turn the wheel from lock to lock: no stiff place, no rub"),
    ],
  },
  {
    station: "engineBay",
    label: "Engine bay",
    checks: [
      plain("throttle", "Open the throttle by hand and let go: it must shut at once", {
        method: "A second return spring that still shuts it when the first is unhooked.",
      }),
      plain("battery", "Pull on the battery; live terminal covered"),
      plain("catch", "Breathers lead to a catch tank, and it is empty", {
        criterion: { kind: "measured", text: "2 litres or more" },
      }),
      plain("fuel-line", "Follow the fuel line from bulkhead to carburettor", {
        method: "Clips on every joint, no line across the exhaust.",
      }),
      special(
        "bolt",
        "Find which thread the caliper bolts have before a spanner goes on",
        "calipers from another donor: metric bolts beside inch ones on this axle.",
        {
          method: "Heads are marked; an M10 × 1.25 goes three turns into a 3/8 UNF hole and then strips it.",
        },
      ),
    ],
  },
  {
    station: "rear",
    label: "Rear",
    checks: [
      plain("rear-light", "Brake lights and rain light, seen from ten paces"),
      plain("tank", "Filler cap shut and tight; smell for fuel"),
      special(
        "rear-bar",
        "Look for cracks where the rear anti-roll bar is mounted",
        "rear bar 20 mm where 16 mm was specified, ×2.44 as stiff.",
        {
          method: "Paint lines across bracket and rail; strip of the rail underneath.",
        },
      ),
      plain("exhaust", "Exhaust hung at each mounting; nothing loose"),
    ],
  },
  {
    station: "passengerSide",
    label: "Passenger's side",
    checks: [
      plain("door", "Open and shut the passenger's door from inside and outside"),
      plain(
        "cut-off",
        "Find the electrical cut-off from outside, its sign, and pull it with the engine running",
      ),
    ],
  },
  {
    station: "underneath",
    label: "Underneath",
    checks: [
      plain("backbone", "Look along the backbone for corrosion and cracks at the outriggers"),
      special(
        "advisory",
        "Look again at the nearside rear hose",
        "advice of 14 September 2025: “slight chafing where it passes the radius arm; re-route before next event”.",
        {
          source: "Finding of 14 September 2025",
        },
      ),
    ],
  },
  {
    station: "driver",
    label: "Driver",
    checks: [
      plain("helmet", "Read the helmet's label and look at its shell", {
        criterion: { kind: "datedItem", text: "Standard accepted by the rules of the day" },
      }),
      plain("clothing", "Overalls, gloves and shoes as the rules ask"),
    ],
  },
];

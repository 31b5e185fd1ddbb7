import type { Characteristic } from "../characteristic";
import { choice, part, text } from "./preset";

const item = { ...part, assembly: "body" } as const;

/** Body: style, material, colours, glass, steering side. */
export const body: readonly Characteristic[] = [
  {
    ...item,
    ...choice(
      { code: "coupe", label: "Coupé", also: ["closed", "fixed head", "FHC"] },
      { code: "roadster", label: "Roadster", also: ["open", "convertible", "drophead", "DHC"] },
      { code: "estate", label: "Estate", also: ["shooting brake"] },
      { code: "saloon", label: "Saloon", also: ["sedan"] },
    ),
    key: "body.style",
    label: "Body style",
    also: ["Body type"],
    help: "What kind of body the car has.",
  },
  {
    ...item,
    ...choice(
      { code: "glassFibre", label: "Glass fibre", also: ["GRP", "fibreglass", "glass-fibre"] },
      { code: "steel", label: "Steel", also: ["steel panels"] },
      { code: "aluminium", label: "Aluminium", also: ["alloy", "aluminum"] },
      { code: "mixed", label: "Steel and aluminium" },
    ),
    key: "body.material",
    label: "Body material",
    help: "What the outer panels are made of.",
  },
  {
    ...item,
    ...text,
    maximumLength: 60,
    key: "body.colour",
    label: "Body colour",
    also: ["Colour", "Color", "Paint", "Exterior colour"],
    help: "Works name of the colour, or a plain word for it.",
  },
  {
    ...item,
    ...text,
    maximumLength: 60,
    key: "body.trimColour",
    label: "Trim colour",
    also: ["Trim", "Interior colour", "Upholstery"],
    help: "Colour and material of the trim.",
  },
  {
    ...item,
    ...choice(
      { code: "left", label: "Left-hand drive", also: ["LHD"] },
      { code: "right", label: "Right-hand drive", also: ["RHD"] },
    ),
    key: "body.steeringSide",
    label: "Steering side",
    also: ["Drive side", "LHD or RHD"],
    help: "Side the steering wheel is on.",
  },
  {
    ...item,
    ...choice(
      { code: "laminated", label: "Laminated", also: ["laminated glass"] },
      { code: "toughened", label: "Toughened", also: ["tempered", "toughened glass"] },
      { code: "plastic", label: "Plastic", also: ["polycarbonate", "acrylic"] },
    ),
    key: "body.windscreen",
    label: "Windscreen",
    help: "Read the mark in the corner of the glass.",
  },
];

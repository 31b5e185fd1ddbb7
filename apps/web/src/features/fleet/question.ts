import { writeCondition } from "@trunnion/register";
import {
  compareCarsPath,
  duePath,
  prevalencePath,
  registerPath,
  scarcePartsPath,
  survivalPath,
} from "../../lib/path";

/** One question the register answers across every car. */
export interface Question {
  readonly href: string;
  readonly title: string;
  readonly text: string;
}

/** The fleet's pages, in the order in which they are looked at. */
export function questionsFor(club: string): readonly Question[] {
  return [
    {
      href: prevalencePath(club),
      title: "What has been changed",
      text: "Of each characteristic on how many known cars it differs from factory, what is there instead, and when it was changed.",
    },
    {
      href: registerPath(club, { where: writeCondition({ op: "anyVerdict", in: ["outsideLimits"] }) }),
      title: "What is outside its limits",
      text: "Cars of which something recorded lies outside its limits; which it is, and by how much, is on each car's page.",
    },
    {
      href: compareCarsPath(club),
      title: "Cars side by side",
      text: "A few cars, or every car of a fleet against one of them: only what differs, worst first.",
    },
    {
      href: survivalPath(club),
      title: "What is left of them",
      text: "Built, known of and in use, by series and month of building; which records are thin, and what to ask next of whom.",
    },
    {
      href: duePath(club),
      title: "What falls due",
      text: "Harness, seat, extinguisher, helmet and whatever else is dated: as a list, as a calendar, and in your own calendar program.",
    },
    {
      href: scarcePartsPath(club),
      title: "Parts that are hard to find",
      text: "Which cars depend on a part that nobody can find, or hardly, and what can stand in for it.",
    },
  ];
}

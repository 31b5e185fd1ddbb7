import type { ImportLine } from "@trunnion/api";

const counted = (count: number, one: string) =>
  `${count.toLocaleString("en-GB")} ${one}${count === 1 ? "" : "s"}`;

/** Where an import stands, in a few words. */
export function sayStatus({ status, stage, silent }: ImportLine): string {
  switch (status) {
    case "planned":
      if (stage === "mapping") return "columns not settled yet";
      if (stage === "looking")
        return silent ? "looking through it was interrupted" : "is being looked through";
      return "looked through, not yet read in";
    case "running":
      return "is being read in";
    case "interrupted":
      return "interrupted half way";
    case "done":
      return "read in";
    case "failed":
      return "stopped by a fault";
    case "undone":
      return "undone";
  }
}

/** What an import did or, before it has begun, would do. */
export function sayCounts(line: ImportLine): string {
  const { carsAdded, carsChanged, rowsRefused, status } = line;
  const would = status === "planned";
  const added = `${counted(carsAdded, "car")} ${would ? "would be added" : "added"}`;
  const soFar = isUnderWay(line) ? " so far" : "";
  return `${added}, ${carsChanged.toLocaleString("en-GB")} changed, ${counted(rowsRefused, "row")} left out${soFar}`;
}

/** True while a page should look again by itself. */
export function isUnderWay({ status, stage, silent }: ImportLine): boolean {
  return status === "running" || (status === "planned" && stage === "looking" && !silent);
}

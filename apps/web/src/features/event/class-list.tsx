import type { ClassStanding } from "@trunnion/api";

export const eligibilityWords = {
  yes: "may enter",
  no: "may not enter",
  unknown: "the record does not say",
} as const;

type Obstacle = ClassStanding["obstacles"][number];

function ObstacleText({ obstacle: { asks, has, factory, truth } }: { readonly obstacle: Obstacle }) {
  return (
    <>
      {truth === "no" ? "Asks that" : "Not known whether"} {asks}
      {has === "" ? null : `; the car: ${has}`}
      {factory === "" ? null : truth === "no" ? (
        <b>; put back: {factory}</b>
      ) : (
        `; the factory's would do: ${factory}`
      )}
    </>
  );
}

export interface ClassListProps {
  readonly classes: readonly ClassStanding[];
  /** Id of the class the car is entered in. */
  readonly entered?: string;
}

/** How a car stands in each class: may enter or not, what is in the way, and what would have to be put back. */
export function ClassList({ classes, entered }: ClassListProps) {
  return (
    <ul className="border-hair border-t">
      {classes.map(({ id, code, name, truth, obstacles }) => (
        <li key={id} className="border-hair border-b py-2">
          <p>
            <b>
              {code} {name}
            </b>
            {id === entered ? " (entered)" : null}: {eligibilityWords[truth]}
          </p>
          {obstacles.length === 0 ? null : (
            <ul className="pl-5 text-small">
              {obstacles.map((obstacle) => (
                <li key={`${obstacle.truth} ${obstacle.asks}`} className="list-disc">
                  <ObstacleText obstacle={obstacle} />
                </li>
              ))}
            </ul>
          )}
        </li>
      ))}
    </ul>
  );
}

/** In a table: why a car may not be in the class it is entered in, and which it might. */
export function EnteredClass({
  standing,
  open,
}: {
  readonly standing: ClassStanding | undefined;
  readonly open: readonly string[];
}) {
  if (!standing || standing.truth === "yes") return null;
  const [first, ...more] = standing.obstacles;
  const others = open.filter((code) => code !== standing.code);
  return (
    <span
      className={`mt-1 block border-l-4 pl-2 text-fine ${standing.truth === "no" ? "border-red" : "border-line"}`}
    >
      <b>{eligibilityWords[standing.truth]}</b>
      {first ? (
        <>
          . <ObstacleText obstacle={first} />
        </>
      ) : null}
      {more.length === 0 ? null : `; and ${more.length} more`}.
      {others.length === 0 ? null : ` It may enter ${others.join(", ")}.`}
    </span>
  );
}

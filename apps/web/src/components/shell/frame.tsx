import type { ReactNode } from "react";

const zones = [1, 2, 3, 4, 5, 6, 7, 8] as const;

function Zones() {
  return (
    <div aria-hidden className="frame-zones">
      {zones.map((zone) => (
        <span key={zone}>{zone}</span>
      ))}
    </div>
  );
}

export interface FrameProps {
  readonly header?: ReactNode;
  readonly children: ReactNode;
}

/** The drawing sheet a page stands on: frame line and zones on wide screens, nothing but paper on a phone. */
export function Frame({ header, children }: FrameProps) {
  return (
    <>
      <a href="#content" className="skip-link">
        Skip to the content
      </a>
      <div className="frame">
        <Zones />
        <div className="frame-line">
          {header}
          <main
            id="content"
            tabIndex={-1}
            className="flex grow flex-col px-4 py-6 outline-none wide:px-10 wide:py-8"
          >
            {children}
          </main>
        </div>
        <Zones />
      </div>
    </>
  );
}

import { carEvidencePath } from "../../lib/path";

interface EvidenceLinkProps {
  readonly club: string;
  readonly car: string;
  readonly count: number;
}

/** From a car's page to its photos and documents. */
export function EvidenceLink({ club, car, count }: EvidenceLinkProps) {
  const what = count === 1 ? "1 photo or document" : `${count} photos and documents`;
  return (
    <a
      href={carEvidencePath(club, car)}
      className="print:hidden inline-flex min-h-11 items-center text-small"
    >
      {count === 0 ? "Photos and documents: none yet" : what}
    </a>
  );
}

import type { SubmissionPage } from "@trunnion/api";
import { SupportMark } from "../evidence/support-mark";

export interface LinePhotosProps {
  readonly club: string;
  /** Id of the submission. */
  readonly id: string;
  readonly photos: SubmissionPage["evidence"];
  readonly characteristic: string;
}

/** What shows one line of a difference, beside it. */
export function LinePhotos({ club, id, photos, characteristic }: LinePhotosProps) {
  const pieces = photos.filter((one) => one.characteristic === characteristic);
  if (pieces.length === 0) return <span className="text-soft">no photo</span>;
  const target = { kind: "submission", id } as const;
  const support = pieces.map((piece) => ({ ...piece, linkId: piece.id, locus: "", target }));
  return <SupportMark club={club} support={support} />;
}

/** The column of photos of a difference, where one of its lines has any. */
export function photoColumn(props: Omit<LinePhotosProps, "characteristic">) {
  if (props.photos.every(({ characteristic }) => characteristic === "")) return {};
  return { shownBy: (characteristic: string) => <LinePhotos {...props} characteristic={characteristic} /> };
}

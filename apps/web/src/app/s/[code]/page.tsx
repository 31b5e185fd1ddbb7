import { printedSheetFace, refusalOf } from "@trunnion/api";
import type { Metadata } from "next";
import { Frame } from "../../../components/shell/frame";
import { OutcomePage } from "../../../components/shell/outcome-page";
import { SheetFacePage } from "../../../features/sheet-form/sheet-face-page";
import { withoutControls } from "../../../lib/address";
import { clubsPath } from "../../../lib/path";
import { pageRequest } from "../../../lib/service";

export const metadata: Metadata = { title: "Printed sheet", robots: { index: false } };

interface Segments {
  readonly params: Promise<{ readonly code: string }>;
}

/** What the QR code of a sheet leads to: whether the record moved on since it was printed. */
export default async function Page({ params }: Segments) {
  const { code } = await params;
  const found = await printedSheetFace(await pageRequest(), withoutControls(code))
    .then((face) => ({ face }))
    .catch((error: unknown) => {
      const refusal = refusalOf(error);
      if (refusal) return { refusal: refusal.text };
      throw error;
    });
  return (
    <Frame>
      {"face" in found ? (
        <SheetFacePage face={found.face} />
      ) : (
        <OutcomePage
          title="No such sheet"
          text={found.refusal}
          on={{ href: clubsPath, label: "Go to the start" }}
        />
      )}
    </Frame>
  );
}

import type { ExportPage as Offered } from "@trunnion/api";
import { PageHead, SectionHead } from "../../components/page-head";
import type { ClubFace } from "../../components/shell/shell";
import { TitleBlock } from "../../components/shell/title-block";
import { deskPath } from "../../lib/path";
import { ArchiveForm } from "./archive-form";
import { ListTable } from "./list-table";

export interface ExportPageProps {
  readonly club: ClubFace;
  readonly page: Offered;
}

const count = new Intl.NumberFormat("en-GB");
const cars = (number: number) => (number === 1 ? "1 car" : `${count.format(number)} cars`);

/** Everything that can be taken away as a file: the whole club, and its lists. */
export function ExportPage({ club, page }: ExportPageProps) {
  return (
    <>
      <PageHead
        title="Archive and lists"
        lead="The register belongs to the club: take it with you at any time."
        back={{ href: deskPath(club.slug), label: "Desk" }}
      />
      <div className="grid grid-cols-[minmax(0,1fr)] gap-10">
        {page.mayArchive ? <WholeClub club={club} /> : null}
        <section>
          <SectionHead title="Lists" />
          <p className="max-w-prose pb-4">
            As tables for a spreadsheet. A text that a spreadsheet might take for a formula has an apostrophe
            before it. The cars that a search or a filter finds are fetched from the register, the state of a
            car from its page.
          </p>
          <ListTable club={club.slug} page={page} />
        </section>
        {page.mayArchive ? <CommandLine club={club} /> : null}
      </div>
      <TitleBlock
        club={club.name}
        kind="Form"
        title="Archive and lists"
        facts={[{ label: "Register", value: cars(page.cars) }]}
      />
    </>
  );
}

function WholeClub({ club }: { readonly club: ClubFace }) {
  return (
    <section>
      <SectionHead title="The whole club" />
      <div className="grid max-w-prose gap-4">
        <p>
          One ZIP file with every record, photograph and document, a description of each field and a list of
          hashes that proves it whole. It can be read without this program, and read back into an empty one:
          for a successor, for safe keeping, for moving house.
        </p>
        <ArchiveForm club={club.slug} />
      </div>
    </section>
  );
}

function CommandLine({ club }: { readonly club: ClubFace }) {
  return (
    <section>
      <SectionHead title="By command" />
      <p className="max-w-prose pb-2">
        Whoever runs the machine can do the same by command, read an archive back, and back up the whole
        installation with its sign-ins.
      </p>
      <pre className="overflow-x-auto border-hair border-y py-3 text-small">
        {[
          `npm run -s trunnion -- export --club ${club.slug} --out ${club.slug}.zip`,
          "npm run -s trunnion -- backup --out backup.zip",
          "npm run -s trunnion -- restore backup.zip --dry-run",
        ].join("\n")}
      </pre>
    </section>
  );
}

import type { OwnContact } from "@trunnion/api";
import { EditForm } from "../../../components/form/edit-form";
import { TextArea, TextField } from "../../../components/form/form-field";
import { PageHead } from "../../../components/page-head";
import { SmallPlate } from "../../../components/plate";
import type { ClubFace } from "../../../components/shell/shell";
import { carPath, clubPath, keeperDataPath } from "../../../lib/path";
import { saveOwnContact } from "./keeper-action";
import { Opened } from "./opened";

export interface OwnContactPageProps {
  readonly club: ClubFace;
  readonly contacts: readonly OwnContact[];
}

/** What the register holds of the reader himself. */
export function OwnContactPage({ club, contacts }: OwnContactPageProps) {
  return (
    <>
      <PageHead
        title="Your contact data"
        back={{ href: clubPath(club.slug), label: "Today" }}
        lead="Seen by you and the registrar, by no other member."
      />
      {contacts.length === 0 ? (
        <p className="max-w-prose">
          The register does not know you as a keeper of a car. If you keep one, ask the registrar to link you
          to it.
        </p>
      ) : null}
      <div className="grid gap-12">
        {contacts.map((contact) => (
          <Contact key={contact.id} club={club} contact={contact} />
        ))}
      </div>
    </>
  );
}

function Contact({ club, contact }: { readonly club: ClubFace; readonly contact: OwnContact }) {
  const { id, name, address, email, phone, cars } = contact;
  return (
    <section aria-label={name} className="grid gap-6">
      <p className="flex flex-wrap items-center gap-x-4 gap-y-2">
        <span className="font-semibold">{name}</span>
        {cars.map(({ reference, chassis, present }) => (
          <span key={reference}>
            <SmallPlate chassis={chassis} href={carPath(club.slug, reference)} />{" "}
            {present ? "" : "(kept once)"}
          </span>
        ))}
      </p>
      <EditForm action={saveOwnContact.bind(null, club.slug, id)} submit="Save" labels={{ email: "E-mail" }}>
        <Opened at={0} fields={{ address, email, phone }} />
        <TextArea name="address" label="Address" value={address} rows={3} maxLength={400} />
        <TextField
          name="email"
          label="E-mail"
          value={email}
          type="email"
          autoComplete="email"
          maxLength={254}
        />
        <TextField
          name="phone"
          label="Telephone"
          value={phone}
          type="tel"
          autoComplete="tel"
          maxLength={60}
        />
      </EditForm>
      <p>
        <a href={keeperDataPath(club.slug, id)}>Everything the register holds of you (JSON)</a>. The name is
        the registrar's to correct, and to erase it all on your request.
      </p>
    </section>
  );
}

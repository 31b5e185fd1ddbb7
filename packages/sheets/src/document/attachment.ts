import type { PdfFile } from "./pdf-file";
import { type Ref, refsText, refText, textObject } from "./pdf-text";
import { packAside } from "./stream";

/** Files that travel inside the document, each a car's model as JSON. */
export class AttachmentWriter {
  private readonly files: { readonly name: string; readonly ref: Ref }[] = [];
  private readonly names = new Set<string>();

  /** @param made date of the file as an object, "(D:20260514183000Z)" */
  constructor(
    private readonly file: PdfFile,
    private readonly made: string,
  ) {}

  add(wanted: string, description: string, json: string): void {
    const { file, made } = this;
    let name = `${wanted}.json`;
    for (let next = 2; this.names.has(name); next++) name = `${wanted}-${next}.json`;
    this.names.add(name);
    const bytes = Buffer.from(json, "utf8");
    const params = `/Params<</Size ${bytes.length}/CreationDate${made}/ModDate${made}>>`;
    const stream = file.addStream(packAside(bytes, `/Type/EmbeddedFile/Subtype/application#2Fjson${params}`));
    const named = textObject(name);
    const ref = file.add(
      `<</Type/Filespec/F${named}/UF${named}/Desc${textObject(description)}/AFRelationship/Data/EF<</F ${refText(stream)}>>>>`,
    );
    this.files.push({ name, ref });
  }

  get isEmpty(): boolean {
    return this.files.length === 0;
  }

  /** The name tree and the list of associated files, for the catalogue. */
  finish(): { readonly names: Ref; readonly associated: Ref } {
    const sorted = [...this.files].sort((a, b) => (a.name < b.name ? -1 : 1));
    const pairs = sorted.map(({ name, ref }) => `${textObject(name)} ${refText(ref)}`).join(" ");
    const names = this.file.add(`<</EmbeddedFiles<</Names[${pairs}]>>>>`);
    const associated = this.file.add(refsText(sorted.map(({ ref }) => ref)));
    return { names, associated };
  }
}

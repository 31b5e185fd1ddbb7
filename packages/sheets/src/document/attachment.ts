import { type PDFContext, PDFName, type PDFRef } from "pdf-lib";
import { RawObject, refText, textObject } from "./raw-object";
import { packAside, streamOf } from "./stream";

/** Files that travel inside the document, each a car's model as JSON. */
export class AttachmentWriter {
  private readonly files: { readonly name: string; readonly ref: PDFRef }[] = [];
  private readonly names = new Set<string>();

  constructor(
    private readonly context: PDFContext,
    private readonly made: string,
  ) {}

  /** Answers when the file is compressed. */
  add(wanted: string, description: string, json: string): Promise<void> {
    const { context } = this;
    let name = `${wanted}.json`;
    for (let next = 2; this.names.has(name); next++) name = `${wanted}-${next}.json`;
    this.names.add(name);
    const bytes = Buffer.from(json, "utf8");
    const stream = context.nextRef();
    const named = textObject(name);
    const file = context.register(
      new RawObject(
        `<</Type/Filespec/F${named}/UF${named}/Desc${textObject(description)}/AFRelationship/Data/EF<</F ${refText(stream)}>>>>`,
      ),
    );
    this.files.push({ name, ref: file });
    const entries = { Type: "EmbeddedFile", Subtype: "application/json" } as const;
    return packAside(bytes).then((packed) => {
      const object = streamOf(context, { ...packed, entries });
      object.dict.set(
        PDFName.of("Params"),
        new RawObject(`<</Size ${bytes.length}/CreationDate(${this.made})/ModDate(${this.made})>>`),
      );
      context.assign(stream, object);
    });
  }

  /** The name tree and the list of associated files, for the catalogue. */
  finish(): { readonly names: PDFRef; readonly associated: PDFRef } {
    const sorted = [...this.files].sort((a, b) => (a.name < b.name ? -1 : 1));
    const pairs = sorted.map(({ name, ref }) => `${textObject(name)} ${refText(ref)}`).join(" ");
    const names = this.context.register(new RawObject(`<</EmbeddedFiles<</Names[${pairs}]>>>>`));
    const associated = this.context.register(
      new RawObject(`[${sorted.map(({ ref }) => refText(ref)).join(" ")}]`),
    );
    return { names, associated };
  }
}

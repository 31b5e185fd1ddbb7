import { createHash } from "node:crypto";
import type { ContentWriter } from "../content/content-writer";
import type { Faces } from "../font/face";
import { writeFont } from "../font/font-object";
import { alwaysUsed } from "../font/repertoire";
import { AttachmentWriter } from "./attachment";
import { FormWriter } from "./form";
import { PdfFile } from "./pdf-file";
import { dateObject, numberText, type Ref, refsText, refText, textObject } from "./pdf-text";
import { type PackedStream, packAside } from "./stream";
import { StructureWriter } from "./structure";

/** Pages under one node of the page tree; a flat tree of thousands is slow to open. */
const pagesPerNode = 32;

export interface DocumentFacts {
  readonly title: string;
  /** Date of making, of the newest model in the file. */
  readonly preparedAt: Date;
  /** Anything that tells this document from another; hashed into the file's identifier. */
  readonly identity: string;
  readonly width: number;
  readonly height: number;
  /** Whether the fields drawn can be filled in. */
  readonly fillable?: boolean;
  /** Whether the file tells what its content is; the pages must have been drawn tagged. */
  readonly tagged?: boolean;
}

/** What goes with one car's pages. */
export interface CarParts {
  /** Running number: its fields are named by it. */
  readonly number: string;
  /** What the pages say, as JSON: travels as a file within the file. */
  readonly json: string;
}

/** A picture as it is stored in the file: its own bytes, not drawn anew. */
export interface Picture {
  readonly jpeg: Uint8Array;
  /** Pixels. */
  readonly width: number;
  readonly height: number;
}

interface PageNode {
  readonly ref: Ref;
  readonly kids: Ref[];
}

/** The PDF file round the pages' content: page tree, fonts, bookmarks, title. */
export class SheetDocument {
  private readonly file = new PdfFile();
  private readonly root = this.file.nextRef();
  private readonly resources = this.file.nextRef();
  private readonly regular = this.file.nextRef();
  private readonly bold = this.file.nextRef();
  private readonly drawings = new Map<string, Ref>();
  private readonly nodes: PageNode[] = [];
  private readonly bookmarks: { readonly title: string; readonly page: Ref }[] = [];
  private groups = alwaysUsed;
  private pageCount = 0;
  private readonly structure: StructureWriter | undefined;
  private readonly form: FormWriter | undefined;
  private readonly attachments: AttachmentWriter;

  constructor(
    private readonly facts: DocumentFacts,
    private readonly faces: Faces,
  ) {
    const { file } = this;
    this.structure = facts.tagged ? new StructureWriter(file) : undefined;
    const tell = this.structure?.tellWidget ?? (() => undefined);
    this.form = facts.fillable ? new FormWriter(file, tell) : undefined;
    this.attachments = new AttachmentWriter(file, dateObject(facts.preparedAt));
  }

  /** A drawing every page may place by name. */
  addDrawing(name: string, drawing: PackedStream): void {
    this.drawings.set(name, this.file.addStream(drawing));
  }

  /** A JPEG picture (baseline or progressive, 8 bit, three components) every page may place by name. */
  addPicture(name: string, { jpeg, width, height }: Picture): void {
    const entries = `/Type/XObject/Subtype/Image/Width ${width}/Height ${height}/ColorSpace/DeviceRGB/BitsPerComponent 8/Filter/DCTDecode`;
    this.drawings.set(name, this.file.addStream({ bytes: jpeg, entries }));
  }

  /** The finished pages of one car, with its bookmark; fields, structure and its JSON where the file has them. */
  addCar(title: string, pages: readonly ContentWriter[], parts?: CarParts): void {
    const { structure, form, file } = this;
    // Before the pages' bytes are taken, which ends their last mark.
    const placed = pages.map((page) => ({ page, key: structure?.pageKey(), ref: file.nextRef() }));
    structure?.addCar(
      title,
      placed.map(({ page, key = 0, ref }) => ({ ref, key, nodes: page.structure })),
    );
    // A list has no fields, and a car of the form without any would be one to look for.
    const widgets =
      parts &&
      form?.addCar(
        parts.number,
        placed.map(({ page, ref }) => ({ ref, fields: page.fields })),
      );
    structure?.settleForms();
    placed.forEach(({ page, key, ref }, at) => {
      this.addPage(page, ref, { key, widgets: widgets?.[at] ?? [] });
    });
    const [first] = placed;
    if (first !== undefined) this.bookmarks.push({ title, page: first.ref });
    if (parts === undefined) return;
    const name = `no-${parts.number.replace(/[^A-Za-z0-9]+/g, "-") || "none"}`;
    this.attachments.add(name, `What the sheet of ${title} says`, parts.json);
  }

  /** Waits until the pages given so far are compressed, so that not more than a few lie about unpacked. */
  settle(): Promise<void> {
    return this.file.settle();
  }

  async bytes(): Promise<Uint8Array> {
    const { file, faces } = this;
    writeFont(file, this.regular, faces.regular, this.groups);
    writeFont(file, this.bold, faces.bold, this.groups);
    const drawings = [...this.drawings].map(([name, ref]) => `/${name} ${refText(ref)}`).join("");
    const fonts = `/F1 ${refText(this.regular)}/F2 ${refText(this.bold)}`;
    file.put(this.resources, `<</Font<<${fonts}>>/XObject<<${drawings}>>>>`);
    this.writePageTree();
    const root = file.add(this.catalog());
    const info = file.add(this.information());
    const id = createHash("sha256").update(this.facts.identity).digest("hex").slice(0, 32);
    return file.finish({ root, info, id });
  }

  private addPage(
    page: ContentWriter,
    ref: Ref,
    { key, widgets }: { readonly key: number | undefined; readonly widgets: readonly Ref[] },
  ): void {
    const { file } = this;
    this.groups |= page.groups;
    if (this.pageCount % pagesPerNode === 0) this.nodes.push({ ref: file.nextRef(), kids: [] });
    const node = this.nodes.at(-1);
    if (node === undefined) throw new Error("a page has no node in the page tree");
    const box = `[0 0 ${numberText(this.facts.width)} ${numberText(this.facts.height)}]`;
    const contents = file.addStream(packAside(page.bytes()));
    const annotations = widgets.length > 0 ? `/Annots${refsText(widgets)}` : "";
    const structure = key === undefined ? "" : `/StructParents ${key}/Tabs/S`;
    file.put(
      ref,
      `<</Type/Page/Parent ${refText(node.ref)}/MediaBox${box}/Resources ${refText(this.resources)}/Contents ${refText(contents)}${annotations}${structure}>>`,
    );
    node.kids.push(ref);
    this.pageCount++;
  }

  private writePageTree(): void {
    const { file, nodes, root } = this;
    for (const { ref, kids } of nodes)
      file.put(ref, `<</Type/Pages/Parent ${refText(root)}/Kids${refsText(kids)}/Count ${kids.length}>>`);
    const kids = nodes.map((node) => node.ref);
    file.put(root, `<</Type/Pages/Kids${refsText(kids)}/Count ${this.pageCount}>>`);
  }

  private catalog(): string {
    // Shrinking to fit would make a limit on a printed bracket and a plate look other than drawn.
    const viewer = "/ViewerPreferences<</DisplayDocTitle true/PrintScaling/None>>";
    const parts = [
      `/Type/Catalog/Pages ${refText(this.root)}/Lang(en-GB)${viewer}`,
      `/PageMode/UseOutlines/Outlines ${refText(this.writeBookmarks())}`,
    ];
    if (this.form) parts.push(`/AcroForm ${refText(this.form.finish())}`);
    if (this.structure)
      parts.push(`/MarkInfo<</Marked true>>/StructTreeRoot ${refText(this.structure.finish())}`);
    if (!this.attachments.isEmpty) {
      const { names, associated } = this.attachments.finish();
      parts.push(`/Names ${refText(names)}/AF ${refText(associated)}`);
    }
    return `<<${parts.join("")}>>`;
  }

  private writeBookmarks(): Ref {
    const { file, bookmarks } = this;
    const parent = file.nextRef();
    const refs = bookmarks.map(() => file.nextRef());
    const link = (name: string, ref: Ref | undefined) =>
      ref === undefined ? "" : `/${name} ${refText(ref)}`;
    bookmarks.forEach(({ title, page }, at) => {
      const [own, before, after] = [refs[at], refs[at - 1], refs[at + 1]];
      if (own === undefined) return;
      const links = `${link("Prev", before)}${link("Next", after)}`;
      file.put(
        own,
        `<</Title${textObject(title)}/Parent ${refText(parent)}/Dest[${refText(page)}/Fit]${links}>>`,
      );
    });
    const ends = `${link("First", refs[0])}${link("Last", refs.at(-1))}`;
    file.put(parent, `<</Type/Outlines/Count ${refs.length}${ends}>>`);
    return parent;
  }

  private information(): string {
    const made = dateObject(this.facts.preparedAt);
    const title = textObject(this.facts.title);
    return `<</Title${title}/Creator(Trunnion)/Producer(Trunnion, with pdf-lib)/CreationDate${made}/ModDate${made}>>`;
  }
}

import { createHash } from "node:crypto";
import {
  PDFContext,
  type PDFDict,
  PDFHexString,
  PDFName,
  PDFRawStream,
  type PDFRef,
  PDFStreamWriter,
  PDFString,
} from "pdf-lib";
import type { ContentWriter } from "../content/content-writer";
import type { Faces } from "../font/face";
import { writeFont } from "../font/font-object";
import { alwaysUsed } from "../font/repertoire";
import { AttachmentWriter } from "./attachment";
import { FormWriter } from "./form";
import { RawObject, refText } from "./raw-object";
import { type PackedStream, packAside, streamOf } from "./stream";
import { StructureWriter } from "./structure";

/** Pages under one node of the page tree; a flat tree of thousands is slow to open. */
const pagesPerNode = 32;
/** Objects written between two turns of the event loop. */
const objectsPerTurn = 500;

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
  readonly ref: PDFRef;
  readonly kids: PDFRef[];
}

/**
 * The PDF file round the pages' content: page tree, fonts, bookmarks, title. Written with pdf-lib's objects
 * rather than its `PDFDocument`, whose page calls cost more than all the drawing.
 */
export class SheetDocument {
  readonly context = PDFContext.create();
  private readonly root = this.context.nextRef();
  private readonly resources = this.context.nextRef();
  private readonly regular = this.context.nextRef();
  private readonly bold = this.context.nextRef();
  private readonly drawings: { [name: string]: PDFRef } = {};
  private readonly nodes: PageNode[] = [];
  private readonly bookmarks: { readonly title: string; readonly page: PDFRef }[] = [];
  private groups = alwaysUsed;
  private pageCount = 0;
  private packing: Promise<void>[] = [];
  private readonly structure: StructureWriter | undefined;
  private readonly form: FormWriter | undefined;
  private readonly attachments: AttachmentWriter;
  private hasAttachments = false;

  constructor(
    private readonly facts: DocumentFacts,
    private readonly faces: Faces,
  ) {
    const { context } = this;
    this.structure = facts.tagged ? new StructureWriter(context) : undefined;
    const tell = this.structure?.tellWidget ?? (() => undefined);
    this.form = facts.fillable ? new FormWriter(context, tell) : undefined;
    this.attachments = new AttachmentWriter(context, PDFString.fromDate(facts.preparedAt).asString());
  }

  /** A drawing every page may place by name. */
  addDrawing(name: string, drawing: PackedStream): void {
    this.drawings[name] = this.context.register(streamOf(this.context, drawing));
  }

  /** A JPEG picture (baseline or progressive, 8 bit, three components) every page may place by name. */
  addPicture(name: string, { jpeg, width, height }: Picture): void {
    const dict = this.context.obj({
      Type: "XObject",
      Subtype: "Image",
      Width: width,
      Height: height,
      ColorSpace: "DeviceRGB",
      BitsPerComponent: 8,
      Filter: "DCTDecode",
      Length: jpeg.length,
    });
    this.drawings[name] = this.context.register(PDFRawStream.of(dict, jpeg));
  }

  /** The finished pages of one car, with its bookmark; fields, structure and its JSON where the file has them. */
  addCar(title: string, pages: readonly ContentWriter[], parts?: CarParts): void {
    const { structure, form } = this;
    // Before the pages' bytes are taken, which ends their last mark.
    const keys = pages.map(() => structure?.pageKey());
    const refs = pages.map(() => this.context.nextRef());
    const placed = pages.map((page, at) => ({
      page,
      key: keys[at],
      ref: refs[at] ?? this.context.nextRef(),
    }));
    structure?.addCar(
      title,
      placed.map(({ page, key = 0, ref }) => ({ ref, key, nodes: page.structure })),
    );
    const widgets = form?.addCar(
      parts?.number ?? "",
      placed.map(({ page, ref }) => ({ ref, fields: page.fields })),
    );
    structure?.settleForms();
    placed.forEach(({ page, key, ref }, at) => {
      this.addPage(page, ref, { key, widgets: widgets?.[at] ?? [] });
    });
    const [first] = refs;
    if (first !== undefined) this.bookmarks.push({ title, page: first });
    if (parts === undefined) return;
    this.hasAttachments = true;
    const name = `no-${parts.number.replace(/[^A-Za-z0-9]+/g, "-") || "none"}`;
    this.packing.push(this.attachments.add(name, `What the sheet of ${title} says`, parts.json));
  }

  /** Waits until the pages given so far are compressed, so that not more than a few lie about unpacked. */
  async settle(): Promise<void> {
    const packing = this.packing;
    this.packing = [];
    await Promise.all(packing);
  }

  async bytes(): Promise<Uint8Array> {
    const { context, faces } = this;
    await this.settle();
    writeFont(context, this.regular, faces.regular, this.groups);
    writeFont(context, this.bold, faces.bold, this.groups);
    context.assign(
      this.resources,
      context.obj({ Font: { F1: this.regular, F2: this.bold }, XObject: this.drawings }),
    );
    this.writePageTree();
    context.trailerInfo.Root = context.register(this.catalog());
    context.trailerInfo.Info = context.register(this.information());
    const digest = createHash("sha256").update(this.facts.identity).digest("hex").slice(0, 32);
    context.trailerInfo.ID = context.obj([PDFHexString.of(digest), PDFHexString.of(digest)]);
    return PDFStreamWriter.forContext(context, objectsPerTurn, true, objectsPerTurn).serializeToBuffer();
  }

  private addPage(
    page: ContentWriter,
    ref: PDFRef,
    { key, widgets }: { readonly key: number | undefined; readonly widgets: readonly PDFRef[] },
  ): void {
    this.groups |= page.groups;
    if (this.pageCount % pagesPerNode === 0) this.nodes.push({ ref: this.context.nextRef(), kids: [] });
    const node = this.nodes.at(-1);
    if (node === undefined) throw new Error("a page has no node in the page tree");
    const { width, height } = this.facts;
    const contents = this.context.nextRef();
    this.packing.push(
      packAside(page.bytes()).then((packed) => this.context.assign(contents, streamOf(this.context, packed))),
    );
    const dict = this.context.obj({
      Type: "Page",
      Parent: node.ref,
      MediaBox: [0, 0, width, height],
      Resources: this.resources,
      Contents: contents,
    });
    if (widgets.length > 0)
      dict.set(PDFName.of("Annots"), new RawObject(`[${widgets.map(refText).join(" ")}]`));
    if (key !== undefined) {
      dict.set(PDFName.of("StructParents"), new RawObject(String(key)));
      dict.set(PDFName.of("Tabs"), PDFName.of("S"));
    }
    this.context.assign(ref, dict);
    node.kids.push(ref);
    this.pageCount++;
  }

  private writePageTree(): void {
    const { context, nodes } = this;
    for (const { ref, kids } of nodes) {
      context.assign(ref, context.obj({ Type: "Pages", Parent: this.root, Kids: kids, Count: kids.length }));
    }
    const kids = nodes.map((node) => node.ref);
    context.assign(this.root, context.obj({ Type: "Pages", Kids: kids, Count: this.pageCount }));
  }

  private catalog() {
    const catalog = this.context.obj({
      Type: "Catalog",
      Pages: this.root,
      Lang: PDFString.of("en-GB"),
      // Shrinking to fit would make a limit on a printed bracket and a plate look other than drawn.
      ViewerPreferences: { DisplayDocTitle: true, PrintScaling: "None" },
      PageMode: "UseOutlines",
      Outlines: this.writeBookmarks(),
    });
    if (this.form) catalog.set(PDFName.of("AcroForm"), this.form.finish());
    if (this.structure) {
      catalog.set(PDFName.of("MarkInfo"), new RawObject("<</Marked true>>"));
      catalog.set(PDFName.of("StructTreeRoot"), this.structure.finish());
    }
    if (this.hasAttachments) {
      const { names, associated } = this.attachments.finish();
      catalog.set(PDFName.of("Names"), names);
      catalog.set(PDFName.of("AF"), associated);
    }
    return catalog;
  }

  private writeBookmarks(): PDFRef {
    const { context, bookmarks } = this;
    const parent = context.nextRef();
    const refs = bookmarks.map(() => context.nextRef());
    bookmarks.forEach(({ title, page }, at) => {
      const item = context.obj({ Title: PDFHexString.fromText(title), Parent: parent, Dest: [page, "Fit"] });
      setIfAny(item, "Prev", refs[at - 1]);
      setIfAny(item, "Next", refs[at + 1]);
      const ref = refs[at];
      if (ref !== undefined) context.assign(ref, item);
    });
    const outlines = context.obj({ Type: "Outlines", Count: refs.length });
    setIfAny(outlines, "First", refs[0]);
    setIfAny(outlines, "Last", refs.at(-1));
    context.assign(parent, outlines);
    return parent;
  }

  private information() {
    const made = PDFString.fromDate(this.facts.preparedAt);
    const information = this.context.obj({ CreationDate: made, ModDate: made });
    information.set(PDFName.of("Title"), PDFHexString.fromText(this.facts.title));
    information.set(PDFName.of("Creator"), PDFString.of("Trunnion"));
    information.set(PDFName.of("Producer"), PDFString.of("Trunnion, with pdf-lib"));
    return information;
  }
}

function setIfAny(dict: PDFDict, name: string, ref: PDFRef | undefined): void {
  if (ref !== undefined) dict.set(PDFName.of(name), ref);
}

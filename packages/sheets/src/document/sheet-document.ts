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
import { type PackedStream, packAside, streamOf } from "./stream";

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

  constructor(
    private readonly facts: DocumentFacts,
    private readonly faces: Faces,
  ) {}

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

  /** The finished pages of one car, with its bookmark. */
  addCar(title: string, pages: readonly ContentWriter[]): void {
    const refs = pages.map((page) => this.addPage(page));
    const [first] = refs;
    if (first !== undefined) this.bookmarks.push({ title, page: first });
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

  private addPage(page: ContentWriter): PDFRef {
    this.groups |= page.groups;
    if (this.pageCount % pagesPerNode === 0) this.nodes.push({ ref: this.context.nextRef(), kids: [] });
    const node = this.nodes.at(-1);
    if (node === undefined) throw new Error("a page has no node in the page tree");
    const { width, height } = this.facts;
    const contents = this.context.nextRef();
    this.packing.push(
      packAside(page.bytes()).then((packed) => this.context.assign(contents, streamOf(this.context, packed))),
    );
    const ref = this.context.register(
      this.context.obj({
        Type: "Page",
        Parent: node.ref,
        MediaBox: [0, 0, width, height],
        Resources: this.resources,
        Contents: contents,
      }),
    );
    node.kids.push(ref);
    this.pageCount++;
    return ref;
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
    return this.context.obj({
      Type: "Catalog",
      Pages: this.root,
      Lang: PDFString.of("en-GB"),
      // Shrinking to fit would make a limit on a printed bracket and a plate look other than drawn.
      ViewerPreferences: { DisplayDocTitle: true, PrintScaling: "None" },
      PageMode: "UseOutlines",
      Outlines: this.writeBookmarks(),
    });
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

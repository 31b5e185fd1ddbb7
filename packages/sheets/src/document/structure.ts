import type { PDFContext, PDFRef } from "pdf-lib";
import type { StructureNode } from "../content/content-writer";
import { RawObject, refText, textObject } from "./raw-object";

/** A page as its structure needs it. */
export interface StructurePage {
  readonly ref: PDFRef;
  /** Key of the page in the parent tree. */
  readonly key: number;
  readonly nodes: readonly StructureNode[];
}

interface FormPart {
  readonly ref: PDFRef;
  readonly key: number;
  readonly parent: PDFRef;
  readonly page: PDFRef;
  readonly widgets: PDFRef[];
}

/**
 * What a screen reader is told: sections, headings, paragraphs, lists, tables, figures and form fields, in reading
 * order. No standard's conformance is claimed.
 */
export class StructureWriter {
  private readonly root: PDFRef;
  private readonly document: PDFRef;
  private readonly sections: PDFRef[] = [];
  private readonly parents: string[] = [];
  private readonly forms = new Map<string, FormPart>();

  constructor(private readonly context: PDFContext) {
    this.root = context.nextRef();
    this.document = context.nextRef();
  }

  /** A key for a page. */
  pageKey(): number {
    return this.parents.push("") - 1;
  }

  /** Makes room for one car's fields, before they are written. */
  addCar(title: string, pages: readonly StructurePage[]): void {
    const section = this.context.nextRef();
    const kids = pages.flatMap((page) => {
      const marks: PDFRef[] = [];
      const refs = page.nodes.map((node) => this.node(node, section, { page, marks }));
      this.parents[page.key] = `[${marks.map(refText).join(" ")}]`;
      return refs;
    });
    this.context.assign(
      section,
      new RawObject(
        `<</S/Sect/T${textObject(title)}/P ${refText(this.document)}/K[${kids.map(refText).join(" ")}]>>`,
      ),
    );
    this.sections.push(section);
  }

  /** Tells of a widget; answers its key in the parent tree. */
  readonly tellWidget = (page: PDFRef, field: string, widget: PDFRef): number | undefined => {
    const form = this.forms.get(`${page.objectNumber} ${field}`);
    form?.widgets.push(widget);
    return form?.key;
  };

  /** Fields of the car written last are known now. */
  settleForms(): void {
    for (const { ref, parent, page, widgets } of this.forms.values()) {
      const kids = widgets.map((widget) => `<</Type/OBJR/Obj ${refText(widget)}>>`).join("");
      this.context.assign(
        ref,
        new RawObject(`<</S/Form/P ${refText(parent)}/Pg ${refText(page)}/K[${kids}]>>`),
      );
    }
    this.forms.clear();
  }

  /** The structure tree's root, for the catalogue. */
  finish(): PDFRef {
    const { context, parents } = this;
    const kids = this.sections.map(refText).join(" ");
    context.assign(this.document, new RawObject(`<</S/Document/P ${refText(this.root)}/K[${kids}]>>`));
    const numbers = parents.map((held, key) => `${key} ${held === "" ? "null" : held}`).join(" ");
    const tree = context.register(new RawObject(`<</Nums[${numbers}]>>`));
    context.assign(
      this.root,
      new RawObject(
        `<</Type/StructTreeRoot/K ${refText(this.document)}/ParentTree ${refText(tree)}/ParentTreeNextKey ${parents.length}>>`,
      ),
    );
    return this.root;
  }

  private node(
    node: StructureNode,
    parent: PDFRef,
    place: { readonly page: StructurePage; readonly marks: PDFRef[] },
  ): PDFRef {
    const ref = this.context.nextRef();
    const { page, marks } = place;
    if ("field" in node) {
      const key = this.parents.push(refText(ref)) - 1;
      this.forms.set(`${page.ref.objectNumber} ${node.field}`, {
        ref,
        key,
        parent,
        page: page.ref,
        widgets: [],
      });
      return ref;
    }
    if ("parts" in node) {
      const kids = node.parts.map((part) => this.node(part, ref, place));
      this.context.assign(
        ref,
        new RawObject(`<</S/${node.role}/P ${refText(parent)}/K[${kids.map(refText).join(" ")}]>>`),
      );
      return ref;
    }
    marks[node.mark] = ref;
    const alternative = node.alternative === undefined ? "" : `/Alt${textObject(node.alternative)}`;
    this.context.assign(
      ref,
      new RawObject(
        `<</S/${node.role}/P ${refText(parent)}/Pg ${refText(page.ref)}${alternative}/K ${node.mark}>>`,
      ),
    );
    return ref;
  }
}

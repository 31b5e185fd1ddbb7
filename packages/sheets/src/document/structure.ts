import type { StructureNode } from "../content/content-writer";
import type { PdfFile } from "./pdf-file";
import { type Ref, refsText, refText, textObject } from "./pdf-text";

/** A page as its structure needs it. */
export interface StructurePage {
  readonly ref: Ref;
  /** Key of the page in the parent tree. */
  readonly key: number;
  readonly nodes: readonly StructureNode[];
}

interface FormPart {
  readonly ref: Ref;
  readonly key: number;
  readonly parent: Ref;
  readonly page: Ref;
  readonly widgets: Ref[];
}

/**
 * What a screen reader is told: sections, headings, paragraphs, lists, tables, figures and form fields, in reading
 * order. No standard's conformance is claimed.
 */
export class StructureWriter {
  private readonly root: Ref;
  private readonly document: Ref;
  private readonly sections: Ref[] = [];
  private readonly parents: string[] = [];
  private readonly forms = new Map<string, FormPart>();

  constructor(private readonly file: PdfFile) {
    this.root = file.nextRef();
    this.document = file.nextRef();
  }

  /** A key for a page. */
  pageKey(): number {
    return this.parents.push("") - 1;
  }

  /** Makes room for one car's fields, before they are written. */
  addCar(title: string, pages: readonly StructurePage[]): void {
    const section = this.file.nextRef();
    const kids = pages.flatMap((page) => {
      const marks: Ref[] = [];
      const refs = page.nodes.map((node) => this.node(node, section, { page, marks }));
      this.parents[page.key] = refsText(marks);
      return refs;
    });
    this.file.put(
      section,
      `<</S/Sect/T${textObject(title)}/P ${refText(this.document)}/K${refsText(kids)}>>`,
    );
    this.sections.push(section);
  }

  /** Tells of a widget; answers its key in the parent tree. */
  readonly tellWidget = (page: Ref, field: string, widget: Ref): number | undefined => {
    const form = this.forms.get(`${page} ${field}`);
    form?.widgets.push(widget);
    return form?.key;
  };

  /** Fields of the car written last are known now. */
  settleForms(): void {
    for (const { ref, parent, page, widgets } of this.forms.values()) {
      const kids = widgets.map((widget) => `<</Type/OBJR/Obj ${refText(widget)}>>`).join("");
      this.file.put(ref, `<</S/Form/P ${refText(parent)}/Pg ${refText(page)}/K[${kids}]>>`);
    }
    this.forms.clear();
  }

  /** The structure tree's root, for the catalogue. */
  finish(): Ref {
    const { file, parents } = this;
    const kids = this.sections.map(refText).join(" ");
    file.put(this.document, `<</S/Document/P ${refText(this.root)}/K[${kids}]>>`);
    const numbers = parents.map((held, key) => `${key} ${held === "" ? "null" : held}`).join(" ");
    const tree = file.add(`<</Nums[${numbers}]>>`);
    file.put(
      this.root,
      `<</Type/StructTreeRoot/K ${refText(this.document)}/ParentTree ${refText(tree)}/ParentTreeNextKey ${parents.length}>>`,
    );
    return this.root;
  }

  private node(
    node: StructureNode,
    parent: Ref,
    place: { readonly page: StructurePage; readonly marks: Ref[] },
  ): Ref {
    const ref = this.file.nextRef();
    const { page, marks } = place;
    if ("field" in node) {
      const key = this.parents.push(refText(ref)) - 1;
      this.forms.set(`${page.ref} ${node.field}`, {
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
      this.file.put(ref, `<</S/${node.role}/P ${refText(parent)}/K${refsText(kids)}>>`);
      return ref;
    }
    marks[node.mark] = ref;
    const alternative = node.alternative === undefined ? "" : `/Alt${textObject(node.alternative)}`;
    this.file.put(
      ref,
      `<</S/${node.role}/P ${refText(parent)}/Pg ${refText(page.ref)}${alternative}/K ${node.mark}>>`,
    );
    return ref;
  }
}

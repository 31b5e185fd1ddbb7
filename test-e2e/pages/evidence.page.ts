import type { Locator, Page } from "@playwright/test";

/** A file as a browser's file chooser hands it over. */
export interface ChosenFile {
  readonly name: string;
  readonly mimeType: string;
  readonly buffer: Buffer;
}

/** Run in the page: draws a picture that no other test draws, and makes a JPEG of it. */
const draw = (seed: number) => `new Promise((resolve) => {
  const canvas = document.createElement("canvas");
  canvas.width = 400;
  canvas.height = 300;
  const pen = canvas.getContext("2d");
  pen.fillStyle = "hsl(" + (${seed} % 360) + " 40% 50%)";
  pen.fillRect(0, 0, 400, 300);
  pen.fillStyle = "white";
  pen.font = "48px sans-serif";
  pen.fillText("${seed}", 20, 60);
  canvas.toBlob((blob) => blob.arrayBuffer().then((bytes) =>
    resolve(btoa(Array.from(new Uint8Array(bytes), (byte) => String.fromCharCode(byte)).join("")))), "image/jpeg");
})`;

/** A car's photos and documents, what supports one thing, and the page of one piece. */
export class EvidencePage {
  readonly form: Locator;
  readonly add: Locator;
  readonly cards: Locator;
  readonly refusal: Locator;
  readonly large: Locator;

  constructor(readonly page: Page) {
    this.form = page.getByRole("region", { name: "Add photos or documents" });
    this.add = this.form.getByRole("button", { name: "Add to the record" });
    this.cards = page.locator(".evidence-card");
    this.refusal = this.form.getByRole("alert");
    this.large = page.locator("img.evidence-large");
  }

  async open(club: string, car: string): Promise<this> {
    await this.page.goto(`/club/${club}/car/${encodeURIComponent(car)}/evidence`);
    return this;
  }

  /** A JPEG of 400 by 300 pixels, different with every seed; drawn by the browser, so the page must be open. */
  async photo(name: string, seed: number): Promise<ChosenFile> {
    const made = (await this.page.evaluate(draw(seed))) as string;
    return { name, mimeType: "image/jpeg", buffer: Buffer.from(made, "base64") };
  }

  async choose(files: readonly ChosenFile[], caption: string): Promise<void> {
    await this.form.getByLabel("Photos or documents").setInputFiles([...files]);
    await this.form.getByLabel("What it shows").fill(caption);
  }

  card(caption: string): Locator {
    return this.cards.filter({ hasText: caption });
  }

  /** Whether a picture of the page came and was decoded. */
  async isDrawn(picture: Locator): Promise<boolean> {
    return picture.evaluate((element: unknown) => {
      const image = element as { readonly naturalWidth: number; decode(): Promise<void> };
      return image.decode().then(
        () => image.naturalWidth > 0,
        () => false,
      );
    });
  }
}

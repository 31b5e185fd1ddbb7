/** What has to be undone at the end, the latest first. */
export class Undoing {
  readonly #steps: (() => Promise<void>)[] = [];
  #running: Promise<void> | undefined;

  /** What is added once the end has begun is undone at once. */
  add(step: () => Promise<void>): void {
    if (this.#running) void attempt(step);
    else this.#steps.push(step);
  }

  /** Undoes everything, once; a step that fails does not keep the others from being tried. */
  run(): Promise<void> {
    this.#running ??= this.#all();
    return this.#running;
  }

  async #all(): Promise<void> {
    for (const step of this.#steps.splice(0).reverse()) await attempt(step);
  }
}

async function attempt(step: () => Promise<void>): Promise<void> {
  try {
    await step();
  } catch (error) {
    console.error(error);
  }
}

import type { Page } from "@playwright/test";

/** A file the server sent in answer to a click. */
export interface SentFile {
  readonly status: number;
  readonly type: string;
  readonly bytes: Uint8Array;
}

/**
 * Does something that makes the page ask for a file, and takes the file off the wire: whether a browser shows a PDF
 * or saves it depends on how it was built. The page stays.
 */
export async function fileFrom(page: Page, address: RegExp, act: () => Promise<void>): Promise<SentFile> {
  let take: (file: SentFile) => void;
  let fail: (reason: unknown) => void;
  const sent = new Promise<SentFile>((resolve, reject) => {
    take = resolve;
    fail = reject;
  });
  await page.route(address, async (route) => {
    try {
      const answer = await route.fetch();
      const type = answer.headers()["content-type"] ?? "";
      take({ status: answer.status(), type, bytes: await answer.body() });
      await route.fulfill({ status: 204 });
    } catch (error) {
      fail(error);
    }
  });
  await act();
  const file = await sent;
  await page.unroute(address);
  return file;
}

/** Drops a file on the page, as a hand does from its desktop. */
import type { Page } from 'playwright-core';

export async function drop(page: Page, name: string, bytes: Uint8Array): Promise<void> {
  const data = await page.evaluateHandle(
    ([title, text]) => {
      const transfer = new DataTransfer();
      const binary = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
      transfer.items.add(new File([binary], title));
      return transfer;
    },
    [name, Buffer.from(bytes).toString('base64')] as const,
  );
  await page.dispatchEvent('body', 'dragenter', { dataTransfer: data });
  await page.dispatchEvent('body', 'drop', { dataTransfer: data });
}

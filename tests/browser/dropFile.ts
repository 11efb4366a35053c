import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import type { JSHandle, Page } from '@playwright/test';

const types: Readonly<Record<string, string>> = { jpg: 'image/jpeg', svg: 'image/svg+xml' };

/** Carries a file over the window, as a file manager does; `letFall` lets it go there. */
export async function carryOver(page: Page, path: string): Promise<{ readonly letFall: () => Promise<void> }> {
  const name = basename(path);
  const type = types[name.split('.').at(-1)!] ?? '';
  const encoded = readFileSync(path).toString('base64');
  const dataTransfer: JSHandle = await page.evaluateHandle(
    ([bytes, called, kind]) => {
      const raw = Uint8Array.from(atob(bytes), (letter) => letter.charCodeAt(0));
      const transfer = new DataTransfer();
      transfer.items.add(new File([raw], called, { type: kind }));
      return transfer;
    },
    [encoded, name, type] as const,
  );
  await page.dispatchEvent('main', 'dragover', { dataTransfer });
  return { letFall: () => page.dispatchEvent('main', 'drop', { dataTransfer }) };
}

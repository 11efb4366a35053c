import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, type Locator, type Page, test } from '@playwright/test';
import { choose, root } from './app.ts';

/**
 * Does what a hand does and counts it, as docs/hallway.md counts: a click or drag, a key or chord, a field filled in and
 * a file chosen are one action each.
 */
export class Hand {
  #count = 0;
  constructor(readonly page: Page) {}

  get actions(): number {
    return this.#count;
  }

  async click(target: Locator): Promise<void> {
    this.#count++;
    await target.click();
  }

  async clickAt(x: number, y: number): Promise<void> {
    this.#count++;
    await this.page.mouse.click(x, y);
  }

  async drag(from: { readonly x: number; readonly y: number }, to: { readonly x: number; readonly y: number }) {
    this.#count++;
    await this.page.mouse.move(from.x, from.y);
    await this.page.mouse.down();
    await this.page.mouse.move((from.x + to.x) / 2, (from.y + to.y) / 2);
    await this.page.mouse.move(to.x, to.y);
    await this.page.mouse.up();
  }

  async press(key: string): Promise<void> {
    this.#count++;
    await this.page.keyboard.press(key);
  }

  /** Fills in a field by clicking into it, and leaves it. */
  async fill(field: Locator, text: string): Promise<void> {
    this.#count++;
    await field.click();
    await this.page.keyboard.press('Control+A');
    await this.page.keyboard.type(text);
    await this.page.keyboard.press('Tab');
  }

  /** Fills in a field that Tab, or Shift and Tab, comes to: no pointer. */
  async tabAndType(field: Locator, text: string, way: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
    this.#count++;
    await tabTo(field, way);
    await this.page.keyboard.press('Control+A');
    await this.page.keyboard.type(text);
    await this.page.keyboard.press('Tab');
  }

  /** Presses a button that Tab comes to: no pointer. */
  async tabAndPress(button: Locator, way: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
    this.#count++;
    await tabTo(button, way);
    await this.page.keyboard.press('Enter');
  }

  async file(path: string, ask: () => Promise<unknown>): Promise<void> {
    this.#count++;
    await choose(this.page, path, ask);
  }
}

/** Does a task with a hand of its own, and holds it to the script. */
export async function task(page: Page, number: number, way: 'mouse' | 'keys', act: (hand: Hand) => Promise<void>) {
  const hand = new Hand(page);
  await test.step(`task ${number}`, () => act(hand));
  expect(hand.actions, `actions of task ${number} by ${way}`).toBeLessThanOrEqual(allowed(number, way));
}

const MOST_TABS = 80;

/** Presses Tab until the focus is there, as one does who has no pointer. */
export async function tabTo(target: Locator, way: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
  await target.waitFor();
  // Found once: looking for it by its name again at every press takes longer than the presses.
  const found = await target.elementHandle();
  for (let presses = 0; presses <= MOST_TABS; presses++) {
    if (await found?.evaluate((element) => element === document.activeElement)) return;
    await target.page().keyboard.press(way);
  }
  throw new Error(`Tab does not come to ${target}.`);
}

/** How many actions the hallway script allows for a task. */
export function allowed(task: number, way: 'mouse' | 'keys'): number {
  const script = readFileSync(join(root, 'docs/hallway.md'), 'utf8');
  const row = script.split('\n').find((line) => line.startsWith(`| ${task} |`));
  const cells = (row ?? '').split('|').map((cell) => cell.trim());
  const count = Number(cells[way === 'mouse' ? 4 : 5]);
  expect(count, `a count for task ${task} in docs/hallway.md`).toBeGreaterThan(0);
  return count;
}

import type { MenuItemConstructorOptions } from 'electron';
import { expect, test } from 'vitest';
import { menuTemplate } from '../../src/main/electron/menu.ts';

const entries = (items: readonly MenuItemConstructorOptions[]): MenuItemConstructorOptions[] =>
  items.flatMap((item) => [item, ...(Array.isArray(item.submenu) ? entries(item.submenu) : [])]);

test('every entry of the menu is worded, in two languages that differ', () => {
  for (const mac of [false, true]) {
    const [english, german] = (['en', 'de'] as const).map((language) =>
      entries(menuTemplate(() => {}, mac, language)).filter(({ type }) => type !== 'separator'),
    );
    expect(english!.filter(({ label }) => label === undefined)).toEqual([]);
    expect(german!.map(({ role }) => role)).toEqual(english!.map(({ role }) => role));
    const alike = german!.flatMap(({ label }, at) => (label === english![at]!.label ? [label] : []));
    expect(alike).toEqual(mac ? ['Plumbweft'] : []);
  }
});

import type { MenuItemConstructorOptions } from 'electron';

/** What a menu entry asks of the page, by the page's own command names. */
export type Send = (command: string) => void;

/** The menu bar. Entries send the same commands as keys do; the page knows which apply now. */
export function menuTemplate(send: Send, mac: boolean, language: 'en' | 'de'): MenuItemConstructorOptions[] {
  const say = (en: string, de: string) => (language === 'de' ? de : en);
  const entry = (label: string, command: string, accelerator?: string): MenuItemConstructorOptions => ({
    label,
    ...(accelerator === undefined ? {} : { accelerator }),
    // The page handles the key itself; the menu only shows it.
    registerAccelerator: false,
    click: () => send(command),
  });
  // Elsewhere the system shows its recent documents by itself, or not at all.
  const recent: MenuItemConstructorOptions = {
    label: say('Opened lately', 'Zuletzt geöffnet'),
    role: 'recentDocuments',
    submenu: [{ role: 'clearRecentDocuments' }],
  };
  return [
    ...(mac ? [{ role: 'appMenu' } as const] : []),
    {
      label: say('&Piece', '&Stück'),
      submenu: [
        entry(say('Pieces', 'Stücke'), 'pieces', 'CmdOrCtrl+O'),
        ...(mac ? [recent] : []),
        { type: 'separator' },
        mac ? { role: 'close' } : { role: 'quit' },
      ],
    },
    {
      label: say('&Edit', '&Bearbeiten'),
      submenu: [
        entry(say('Undo', 'Rückgängig'), 'undo', 'CmdOrCtrl+Z'),
        entry(say('Redo', 'Wiederholen'), 'redo', 'CmdOrCtrl+Shift+Z'),
        { type: 'separator' },
        { role: 'cut' },
        { role: 'copy' },
        { role: 'paste' },
      ],
    },
    {
      label: say('&View', '&Ansicht'),
      submenu: [
        entry(say('Piece', 'Stück'), 'go-piece', 'CmdOrCtrl+1'),
        entry(say('Cartoon', 'Karton'), 'go-cartoon', 'CmdOrCtrl+2'),
        entry(say('Order of work', 'Arbeitsfolge'), 'go-order', 'CmdOrCtrl+3'),
        entry(say('Loom check', 'Messung'), 'go-check', 'CmdOrCtrl+4'),
        entry(say('Record', 'Verlauf'), 'go-record', 'CmdOrCtrl+5'),
        { type: 'separator' },
        { role: 'togglefullscreen' },
      ],
    },
    {
      label: say('&Help', '&Hilfe'),
      submenu: [
        entry(say('Find something to do', 'Etwas zu tun finden'), 'find', 'CmdOrCtrl+K'),
        entry(say('Words and keys', 'Wörter und Tasten'), 'help', 'F1'),
      ],
    },
  ];
}

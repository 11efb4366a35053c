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
  return [
    ...(mac ? [{ role: 'appMenu' } as const] : []),
    {
      label: say('&Piece', '&Stück'),
      submenu: [
        entry(say('Start a piece', 'Ein Stück beginnen'), 'start-piece'),
        entry(say('Open a folder…', 'Einen Ordner öffnen…'), 'open-folder'),
        entry(say('Bring in a zip…', 'Ein Zip hereinholen…'), 'import-piece'),
        entry(say('Export as a zip…', 'Als Zip ausgeben…'), 'export-piece'),
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
      submenu: [{ role: 'togglefullscreen' }, { role: 'reload' }],
    },
    {
      label: say('&Help', '&Hilfe'),
      submenu: [
        entry(say('Words and keys', 'Wörter und Tasten'), 'words-and-keys', 'F1'),
        entry(say('Copy a report for us', 'Einen Bericht für uns kopieren'), 'copy-report'),
      ],
    },
  ];
}

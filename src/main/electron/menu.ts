import type { MenuItemConstructorOptions } from 'electron';
import type { Settings } from '../../core/contract/hostApi.ts';

/** What a menu entry asks of the page, by the page's own command names. */
export type Send = (command: string) => void;

/**
 * The menu bar. Entries send the same commands as keys do; the page knows which apply now. What Electron does by itself
 * is worded here too: it would be labelled in English everywhere.
 */
export function menuTemplate(send: Send, mac: boolean, language: Settings['language']): MenuItemConstructorOptions[] {
  const say = (en: string, de: string) => (language === 'de' ? de : en);
  const entry = (label: string, command: string, accelerator?: string): MenuItemConstructorOptions => ({
    label,
    ...(accelerator === undefined ? {} : { accelerator }),
    // The page handles the key itself; the menu only shows it.
    registerAccelerator: false,
    click: () => send(command),
  });
  const own = (role: MenuItemConstructorOptions['role'] & string, label: string): MenuItemConstructorOptions => ({
    role,
    label,
  });
  const line: MenuItemConstructorOptions = { type: 'separator' };
  const quit = own('quit', say('Quit Plumbweft', 'Plumbweft beenden'));
  const program: MenuItemConstructorOptions = {
    label: 'Plumbweft',
    submenu: [
      own('about', say('About Plumbweft', 'Über Plumbweft')),
      line,
      own('services', say('Services', 'Dienste')),
      line,
      own('hide', say('Hide Plumbweft', 'Plumbweft ausblenden')),
      own('hideOthers', say('Hide Others', 'Andere ausblenden')),
      own('unhide', say('Show All', 'Alle einblenden')),
      line,
      quit,
    ],
  };
  // Elsewhere the system shows its recent documents by itself, or not at all.
  const recent: MenuItemConstructorOptions = {
    label: say('Opened lately', 'Zuletzt geöffnet'),
    role: 'recentDocuments',
    submenu: [own('clearRecentDocuments', say('Clear this list', 'Diese Liste leeren'))],
  };
  return [
    ...(mac ? [program] : []),
    {
      label: say('&Piece', '&Stück'),
      submenu: [
        entry(say('Pieces', 'Stücke'), 'pieces', 'CmdOrCtrl+O'),
        ...(mac ? [recent] : []),
        line,
        mac ? own('close', say('Close the window', 'Fenster schließen')) : quit,
      ],
    },
    {
      label: say('&Edit', '&Bearbeiten'),
      submenu: [
        entry(say('Undo', 'Rückgängig'), 'undo', 'CmdOrCtrl+Z'),
        entry(say('Redo', 'Wiederholen'), 'redo', 'CmdOrCtrl+Shift+Z'),
        line,
        own('cut', say('Cut', 'Ausschneiden')),
        own('copy', say('Copy', 'Kopieren')),
        own('paste', say('Paste', 'Einfügen')),
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
        line,
        own('togglefullscreen', say('Full screen', 'Vollbild')),
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

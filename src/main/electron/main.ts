import { join, resolve } from 'node:path';
import {
  app,
  BrowserWindow,
  dialog,
  ipcMain,
  Menu,
  Notification,
  nativeTheme,
  protocol,
  screen,
  session,
  shell,
} from 'electron';
import type { Settings } from '../../core/contract/hostApi.ts';
import { EVENT_CHANNEL } from '../../core/contract/preloadBridge.ts';
import { tellIn } from '../../core/words/telling.ts';
import { catchLastResort, notStarted } from '../log/lastResort.ts';
import { openLog } from '../log/log.ts';
import { readSettings } from '../service/ownDocuments.ts';
import { findPlaces } from '../service/places.ts';
import { realStorePorts, VISION_SECONDS } from '../service/realPorts.ts';
import { createService, type HostService } from '../service/service.ts';
import type { ShellPorts } from '../service/servicePorts.ts';
import { thisProcess } from '../store/thisProcess.ts';
import { answerCalls } from './answerCalls.ts';
import { PAGE_PREFIX, schemePrivileges, serveApp } from './appProtocol.ts';
import { endNotices } from './endNotices.ts';
import { followLanguage } from './followLanguage.ts';
import { guardContents, guardSession } from './guardPages.ts';
import { menuTemplate } from './menu.ts';
import { OpenedFiles } from './openedFiles.ts';
import { windowOptions } from './windowOptions.ts';
import { readWindowState, writeWindowState } from './windowState.ts';

const root = resolve(import.meta.dirname, '../..');
const places = findPlaces(root);
const log = openLog(join(places.data, 'log'), () => new Date());

let window: BrowserWindow | null = null;
let service: HostService | null = null;

const tell = (event: unknown) => {
  if (window !== null && !window.isDestroyed()) window.webContents.send(EVENT_CHANNEL, event);
};

const store = realStorePorts();
const shellPorts: ShellPorts = {
  name: 'electron',
  version: app.getVersion(),
  why: 'the Electron runtime is here',
  languages: () => app.getPreferredSystemLanguages(),
  chooseFolder: async () => {
    const chosen = await dialog.showOpenDialog({ properties: ['openDirectory', 'createDirectory'] });
    return chosen.canceled ? null : (chosen.filePaths[0] ?? null);
  },
  chooseSaveFile: async (name) => {
    const chosen = await dialog.showSaveDialog({ defaultPath: name });
    return chosen.canceled || chosen.filePath === '' ? null : chosen.filePath;
  },
  reveal: (path) => shell.showItemInFolder(path),
  opened: (path) => app.addRecentDocument(path),
};
const language = async () => (await readSettings({ store, places, log, shell: shellPorts })).language;

const opened = new OpenedFiles((path) => {
  void service?.openGiven(path).then(async (outcome) => {
    if (outcome.ok) return;
    const { sentence, remedy } = outcome.problem;
    const spoken = await language();
    void dialog.showMessageBox({ type: 'warning', message: tellIn(spoken, sentence), detail: tellIn(spoken, remedy) });
  });
});

function openWindow(): void {
  const statePath = join(places.data, 'window.json');
  const areas = screen.getAllDisplays().map((display) => display.workArea);
  const state = readWindowState(statePath, areas);
  const preload = join(import.meta.dirname, '../preload/preload.cjs');
  const made = new BrowserWindow(windowOptions(preload, state, nativeTheme.shouldUseDarkColors));
  window = made;
  if (state.maximised) made.maximize();
  made.once('ready-to-show', () => made.show());
  made.on('close', () => writeWindowState(statePath, { ...made.getNormalBounds(), maximised: made.isMaximized() }));
  made.on('closed', () => {
    window = null;
    opened.pageGone();
  });
  made.webContents.on('did-finish-load', () => opened.pageReady());
  void made.loadURL(PAGE_PREFIX);
}

function start(): void {
  guardSession(session.defaultSession);
  serveApp(protocol, join(root, 'out/renderer'));
  service = createService({
    store,
    owner: thisProcess('the app'),
    places,
    worker: { path: join(import.meta.dirname, 'visionWorker.js'), seconds: VISION_SECONDS },
    shell: shellPorts,
    log,
    tell,
  });
  let spoken: Settings['language'] | null = null;
  const speak = (next: Settings['language']) => {
    if (next === spoken) return;
    spoken = next;
    const template = menuTemplate((command) => tell({ kind: 'command', command }), process.platform === 'darwin', next);
    Menu.setApplicationMenu(Menu.buildFromTemplate(template));
  };
  const noticed = endNotices(service, {
    now: () => performance.now(),
    away: () => window !== null && !window.isDestroyed() && !window.isFocused(),
    language,
    show(words) {
      if (!Notification.isSupported()) return;
      const notice = new Notification({ title: 'Plumbweft', body: words });
      notice.on('click', () => window?.show());
      notice.show();
    },
  });
  answerCalls(ipcMain, followLanguage(noticed, speak));
  void language().then((kept) => {
    // The weaver may have been quicker.
    if (spoken === null) speak(kept);
  });
  openWindow();
}

catchLastResort(log, () => app.exit(1));

// One program at a time: a second start brings the first one's window forward and ends.
if (!app.requestSingleInstanceLock()) {
  app.quit();
} else {
  protocol.registerSchemesAsPrivileged([schemePrivileges]);
  app.enableSandbox();
  app.on('web-contents-created', (_event, contents) => guardContents(contents));
  // In a clone the first argument is the program's folder.
  const given = (argv: readonly string[]) => argv.slice(app.isPackaged ? 1 : 2);
  opened.give(given(process.argv));
  app.on('open-file', (event, path) => {
    event.preventDefault();
    opened.give([path]);
  });
  app.on('second-instance', (_event, argv, folder) => {
    if (window?.isMinimized()) window.restore();
    window?.focus();
    opened.give(given(argv).map((arg) => (arg.startsWith('-') ? arg : resolve(folder, arg))));
  });
  app.on('activate', () => {
    if (window === null) openWindow();
  });
  app.on('window-all-closed', () => {
    if (process.platform !== 'darwin') app.quit();
  });
  let closing = false;
  app.on('will-quit', (event) => {
    if (closing || service === null) return;
    // Locks are let go before the program ends.
    closing = true;
    event.preventDefault();
    void service.close().finally(() => app.quit());
  });
  app
    .whenReady()
    .then(start)
    .catch((thrown: unknown) => {
      dialog.showErrorBox(...notStarted(log, thrown));
      app.exit(1);
    });
}

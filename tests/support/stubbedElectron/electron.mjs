// Stands in for Electron where its runtime isn't installed: it keeps what the main bundle asked of it, so that the
// test can look, and lets the test play the browser. Only what the bundle uses is here; a call to anything else fails.
import { EventEmitter } from 'node:events';

const record = {
  windows: [],
  schemes: [],
  sandbox: false,
  menus: [],
  quits: 0,
  single: true,
  sent: [],
  boxes: [],
  recent: [],
  notices: [],
};
globalThis.stubbed = record;

class Contents extends EventEmitter {
  url = '';
  openHandler = null;
  setWindowOpenHandler(handler) {
    this.openHandler = handler;
  }
  send(channel, value) {
    record.sent.push([channel, value]);
  }
}

export class BrowserWindow extends EventEmitter {
  webContents = new Contents();
  constructor(options) {
    super();
    this.options = options;
    record.windows.push(this);
    app.emit('web-contents-created', {}, this.webContents);
  }
  maximize() {}
  restore() {}
  focus() {
    record.focused = true;
  }
  show() {
    record.shown = true;
  }
  isMinimized = () => false;
  isMaximized = () => false;
  isDestroyed = () => false;
  isFocused = () => record.looking === true;
  getNormalBounds = () => ({ x: 10, y: 20, width: 1000, height: 700 });
  async loadURL(url) {
    this.webContents.url = url;
    this.webContents.emit('did-finish-load');
  }
}

export const app = Object.assign(new EventEmitter(), {
  getVersion: () => '0.1.0',
  getPreferredSystemLanguages: () => (process.env.STUB_LANGUAGES ?? 'en-US').split(','),
  isPackaged: process.env.STUB_PACKAGED === '1',
  requestSingleInstanceLock: () => process.env.STUB_SECOND !== '1',
  enableSandbox: () => {
    record.sandbox = true;
  },
  whenReady: () => Promise.resolve(),
  quit: () => {
    record.quits++;
  },
  exit: (code) => process.exit(code),
  addRecentDocument: (path) => record.recent.push(path),
});
record.app = app;
export const protocol = {
  registerSchemesAsPrivileged: (schemes) => record.schemes.push(...schemes),
  handle: (scheme, handler) => {
    record.protocol = { scheme, handler };
  },
};
const defaultSession = {
  setPermissionRequestHandler: (handler) => {
    record.permissionRequest = handler;
  },
  setPermissionCheckHandler: (handler) => {
    record.permissionCheck = handler;
  },
  setDevicePermissionHandler: (handler) => {
    record.devicePermission = handler;
  },
  webRequest: {
    onBeforeRequest: (handler) => {
      record.beforeRequest = handler;
    },
  },
};
export const session = { defaultSession };
export const ipcMain = {
  handle: (channel, handler) => {
    record.ipc = { channel, handler };
  },
};
export const Menu = {
  buildFromTemplate: (template) => template,
  setApplicationMenu: (menu) => record.menus.push(menu),
};
export class Notification extends EventEmitter {
  static isSupported = () => true;
  constructor(options) {
    super();
    this.options = options;
  }
  show() {
    record.notices.push(this.options);
  }
}
export const nativeTheme = { shouldUseDarkColors: false };
export const screen = { getAllDisplays: () => [{ workArea: { x: 0, y: 0, width: 1920, height: 1080 } }] };
export const shell = { showItemInFolder: () => undefined };
export const dialog = {
  showOpenDialog: async () => ({ canceled: true, filePaths: [] }),
  showSaveDialog: async () => ({ canceled: true, filePath: '' }),
  showMessageBox: async (box) => {
    record.boxes.push(box);
    return { response: 0 };
  },
  showErrorBox: (sentence, remedy) => console.log(JSON.stringify({ answer: { sentence, remedy } })),
};
export default {
  app,
  BrowserWindow,
  protocol,
  session,
  ipcMain,
  Menu,
  Notification,
  nativeTheme,
  screen,
  shell,
  dialog,
};

/** One rule of the shells, how it is taken out of the source, and the tests that must then fail. */
export interface Rule {
  readonly name: string;
  readonly file: string;
  /** A text that stands in the file exactly once, and what stands there instead when the rule is out. */
  readonly from: string;
  readonly to: string;
  readonly test: `tests/${string}.test.ts`;
}

const electron = 'tests/shells/electronMain.test.ts';
const local = 'tests/shells/localHost.test.ts';
const packing = 'tests/shells/packing.test.ts';
const powerCut = 'tests/store/powerCut.test.ts';
const lock = 'tests/store/pieceLock.test.ts';
const arriving = 'tests/import/importPiece.test.ts';

export const rules: readonly Rule[] = [
  ...(
    [
      ['contextIsolation: true', 'contextIsolation: false'],
      ['sandbox: true', 'sandbox: false'],
      ['nodeIntegration: false', 'nodeIntegration: true'],
      ['nodeIntegrationInWorker: false', 'nodeIntegrationInWorker: true'],
      ['webSecurity: true', 'webSecurity: false'],
      ['webviewTag: false', 'webviewTag: true'],
      ["devTools: process.env.PLUMBWEFT_DEVTOOLS === '1'", 'devTools: true'],
    ] as const
  ).map(
    ([from, to]) =>
      ({ name: `window: ${from}`, file: 'src/main/electron/windowOptions.ts', from, to, test: electron }) as const,
  ),
  ...(
    [
      ['RunAsNode: false', 'RunAsNode: true'],
      ['EnableCookieEncryption: true', 'EnableCookieEncryption: false'],
      ['EnableNodeOptionsEnvironmentVariable: false', 'EnableNodeOptionsEnvironmentVariable: true'],
      ['EnableNodeCliInspectArguments: false', 'EnableNodeCliInspectArguments: true'],
      ['EnableEmbeddedAsarIntegrityValidation: true', 'EnableEmbeddedAsarIntegrityValidation: false'],
      ['OnlyLoadAppFromAsar: true', 'OnlyLoadAppFromAsar: false'],
      ['LoadBrowserProcessSpecificV8Snapshot: false', 'LoadBrowserProcessSpecificV8Snapshot: true'],
      ['GrantFileProtocolExtraPrivileges: false', 'GrantFileProtocolExtraPrivileges: true'],
      ['strictlyRequireAllFuses: true', 'strictlyRequireAllFuses: false'],
    ] as const
  ).map(
    ([from, to]) => ({ name: `fuse: ${from}`, file: 'scripts/packaging/fuses.mjs', from, to, test: packing }) as const,
  ),
  {
    name: 'fuses are set at all',
    file: 'scripts/packaging/config.mjs',
    from: "await setFuses(executable, context.electronPlatformName === 'darwin' && context.arch === ARM64);",
    to: 'void setFuses;',
    test: packing,
  },
  {
    name: 'sandbox for every page',
    file: 'src/main/electron/main.ts',
    from: '  app.enableSandbox();\n',
    to: '',
    test: electron,
  },
  {
    name: 'one program at a time',
    file: 'src/main/electron/main.ts',
    from: '!app.requestSingleInstanceLock()',
    to: 'false',
    test: electron,
  },
  {
    name: 'guards on every page',
    file: 'src/main/electron/main.ts',
    from: 'guardContents(contents)',
    to: 'void contents',
    test: electron,
  },
  {
    name: 'own protocol: only its own address',
    file: 'src/main/electron/appProtocol.ts',
    from: "!isOwnPage(request.url) || request.method !== 'GET'",
    to: 'false',
    test: electron,
  },
  {
    name: 'own page by its whole prefix',
    file: 'src/main/electron/appProtocol.ts',
    from: 'address.startsWith(PAGE_PREFIX)',
    to: "address.startsWith('app://plumbweft')",
    test: electron,
  },
  {
    name: 'strict content policy (Electron)',
    file: 'src/main/page/pagePolicy.ts',
    from: '"script-src \'self\'"',
    to: "\"script-src 'self' 'unsafe-inline' https:\"",
    test: electron,
  },
  {
    name: 'strict content policy (local host)',
    file: 'src/main/page/pagePolicy.ts',
    from: '"frame-ancestors \'none\'"',
    to: '"frame-ancestors *"',
    test: local,
  },
  {
    name: 'camera for its own page only',
    file: 'src/main/electron/guardPages.ts',
    from: "permission !== 'media' || !isOwnPage(address)",
    to: "permission !== 'media'",
    test: electron,
  },
  {
    name: 'copying of words for its own page only',
    file: 'src/main/electron/guardPages.ts',
    from: 'permission === WRITE_WORDS && isOwnPage(address)',
    to: 'permission === WRITE_WORDS',
    test: electron,
  },
  {
    name: 'no other permission',
    file: 'src/main/electron/guardPages.ts',
    from: "permission !== 'media' || !isOwnPage(address)",
    to: '!isOwnPage(address)',
    test: electron,
  },
  {
    name: 'video only, no sound',
    file: 'src/main/electron/guardPages.ts',
    from: "kinds.every((kind) => kind === 'video')",
    to: 'true',
    test: electron,
  },
  {
    name: 'no devices',
    file: 'src/main/electron/guardPages.ts',
    from: 'setDevicePermissionHandler(() => false)',
    to: 'setDevicePermissionHandler(() => true)',
    test: electron,
  },
  {
    name: 'no requests to elsewhere',
    file: 'src/main/electron/guardPages.ts',
    from: 'answer({ cancel: !ours })',
    to: 'answer({ cancel: ours && !ours })',
    test: electron,
  },
  {
    name: 'no new windows',
    file: 'src/main/electron/guardPages.ts',
    from: "({ action: 'deny' })",
    to: "({ action: 'allow' })",
    test: electron,
  },
  {
    name: 'no navigation away',
    file: 'src/main/electron/guardPages.ts',
    from: 'if (!isOwnPage(address)) event.preventDefault();',
    to: 'void isOwnPage(address);',
    test: electron,
  },
  {
    name: 'no embedded pages',
    file: 'src/main/electron/guardPages.ts',
    from: "contents.on('will-attach-webview', (event) => event.preventDefault());",
    to: '',
    test: electron,
  },
  {
    name: 'sender checked on every call',
    file: 'src/main/electron/answerCalls.ts',
    from: 'if (!isOwnSender(event)) return refused;',
    to: 'void event;',
    test: electron,
  },
  {
    name: 'only the main frame',
    file: 'src/main/electron/answerCalls.ts',
    from: 'frame.parent === null && ',
    to: '',
    test: electron,
  },
  {
    name: 'parameters checked',
    file: 'src/main/service/service.ts',
    from: "if (!parsed.success || (bytes !== null && contract.bytes !== 'in')) {",
    to: 'if (false as boolean) {',
    test: electron,
  },
  {
    name: 'only calls of the contract',
    file: 'src/main/service/service.ts',
    from: 'Object.hasOwn(hostCalls, name)',
    to: 'name in hostCalls',
    test: electron,
  },
  {
    name: 'loopback: Host',
    file: 'src/main/local/localHost.ts',
    from: 'if (!allowedHosts.has(host))',
    to: 'if (!allowedHosts.has(host) && false)',
    test: local,
  },
  {
    name: 'loopback: Origin',
    file: 'src/main/local/localHost.ts',
    // biome-ignore lint/suspicious/noTemplateCurlyInString: it is source text
    from: '(origin !== undefined && origin !== `http://${host}`) ||',
    to: '',
    test: local,
  },
  {
    name: 'loopback: an origin is named',
    file: 'src/main/local/localHost.ts',
    from: 'if (origin === undefined) return say',
    to: 'if (origin === null) return say',
    test: local,
  },
  {
    name: 'loopback: no other site asks',
    file: 'src/main/local/localHost.ts',
    from: "site !== 'same-origin' && site !== 'none' && request.method !== 'GET'",
    to: 'false',
    test: local,
  },
  {
    name: 'loopback: no other site reads',
    file: 'src/main/local/localHost.ts',
    from: "site === 'cross-site' && request.headers['sec-fetch-mode'] !== 'navigate'",
    to: 'false',
    test: local,
  },
  {
    name: 'loopback: cookie',
    file: 'src/main/local/localHost.ts',
    from: 'if (!session.isKnown(request.headers.cookie)) {',
    to: 'if (false as boolean) {',
    test: local,
  },
  {
    name: 'loopback: token',
    file: 'src/main/local/localHost.ts',
    from: " && session.opens(path.slice('/start/'.length))",
    to: '',
    test: local,
  },
  {
    name: 'loopback: cookie out of reach of scripts',
    file: 'src/main/local/session.ts',
    from: 'HttpOnly; SameSite=Strict',
    to: 'SameSite=Lax',
    test: local,
  },
  {
    name: 'loopback: rate of calls',
    file: 'src/main/local/localHost.ts',
    from: 'if (!calls.allow())',
    to: 'if (!calls.allow() && false)',
    test: local,
  },
  {
    name: 'loopback: rate of strangers',
    file: 'src/main/local/localHost.ts',
    from: 'if (!strangers.allow())',
    to: 'if (!strangers.allow() && false)',
    test: local,
  },
  {
    name: 'loopback: size',
    file: 'src/main/local/readBody.ts',
    from: 'if (!(declared <= limit)) return null;',
    to: '',
    test: local,
  },
  {
    name: 'loopback: kind of body',
    file: 'src/main/local/localHost.ts',
    from: "request.headers['content-type'] !== 'application/octet-stream'",
    to: 'false',
    test: local,
  },
  {
    name: 'loopback: no cross-origin use',
    file: 'src/main/local/localHost.ts',
    from: "  'Cross-Origin-Resource-Policy': 'same-origin',\n",
    to: '',
    test: local,
  },
  {
    name: 'import: only names a piece has',
    file: 'src/main/exchange/importPiece.ts',
    from: "means === null || (inside === null && means.part !== 'ignored')",
    to: 'means === null && false',
    test: arriving,
  },
  {
    name: 'import: no links',
    file: 'src/main/exchange/importPiece.ts',
    from: "if (entry.kind === 'link')",
    to: "if (entry.kind === 'link' && false)",
    test: arriving,
  },
  {
    name: 'import: nothing twice',
    file: 'src/main/exchange/importPiece.ts',
    from: 'if (seen.has(at)) {',
    to: 'if (seen.has(at) && false) {',
    test: arriving,
  },
  {
    name: 'import: sizes',
    file: 'src/main/exchange/importPiece.ts',
    from: 'entry.size > limit || ',
    to: '',
    test: arriving,
  },
  {
    name: 'import: count',
    file: 'src/main/exchange/zipSource.ts',
    from: 'if (zip.entryCount > importLimits.entries) {',
    to: 'if (false as boolean) {',
    test: arriving,
  },
  {
    name: 'import: CRC',
    file: 'src/main/exchange/importPiece.ts',
    from: 'entry.crc !== null && crc !== entry.crc',
    to: 'false',
    test: arriving,
  },
  {
    name: 'import: photographs by their hash',
    file: 'src/main/exchange/importPiece.ts',
    from: "hash !== null && sum.digest('hex') !== hash",
    to: 'false',
    test: arriving,
  },
  {
    name: 'import: proved before it is let in',
    file: 'src/main/exchange/importPiece.ts',
    from: 'const proved = await prove(ports, temporary);',
    to: 'const proved = success(undefined); void prove;',
    test: arriving,
  },
  {
    name: 'store: flushed before the rename',
    file: 'src/main/files/writeWhole.ts',
    from: 'await file.flush();',
    to: 'void file.flush;',
    test: powerCut,
  },
  {
    name: 'store: folder flushed after the rename',
    file: 'src/main/files/writeWhole.ts',
    from: 'await files.flushFolder(folder);',
    to: '',
    test: powerCut,
  },
  {
    name: 'store: what is put aside stays there',
    file: 'src/main/store/verifyPiece.ts',
    from: '  await ports.files.flushFolder(dirname(path));\n',
    to: '',
    test: 'tests/store/faults.test.ts',
  },
  {
    name: 'store: nobody writes without the lock',
    file: 'src/main/store/pieceHandle.ts',
    from: 'if (await handle.lock.stillOurs()) return success(undefined);',
    to: 'if (handle.folder) return success(undefined);',
    test: lock,
  },
  {
    name: 'store: the lock of a running program is kept',
    file: 'src/main/store/pieceLock.ts',
    from: "if (found.state === 'held') {",
    to: "if (found.state === 'held' && false) {",
    test: lock,
  },
];

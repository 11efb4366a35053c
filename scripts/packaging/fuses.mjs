// The fuses of the packed program: bits in Electron's own binary that say, once and for all, what it will not do.
// What each means: https://www.electronjs.org/docs/latest/tutorial/fuses
import { FuseState, FuseV1Options, FuseVersion, flipFuses, getCurrentFuseWire } from '@electron/fuses';

/** What every fuse is set to, and why. */
export const fuses = {
  // The program must not be usable as a plain Node by whoever can start it.
  RunAsNode: false,
  // Nothing of ours lies in cookies; if something ever does, it lies there encrypted.
  EnableCookieEncryption: true,
  // No code comes in by NODE_OPTIONS …
  EnableNodeOptionsEnvironmentVariable: false,
  // … nor by a debugger.
  EnableNodeCliInspectArguments: false,
  // The archive is proved against its hash (macOS and Windows; Electron has no such proof on Linux) …
  EnableEmbeddedAsarIntegrityValidation: true,
  // … and no folder beside it is run instead.
  OnlyLoadAppFromAsar: true,
  // There is no snapshot of our own.
  LoadBrowserProcessSpecificV8Snapshot: false,
  // Pages come by our own protocol: `file:` gets nothing more than a browser gives it.
  GrantFileProtocolExtraPrivileges: false,
  // WebAssembly's bounds are kept by the processor's own traps, as in Electron's usual build.
  WasmTrapHandlers: true,
};

/** Fuses that came after the others: a runtime that hasn't got them is packed without. */
const young = ['WasmTrapHandlers'];

/**
 * Sets every fuse of a runtime's binary. Stops when one of ours isn't there, or one is there that nobody decided about.
 * @param executable the program file, or the `.app` folder of macOS.
 */
export async function setFuses(executable, resetAdHocDarwinSignature = false) {
  const there = await getCurrentFuseWire(executable);
  const missing = Object.keys(fuses).filter((name) => !(FuseV1Options[name] in there));
  const lacking = missing.filter((name) => !young.includes(name));
  if (lacking.length > 0) throw new Error(`This Electron has no fuse ${lacking.join(', ')}.`);
  const wanted = Object.entries(fuses).filter(([name]) => !missing.includes(name));
  await flipFuses(executable, {
    version: FuseVersion.V1,
    strictlyRequireAllFuses: true,
    resetAdHocDarwinSignature,
    ...Object.fromEntries(wanted.map(([name, on]) => [FuseV1Options[name], on])),
  });
}

/** Reads the fuses back: every one in the binary, with what it is and what it should be. */
export async function readFuses(executable) {
  const { version: _version, ...wire } = await getCurrentFuseWire(executable);
  return Object.entries(wire).map(([index, state]) => {
    const name = FuseV1Options[index] ?? `fuse ${index}`;
    const is = state === FuseState.ENABLE ? true : state === FuseState.DISABLE ? false : null;
    return { name, is, should: fuses[name] ?? null };
  });
}

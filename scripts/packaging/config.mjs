// How the program is packed (https://www.electron.build): one archive, the fuses set, pieces opened by their file.
import { join } from 'node:path';
import { setFuses } from './fuses.mjs';

/** Only the page uses these, and has them built in already. */
const builtIn = ['react', 'react-dom', 'scheduler', 'zustand', 'uplot', '@fontsource-variable'];

/** The program file in a packed folder. */
export function executableIn({ appOutDir, electronPlatformName, packager }) {
  const { productFilename } = packager.appInfo;
  if (electronPlatformName === 'linux') return join(appOutDir, packager.executableName);
  return join(appOutDir, `${productFilename}.${electronPlatformName === 'win32' ? 'exe' : 'app'}`);
}

const ARM64 = 3;

/**
 * @param runtime folder of an unpacked Electron; null lets the packer fetch one.
 * @param onPacked told the program file of each packed folder, before it is signed.
 */
export const packing = (runtime, work, onPacked) => ({
  appId: 'app.plumbweft.desktop',
  productName: 'Plumbweft',
  copyright: 'The Plumbweft contributors, Apache-2.0',
  ...(runtime === null ? {} : { electronDist: runtime }),
  directories: { buildResources: work, output: join(work, 'packed') },
  files: [
    'out/**',
    '!out/.built',
    '!out/main/accuracy.js',
    'resources/**',
    'package.json',
    'LICENSE',
    'NOTICES.md',
    ...builtIn.map((name) => `!node_modules/${name}/**`),
  ],
  asar: true,
  // Machine code can't be run from inside an archive; the two LGPL libraries stay files that can be exchanged.
  asarUnpack: ['node_modules/@img/**', 'node_modules/sharp/**', 'node_modules/libheif-js/**'],
  // Every package of ours runs as it was installed.
  npmRebuild: false,
  publish: null,
  fileAssociations: [
    {
      ext: 'plumbweft',
      name: 'Plumbweft piece',
      description: 'A piece, packed',
      mimeType: 'application/x-plumbweft',
      role: 'Editor',
    },
  ],
  linux: { target: ['AppImage', 'deb'], category: 'Graphics', executableName: 'plumbweft' },
  win: { target: ['nsis'] },
  mac: { target: ['dmg'], category: 'public.app-category.graphics-design' },
  afterPack: async (context) => {
    const executable = executableIn(context);
    await setFuses(executable, context.electronPlatformName === 'darwin' && context.arch === ARM64);
    onPacked(executable);
  },
});

import { resolve } from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'electron-vite';

const source = (path: string) => resolve(import.meta.dirname, 'src', path);

export default defineConfig({
  main: {
    build: {
      target: 'node20.19',
      rollupOptions: {
        input: {
          main: source('main/electron/main.ts'),
          local: source('main/local/main.ts'),
          command: source('main/cli/command.ts'),
          accuracy: source('main/cli/accuracy.ts'),
          visionWorker: source('main/vision/worker.ts'),
        },
        output: { format: 'es', entryFileNames: '[name].js' },
      },
    },
  },
  preload: {
    build: {
      target: 'node20.19',
      externalizeDeps: false,
      rollupOptions: {
        input: { preload: source('main/electron/preload.ts') },
        output: { format: 'cjs', entryFileNames: '[name].cjs' },
      },
    },
  },
  renderer: {
    root: source('renderer'),
    plugins: [react()],
    build: { rollupOptions: { input: source('renderer/index.html') }, assetsInlineLimit: 0 },
  },
});

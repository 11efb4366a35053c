import { existsSync } from 'node:fs';
import { defineConfig } from '@playwright/test';

const named = process.env.PLUMBWEFT_CHROMIUM;
const usual = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'].find((path) =>
  existsSync(path),
);
/** A Chromium of this machine, else the one Playwright brings. */
const executablePath = named !== undefined && named !== '' ? named : usual;

export default defineConfig({
  testDir: 'tests/browser',
  testMatch: '**/*.spec.ts',
  // Each test has a program and a folder of its own; two side by side take half the time.
  workers: 2,
  fullyParallel: true,
  timeout: 240_000,
  expect: { timeout: 30_000 },
  outputDir: '.cache/browser',
  reporter: 'list',
  use: {
    viewport: { width: 1280, height: 800 },
    actionTimeout: 30_000,
    launchOptions: {
      ...(executablePath === undefined ? {} : { executablePath }),
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    },
  },
});

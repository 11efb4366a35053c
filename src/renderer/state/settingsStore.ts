import { create } from 'zustand';
import { type Settings, usualSettings } from '../../core/contract/hostApi.ts';
import { host } from '../host/currentHost.ts';
import { applyTheme } from '../theme/applyTheme.ts';

interface SettingsState {
  readonly settings: Settings;
  readonly load: () => Promise<void>;
  /** @returns when the host has kept it. */
  readonly change: (part: Partial<Settings>) => Promise<void>;
}

export const useSettings = create<SettingsState>((set, get) => ({
  settings: usualSettings,
  load: async () => {
    const answer = await host().call('readSettings', {});
    const settings = answer.ok ? answer.value.result : usualSettings;
    applyTheme(settings);
    set({ settings });
  },
  change: async (part) => {
    const settings = { ...get().settings, ...part };
    applyTheme(settings);
    set({ settings });
    await host().call('writeSettings', settings);
  },
}));

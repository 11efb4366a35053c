import type { Settings } from '../../core/contract/hostApi.ts';
import { useSettings } from '../state/settingsStore.ts';
import { de } from './de.ts';
import { en, type Words } from './en.ts';

const languages: Readonly<Record<Settings['language'], Words>> = { en, de };

/** The words of the chosen language. */
export const useWords = (): Words => languages[useSettings((state) => state.settings.language)];

/** The same, outside a component. */
export const words = (): Words => languages[useSettings.getState().settings.language];

import type { Words } from '../en.ts';

export const piece: Words['piece'] = {};

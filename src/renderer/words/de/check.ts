import type { Words } from '../en.ts';

export const check: Words['check'] = {};

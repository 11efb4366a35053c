import type { Words } from '../en.ts';

export const bench: Words['bench'] = {};

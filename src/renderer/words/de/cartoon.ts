import type { Words } from '../en.ts';

export const cartoon: Words['cartoon'] = {};

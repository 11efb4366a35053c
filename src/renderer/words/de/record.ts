import type { Words } from '../en.ts';

export const record: Words['record'] = {};

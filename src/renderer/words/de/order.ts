import type { Words } from '../en.ts';

export const order: Words['order'] = {};

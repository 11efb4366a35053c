export const record = {};

export const bench = {};

export const piece = {};

export const order = {};

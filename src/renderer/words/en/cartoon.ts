export const cartoon = {};

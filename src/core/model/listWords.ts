/** Things named one after another: `3`, `3 and 5`, `3, 5 and 6`. */
export const listInWords = (items: readonly (string | number)[], and = 'and'): string =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} ${and} ${items.at(-1)}`;

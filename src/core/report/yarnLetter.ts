/** The letter a yarn goes by, from its place in the piece: A to Z, then A2. */
export function yarnLetter(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : `${letter}${Math.floor(index / 26) + 1}`;
}

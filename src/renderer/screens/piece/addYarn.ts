import type { Piece } from '../../../core/model/piece.ts';

/** Grey-green, blue-grey, rust, straw, plum: plain starting colours, to be changed to the real yarn's. */
const starting = ['#6f7d6a', '#5d7287', '#a5583a', '#cbb06a', '#6a4a5e'];

/** A further yarn like the ground's, under an id no yarn has had. */
export function addYarn(piece: Piece): { readonly piece: Piece; readonly yarn: string } {
  const used = new Set(piece.yarns.map((yarn) => yarn.id));
  let number = piece.yarns.length;
  while (used.has(`y${number}`)) number++;
  const id = `y${number}`;
  const like = piece.yarns.find((yarn) => yarn.id === piece.cloth.ground) ?? piece.yarns[0]!;
  const yarn = {
    ...like,
    id,
    name: `${like.name} ${piece.yarns.length + 1}`,
    colour: starting[number % starting.length]!,
  };
  return { piece: { ...piece, yarns: [...piece.yarns, yarn] }, yarn: id };
}

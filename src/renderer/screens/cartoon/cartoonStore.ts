import { create } from 'zustand';
import type { MirrorLine } from '../../../core/cartoon/mirror.ts';
import type { StartingForm } from '../../../core/cartoon/newShape.ts';
import { usePiece } from '../../state/pieceStore.ts';

/** What a press on the cloth does. */
export type Tool = 'select' | 'polygon' | 'freehand' | StartingForm;

/**
 * Tools in the order they stand in, with their keys: counted from the left as treadles are, the same in every language.
 * Esc lets any of them go and selects.
 */
export const toolKeys: readonly (readonly [Tool, string])[] = [
  ['select', 'Escape'],
  ['polygon', '1'],
  ['rectangle', '2'],
  ['hill', '3'],
  ['diamond', '4'],
  ['hexagon', '5'],
  ['ellipse', '6'],
  ['band', '7'],
  ['arch', '8'],
  ['freehand', '9'],
];

/** Whether a tool's form can also be put on the middle of the cloth, without a pointer. */
export const isStartingForm = (tool: Tool): tool is StartingForm =>
  tool !== 'select' && tool !== 'polygon' && tool !== 'freehand';

/** Where the window looks: the cloth's middle in mm, and how large. */
export interface Look {
  readonly x: number;
  readonly y: number;
  readonly pxPerMm: number;
}

interface CartoonState {
  readonly tool: Tool;
  readonly chosen: string | null;
  /** The corner or handle of the chosen shape that has numbers to type; null for the shape as a whole. */
  readonly vertex: number | null;
  /** The chosen applied piece; a shape and an ornament are never chosen together. */
  readonly ornament: string | null;
  /** Null: the whole piece, however large the window is. */
  readonly look: Look | null;
  /** Keep corners on ends and whole turns. */
  readonly snap: boolean;
  /** Points of a polygon or stroke being drawn, cloth mm. */
  readonly draft: readonly { readonly x: number; readonly y: number }[];
  /** The slanting line the chosen shape is about to be mirrored in; null when none is being set. */
  readonly mirrorLine: MirrorLine | null;
  readonly setMirrorLine: (line: MirrorLine | null) => void;
  readonly setTool: (tool: Tool) => void;
  readonly choose: (shape: string | null) => void;
  readonly chooseVertex: (vertex: number | null) => void;
  readonly chooseOrnament: (ornament: string | null) => void;
  readonly setLook: (look: Look | null) => void;
  readonly setSnap: (snap: boolean) => void;
  readonly setDraft: (draft: CartoonState['draft']) => void;
}

const atFirst = {
  tool: 'select',
  chosen: null,
  vertex: null,
  ornament: null,
  look: null,
  draft: [],
  mirrorLine: null,
} as const;

export const useCartoon = create<CartoonState>((set) => ({
  ...atFirst,
  snap: true,
  setMirrorLine: (mirrorLine) => set({ mirrorLine }),
  setTool: (tool) => set({ tool, draft: [] }),
  choose: (chosen) => set({ chosen, vertex: null, ornament: null, mirrorLine: null }),
  chooseVertex: (vertex) => set({ vertex }),
  chooseOrnament: (ornament) => set({ ornament, chosen: null, vertex: null, mirrorLine: null }),
  setLook: (look) => set({ look }),
  setSnap: (snap) => set({ snap }),
  setDraft: (draft) => set({ draft }),
}));

// What was chosen in one piece, and where the window looked, says nothing of another.
usePiece.subscribe((now, before) => {
  if (now.key !== before.key) useCartoon.setState(atFirst);
});

import { type PointerEvent, useRef } from 'react';
import { freehandForm } from '../../../core/cartoon/freehand.ts';
import { shapeAt } from '../../../core/cartoon/hit.ts';
import { formInBox } from '../../../core/cartoon/newShape.ts';
import { moveShape } from '../../../core/cartoon/place.ts';
import { clothBox, snapCorner, snapPoint, weavingGrid } from '../../../core/cartoon/snap.ts';
import type { Piece, Shape, ShapeForm } from '../../../core/model/piece.ts';
import { clothMm } from '../../../core/model/units.ts';
import { usePiece } from '../../state/pieceStore.ts';
import { useShell } from '../../state/shellStore.ts';
import { useWords } from '../../words/useWords.ts';
import { isStartingForm, type Tool, useCartoon } from './cartoonStore.ts';
import { addDrawn, finishPolygon } from './drawn.ts';
import { moveHandle } from './handles.ts';

interface Place {
  readonly x: number;
  readonly y: number;
}

type Held =
  | { readonly kind: 'handle'; readonly shape: string; readonly index: number }
  | { readonly kind: 'ornament'; readonly ornament: string; readonly start: Place; readonly at: Place }
  | { readonly kind: 'shape'; readonly shape: string; readonly start: Place; readonly before: Shape }
  | { readonly kind: 'box'; readonly start: Place }
  | { readonly kind: 'stroke' }
  | { readonly kind: 'pan'; readonly start: Place };

export interface CartoonPointer {
  readonly down: (event: PointerEvent<SVGSVGElement>) => void;
  readonly move: (event: PointerEvent<SVGSVGElement>) => void;
  readonly up: () => void;
  readonly holdHandle: (shape: string, index: number, event: PointerEvent) => void;
  readonly holdOrnament: (ornament: string, event: PointerEvent) => void;
  readonly finishPolygon: () => void;
}

/** Presses, drags and strokes on the cloth, each by the tool in hand. */
export function useCartoonPointer(
  toCloth: (event: PointerEvent) => Place,
  pan: (dxPx: number, dyPx: number) => void,
  pxPerMm: number,
): CartoonPointer {
  const words = useWords().cartoon;
  const held = useRef<Held | null>(null);
  const { change, endGathering } = usePiece.getState();
  const cartoon = useCartoon.getState;

  const add = (form: ShapeForm, kind: Tool) => addDrawn(form, words.names[kind]);
  const snapped = (place: Place, free: boolean, snap = snapPoint): Place => {
    const piece = usePiece.getState().piece;
    if (piece === null || free || !cartoon().snap) return place;
    return snap(place.x, place.y, weavingGrid(piece));
  };
  const closePolygon = () => finishPolygon(words.names.polygon);
  const down = (event: PointerEvent<SVGSVGElement>) => {
    const piece = usePiece.getState().piece;
    if (piece === null) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    const place = toCloth(event);
    const { tool, draft, setDraft, choose } = cartoon();
    if (event.button === 1 || event.button === 2) {
      held.current = { kind: 'pan', start: { x: event.clientX, y: event.clientY } };
      return;
    }
    if (tool === 'polygon') {
      const point = snapped(place, event.altKey);
      const first = draft[0];
      if (first && draft.length >= 3 && Math.hypot(first.x - place.x, first.y - place.y) * pxPerMm < 12)
        return closePolygon();
      return setDraft([...draft, point]);
    }
    if (tool === 'freehand') {
      held.current = { kind: 'stroke' };
      return setDraft([place]);
    }
    if (tool !== 'select') {
      const start = snapped(place, event.altKey, snapCorner);
      held.current = { kind: 'box', start };
      return setDraft([start, start]);
    }
    const shape = shapeAt(piece.shapes, place.x, place.y, clothBox(piece), 4 / pxPerMm);
    choose(shape?.id ?? null);
    if (shape === null) held.current = { kind: 'pan', start: { x: event.clientX, y: event.clientY } };
    else if (!shape.locked) held.current = { kind: 'shape', shape: shape.id, start: place, before: shape };
  };
  const move = (event: PointerEvent<SVGSVGElement>) => {
    const now = held.current;
    const piece = usePiece.getState().piece;
    if (now === null || piece === null) return;
    const place = toCloth(event);
    switch (now.kind) {
      case 'pan':
        pan(event.clientX - now.start.x, event.clientY - now.start.y);
        held.current = { kind: 'pan', start: { x: event.clientX, y: event.clientY } };
        return;
      case 'stroke':
        return cartoon().setDraft([...cartoon().draft, place]);
      case 'box':
        return cartoon().setDraft([now.start, snapped(place, event.altKey, snapCorner)]);
      case 'handle': {
        const { x, y } = snapped(place, event.altKey);
        return change(
          (piece_) => replaceShape(piece_, now.shape, (shape) => moveHandle(shape, now.index, x, y)),
          'drag',
        );
      }
      case 'ornament': {
        const at = clothPoint({ x: now.at.x + place.x - now.start.x, y: now.at.y + place.y - now.start.y });
        return change(
          (piece_) => ({
            ...piece_,
            ornaments: piece_.ornaments.map((each) => (each.id === now.ornament ? { ...each, at } : each)),
          }),
          'drag',
        );
      }
      case 'shape': {
        const grid = weavingGrid(piece);
        const free = event.altKey || !cartoon().snap;
        const across = free ? place.x - now.start.x : Math.round((place.x - now.start.x) / grid.pitch) * grid.pitch;
        const turn = 2 * grid.passHeight;
        const up = free ? place.y - now.start.y : Math.round((place.y - now.start.y) / turn) * turn;
        return change((piece_) => replaceShape(piece_, now.shape, () => moveShape(now.before, across, up)), 'drag');
      }
    }
  };
  const up = () => {
    const now = held.current;
    held.current = null;
    endGathering();
    const { draft, setDraft, tool } = cartoon();
    if (now?.kind === 'stroke') {
      setDraft([]);
      const form = freehandForm(draft, Math.max(0.4, 2 / pxPerMm));
      if (form.ok) add(form.value, 'freehand');
      else useShell.getState().say(`${form.problem.sentence} ${form.problem.remedy}`);
    }
    if (now?.kind === 'box' && isStartingForm(tool)) {
      setDraft([]);
      const [from, to] = [draft[0], draft[1]];
      if (!from || !to || Math.abs(from.y - to.y) < 0.5 || (tool !== 'band' && Math.abs(from.x - to.x) < 0.5)) return;
      const box = {
        left: Math.min(from.x, to.x),
        right: Math.max(from.x, to.x),
        bottom: Math.min(from.y, to.y),
        top: Math.max(from.y, to.y),
      };
      add(formInBox(tool, box), tool);
    }
  };
  const holdHandle = (shape: string, index: number, event: PointerEvent) => {
    event.stopPropagation();
    (event.currentTarget as Element).closest('svg')?.setPointerCapture(event.pointerId);
    cartoon().chooseVertex(index);
    held.current = { kind: 'handle', shape, index };
  };
  const holdOrnament = (id: string, event: PointerEvent) => {
    const ornament = usePiece.getState().piece?.ornaments.find((each) => each.id === id);
    if (ornament === undefined || cartoon().tool !== 'select') return;
    event.stopPropagation();
    (event.currentTarget as Element).closest('svg')?.setPointerCapture(event.pointerId);
    cartoon().chooseOrnament(id);
    held.current = { kind: 'ornament', ornament: id, start: toCloth(event), at: ornament.at };
  };
  return { down, move, up, holdHandle, holdOrnament, finishPolygon: closePolygon };
}

/** One shape of a piece changed, the others as they are. */
export const replaceShape = (piece: Piece, id: string, update: (shape: Shape) => Shape): Piece => ({
  ...piece,
  shapes: piece.shapes.map((shape) => (shape.id === id ? update(shape) : shape)),
});

const clothPoint = ({ x, y }: Place) => ({ x: clothMm(x), y: clothMm(y) });

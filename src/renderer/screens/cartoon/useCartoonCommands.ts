import { setMirror } from '../../../core/cartoon/mirror.ts';
import { moveShape } from '../../../core/cartoon/place.ts';
import { clothBox, nudgeShape, weavingGrid } from '../../../core/cartoon/snap.ts';
import type { Ornament, Piece, Shape } from '../../../core/model/piece.ts';
import { clothMm } from '../../../core/model/units.ts';
import { useCommands, withRuns } from '../../keys/commandStore.ts';
import { usePiece } from '../../state/pieceStore.ts';
import { useWords } from '../../words/useWords.ts';
import { addHere } from './addHere.ts';
import { nextHandle } from './CornerFields.tsx';
import { cartoonCommands, toolCommands } from './cartoonCommands.ts';
import { isStartingForm, useCartoon } from './cartoonStore.ts';
import { finishPolygon } from './drawn.ts';
import { nextName } from './freeShape.ts';
import { handlesOf, moveHandle } from './handles.ts';
import { removeOrnament } from './ornaments.ts';
import { removeShape } from './removeShape.ts';
import { restackShape } from './restackShape.ts';
import { replaceShape } from './useCartoonPointer.ts';

interface CartoonCommands {
  readonly piece: Piece;
  readonly shape: Shape | null;
  readonly ornament: Ornament | null;
  readonly print: () => void;
  readonly showTable: () => void;
  readonly openLettering: () => void;
  readonly bringIn: () => void;
}

/** Everything the cartoon answers to by key: tools, nudging, mirror, layers, corners, zoom. */
export function useCartoonCommands(given: CartoonCommands): void {
  const { piece, shape, ornament } = given;
  const all = useWords();
  const words = all.cartoon;
  const change = usePiece((state) => state.change);
  const { chosen, choose, setTool, setLook, look, snap, setSnap, tool, draft, vertex, chooseVertex, chooseOrnament } =
    useCartoon();

  const nudge = (ends: number, turns: number) => {
    const grid = weavingGrid(piece);
    const [dx, dy] = [ends * grid.pitch, turns * 2 * grid.passHeight];
    if (ornament !== null) {
      const at = { x: clothMm(ornament.at.x + dx), y: clothMm(ornament.at.y + dy) };
      return change(
        (now) => ({
          ...now,
          ornaments: now.ornaments.map((each) => (each.id === ornament.id ? { ...each, at } : each)),
        }),
        `nudge ${ornament.id}`,
      );
    }
    if (shape === null || shape.locked) return;
    const corner = handlesOf(shape, 0).find((handle) => handle.index === vertex);
    change(
      (now) =>
        replaceShape(now, shape.id, (each) =>
          corner === undefined
            ? nudgeShape(each, ends, turns, weavingGrid(now))
            : moveHandle(each, corner.index, corner.x + dx, corner.y + dy),
        ),
      `nudge ${shape.id}`,
    );
  };
  const zoom = (factor: number) => {
    const box = clothBox(piece);
    const now = look ?? { x: 0, y: box.top / 2, pxPerMm: 2.2 };
    setLook({ ...now, pxPerMm: Math.max(0.3, Math.min(60, now.pxPerMm * factor)) });
  };
  const cycle = (step: 1 | -1) => {
    const everything = [
      ...piece.shapes.map(({ id }) => ({ id, applied: false })),
      ...piece.ornaments.map(({ id }) => ({ id, applied: true })),
    ];
    if (everything.length === 0) return;
    const at = everything.findIndex(({ id, applied }) => id === (applied ? ornament?.id : chosen));
    const next = everything[at < 0 ? 0 : (at + step + everything.length) % everything.length]!;
    if (next.applied) chooseOrnament(next.id);
    else choose(next.id);
  };
  const copy = () => {
    if (shape === null) return;
    const name = nextName(
      shape.name,
      piece.shapes.map((each) => each.name),
    );
    const added = { ...moveShape(shape, piece.loom.notchPitch, 0), id: addHere.freeId(piece), name };
    change((now) => ({ ...now, shapes: [added, ...now.shapes] }));
    choose(added.id);
  };
  const typeSizes = () => {
    const fields = document.querySelector<HTMLInputElement>(
      vertex === null ? '.cartoon-words .shape-sizes input' : '.corner .shape-sizes input',
    );
    fields?.focus();
  };
  const letGo = () => {
    if (tool !== 'select') setTool('select');
    else if (vertex !== null) chooseVertex(null);
    else choose(null);
  };
  const remove = () => {
    if (shape !== null) removeShape(shape.id);
    if (ornament !== null) removeOrnament(ornament.id);
  };
  const restack = (move: Parameters<typeof restackShape>[1]) => () => {
    if (shape !== null) restackShape(shape.id, move);
  };
  const mirror = () => {
    if (shape === null) return;
    change((now) => replaceShape(now, shape.id, (each) => setMirror(each, each.mirrorAbout === null ? 0 : null)));
  };
  const corner = () => {
    if (shape !== null) chooseVertex(nextHandle(shape, vertex, 1));
  };
  const nothing = shape === null && ornament === null;
  const drafting = tool === 'polygon' && draft.length > 0;
  const { setDraft } = useCartoon.getState();
  useCommands('cartoon', [
    // While a polygon is being drawn these keys are about its corners.
    ...(drafting
      ? [
          {
            id: 'close-polygon',
            words: words.keys.closePolygon,
            keys: ['Enter'],
            run: () => finishPolygon(words.names.polygon),
          },
          {
            id: 'point-back',
            words: words.keys.pointBack,
            keys: ['Backspace', 'Ctrl+Z'],
            run: () => setDraft(draft.slice(0, -1)),
          },
        ]
      : []),
    ...toolCommands(all).map((command) => ({
      ...command,
      run: () =>
        tool === command.tool && isStartingForm(command.tool)
          ? addHere.put(piece, command.tool, words.names[command.tool])
          : setTool(command.tool),
    })),
    ...withRuns(
      cartoonCommands(all),
      {
        lettering: given.openLettering,
        'bring-in': given.bringIn,
        'nudge-left': () => nudge(-1, 0),
        'nudge-right': () => nudge(1, 0),
        'nudge-up': () => nudge(0, 1),
        'nudge-down': () => nudge(0, -1),
        'nudge5-left': () => nudge(-5, 0),
        'nudge5-right': () => nudge(5, 0),
        'nudge5-up': () => nudge(0, 5),
        'nudge5-down': () => nudge(0, -5),
        mirror,
        whole: () => setLook(null),
        closer: () => zoom(1.25),
        further: () => zoom(0.8),
        'next-shape': () => cycle(1),
        'next-corner': corner,
        'type-sizes': typeSizes,
        'layer-up': restack('up'),
        'layer-down': restack('down'),
        'layer-top': restack('top'),
        'layer-bottom': restack('bottom'),
        remove,
        copy,
        'let-go': letGo,
        snap: () => setSnap(!snap),
        'cartoon-table': given.showTable,
        'print-cartoon': given.print,
      },
      {
        'nudge-left': nothing,
        'nudge-right': nothing,
        'nudge-up': nothing,
        'nudge-down': nothing,
        'nudge5-left': nothing,
        'nudge5-right': nothing,
        'nudge5-up': nothing,
        'nudge5-down': nothing,
        remove: nothing,
        mirror: shape === null,
        'next-corner': shape === null,
        'type-sizes': shape === null,
        'layer-up': shape === null,
        'layer-down': shape === null,
        'layer-top': shape === null,
        'layer-bottom': shape === null,
        copy: shape === null,
      },
    ),
  ]);
}

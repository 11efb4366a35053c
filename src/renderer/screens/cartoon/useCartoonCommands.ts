import { setMirror } from '../../../core/cartoon/mirror.ts';
import { moveShape } from '../../../core/cartoon/place.ts';
import { clothBox, nudgeShape, weavingGrid } from '../../../core/cartoon/snap.ts';
import type { Ornament, Piece, Shape } from '../../../core/model/piece.ts';
import { clothMm } from '../../../core/model/units.ts';
import { useCommands } from '../../keys/commandStore.ts';
import { usePiece } from '../../state/pieceStore.ts';
import { useWords } from '../../words/useWords.ts';
import { addHere } from './addHere.ts';
import { nextHandle } from './CornerFields.tsx';
import { isStartingForm, toolKeys, useCartoon } from './cartoonStore.ts';
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
  const layer = (id: string, say: string, key: string, move: Parameters<typeof restackShape>[1]) => ({
    id,
    words: say,
    keys: [key],
    run: () => shape && restackShape(shape.id, move),
  });
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
    ...toolKeys.map(([name, key]) => ({
      id: `tool-${name}`,
      words: words.tools[name],
      // Esc lets go one thing after another; by its words the tool is chosen at once.
      keys: name === 'select' ? [] : [key],
      run: () => (tool === name && isStartingForm(name) ? addHere.put(piece, name, words.names[name]) : setTool(name)),
    })),
    { id: 'lettering', words: words.lettering, keys: ['L'], run: given.openLettering },
    { id: 'bring-in', words: words.bringIn, keys: ['O'], run: given.bringIn },
    ...(['Left', 'Right', 'Up', 'Down'] as const).flatMap((way) => {
      const across = way === 'Left' ? -1 : way === 'Right' ? 1 : 0;
      const up = way === 'Up' ? 1 : way === 'Down' ? -1 : 0;
      return [
        { id: `nudge-${way}`, words: words.keys.nudge, keys: [`Arrow${way}`], run: () => nudge(across, up) },
        {
          id: `nudge5-${way}`,
          words: words.keys.nudgeFive,
          keys: [`Shift+Arrow${way}`],
          run: () => nudge(5 * across, 5 * up),
        },
      ];
    }),
    {
      id: 'mirror',
      words: words.keys.mirror,
      keys: ['M'],
      run: () =>
        shape &&
        change((now) => replaceShape(now, shape.id, (each) => setMirror(each, each.mirrorAbout === null ? 0 : null))),
    },
    { id: 'whole', words: words.keys.whole, keys: ['0'], run: () => setLook(null) },
    { id: 'closer', words: words.keys.zoom, keys: ['+', '='], run: () => zoom(1.25) },
    { id: 'further', words: words.keys.zoom, keys: ['-'], run: () => zoom(0.8) },
    { id: 'next-shape', words: words.keys.next, keys: ['N'], run: () => cycle(1) },
    {
      id: 'next-corner',
      words: words.keys.corner,
      keys: ['C'],
      run: () => shape && chooseVertex(nextHandle(shape, vertex, 1)),
    },
    { id: 'type-sizes', words: words.keys.sizes, keys: ['I'], run: typeSizes },
    layer('layer-up', words.higher, 'PageUp', 'up'),
    layer('layer-down', words.lower, 'PageDown', 'down'),
    layer('layer-top', words.topmost, 'Shift+PageUp', 'top'),
    layer('layer-bottom', words.lowest, 'Shift+PageDown', 'bottom'),
    { id: 'remove', words: words.keys.remove, keys: ['Delete', 'Backspace'], run: remove },
    { id: 'copy', words: words.copy, keys: ['Ctrl+D'], run: copy },
    { id: 'let-go', words: words.letGo, keys: ['Escape'], run: letGo },
    { id: 'snap', words: words.snap, keys: ['S'], run: () => setSnap(!snap) },
    { id: 'cartoon-table', words: all.shell.table, keys: ['T'], run: given.showTable },
    { id: 'print-cartoon', words: words.printCartoon, keys: ['Ctrl+P'], run: given.print },
  ]);
}

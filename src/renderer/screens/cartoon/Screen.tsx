import { useDeferredValue, useState } from 'react';
import './cartoon.css';
import { setMirror } from '../../../core/cartoon/mirror.ts';
import { moveShape } from '../../../core/cartoon/place.ts';
import { shapeBox } from '../../../core/cartoon/shapeBox.ts';
import { clothBox, nudgeShape, weavingGrid } from '../../../core/cartoon/snap.ts';
import { lengthInWords } from '../../../core/model/lengthWords.ts';
import type { Piece } from '../../../core/model/piece.ts';
import { useCommands } from '../../keys/commandStore.ts';
import { QuietButton } from '../../parts/Actions.tsx';
import { DrawingTable } from '../../parts/DrawingTable.tsx';
import { Footer } from '../../parts/Footer.tsx';
import { ScreenFrame } from '../../parts/ScreenFrame.tsx';
import { Sentence } from '../../parts/Sentence.tsx';
import { SheetDialog } from '../../parts/SheetDialog.tsx';
import { usePiece } from '../../state/pieceStore.ts';
import { makeSheet } from '../../state/sheets.ts';
import { useShell } from '../../state/shellStore.ts';
import { planOf } from '../../state/useWork.ts';
import { useWords } from '../../words/useWords.ts';
import { addHere } from './addHere.ts';
import { CartoonCanvas } from './CartoonCanvas.tsx';
import { type Tool, useCartoon } from './cartoonStore.ts';
import { Overview } from './Overview.tsx';
import { ShapeList } from './ShapeList.tsx';
import { removeShape, ShapeWords } from './ShapeWords.tsx';
import { ToolRow } from './ToolRow.tsx';
import { replaceShape } from './useCartoonPointer.ts';

/** Shapes drawn on the warp itself, with the cloth their steps will make. */
export function Screen() {
  const piece = usePiece((state) => state.piece);
  return piece === null ? null : <CartoonWork piece={piece} />;
}

const toolKeys: readonly (readonly [Tool, string])[] = [
  ['select', 'V'],
  ['polygon', 'P'],
  ['rectangle', 'R'],
  ['ellipse', 'E'],
  ['band', 'B'],
  ['arch', 'A'],
  ['freehand', 'F'],
];

function CartoonWork({ piece }: { readonly piece: Piece }) {
  const all = useWords();
  const words = all.cartoon;
  const key = usePiece((state) => state.key);
  const change = usePiece((state) => state.change);
  const goTo = useShell((state) => state.goTo);
  const { chosen, choose, setTool, setLook, look, snap, setSnap, tool } = useCartoon();
  const [told, setTold] = useState<readonly string[] | null>(null);
  const [table, setTable] = useState(false);
  // The words follow a drag when there is time: the drawing itself never waits for them.
  const settled = useDeferredValue(piece);
  const plan = planOf(settled);
  const shape = piece.shapes.find((each) => each.id === chosen) ?? null;
  const settledShape = settled.shapes.find((each) => each.id === chosen) ?? null;
  const nudge = (ends: number, turns: number) => {
    if (shape === null || shape.locked) return;
    change(
      (now) => replaceShape(now, shape.id, (each) => nudgeShape(each, ends, turns, weavingGrid(now))),
      `nudge ${shape.id}`,
    );
  };
  const zoom = (factor: number) => {
    const box = clothBox(piece);
    const now = look ?? { x: 0, y: box.top / 2, pxPerMm: 2.2 };
    setLook({ ...now, pxPerMm: Math.max(0.3, Math.min(60, now.pxPerMm * factor)) });
  };
  const cycle = () => {
    const index = piece.shapes.findIndex((each) => each.id === chosen);
    choose(piece.shapes[(index + 1) % Math.max(1, piece.shapes.length)]?.id ?? null);
  };
  const copy = () => {
    if (shape === null) return;
    const added = { ...moveShape(shape, piece.loom.notchPitch, 0), id: addHere.freeId(piece), name: `${shape.name} 2` };
    change((now) => ({ ...now, shapes: [added, ...now.shapes] }));
    choose(added.id);
  };
  useCommands('cartoon', [
    ...toolKeys.map(([name, letter]) => ({
      id: `tool-${name}`,
      words: words.tools[name],
      keys: [letter],
      run: () =>
        tool === name && name !== 'select' && name !== 'polygon' && name !== 'freehand'
          ? addHere.put(piece, name)
          : setTool(name),
    })),
    ...(['Left', 'Right', 'Up', 'Down'] as const).flatMap((way) => {
      const across = way === 'Left' ? -1 : way === 'Right' ? 1 : 0;
      const up = way === 'Up' ? 1 : way === 'Down' ? -1 : 0;
      return [
        { id: `nudge-${way}`, words: words.keys.nudge, keys: [`Arrow${way}`], run: () => nudge(across, up) },
        {
          id: `nudge5-${way}`,
          words: words.keys.nudge,
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
    { id: 'next-shape', words: words.keys.next, keys: ['N'], run: cycle },
    {
      id: 'remove',
      words: words.keys.remove,
      keys: ['Delete', 'Backspace'],
      run: () => shape && removeShape(shape.id),
    },
    { id: 'copy', words: words.copy, keys: ['Ctrl+D'], run: copy },
    {
      id: 'let-go',
      words: words.noneChosen,
      keys: ['Escape'],
      run: () => (tool === 'select' ? choose(null) : setTool('select')),
    },
    { id: 'snap', words: words.snap, keys: ['S'], run: () => setSnap(!snap) },
    { id: 'cartoon-table', words: all.shell.table, keys: ['T'], run: () => setTable(true) },
    {
      id: 'print-cartoon',
      words: words.printCartoon,
      keys: ['Ctrl+P'],
      run: () => key !== null && void makeSheet(key, 'cartoon', null),
    },
  ]);
  const cloth = clothBox(settled);
  return (
    <ScreenFrame
      className="cartoon"
      footer={
        <Footer
          hints={[
            { keys: ['V'], words: words.keys.select },
            { keys: ['Arrow'], words: words.keys.nudge },
            { keys: ['M'], words: words.keys.mirror },
            { keys: ['0'], words: words.keys.whole },
          ]}
          second={{ words: words.printCartoon, onPress: () => key !== null && void makeSheet(key, 'cartoon', null) }}
          main={{ words: words.workOut, onPress: () => goTo('order') }}
        />
      }
    >
      <div className="cartoon-work">
        <ToolRow piece={piece} onTold={setTold} />
        <p className="cartoon-units second" aria-hidden="true">
          <span>{piece.units === 'mm' ? words.mm : words.inches}</span>
          <span>{words.hints[tool]}</span>
          <span>{words.turnsRuler}</span>
        </p>
        <CartoonCanvas piece={piece} />
      </div>
      <div className="cartoon-words">
        <div className="cartoon-top">
          <Overview piece={settled} plan={plan} />
          <ShapeList piece={piece} />
        </div>
        {settledShape !== null ? (
          <>
            <Sentence>
              <span className="out-of-sight">{settledShape.name}</span>
            </Sentence>
            <ShapeWords key={settledShape.id} piece={settled} plan={plan} shape={settledShape} />
          </>
        ) : (
          <>
            <Sentence>{words.noneChosen}</Sentence>
            <p>{piece.shapes.length === 0 ? words.noShapes : words.noneChosenSecond}</p>
          </>
        )}
      </div>
      {told !== null && (
        <SheetDialog title={words.guessTitle} onClose={() => setTold(null)}>
          <ul className="told">
            {told.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
          <QuietButton onPress={() => setTold(null)}>{all.shell.close}</QuietButton>
        </SheetDialog>
      )}
      {table && (
        <DrawingTable
          table={{
            name: words.table,
            columns: words.tableColumns,
            rows: settled.shapes.map((each) => {
              const box = shapeBox(each, cloth);
              const say = (value: number) => lengthInWords(Math.max(0, value), settled.units);
              return [
                each.name,
                settled.yarns.find((yarn) => yarn.id === each.yarn)?.name ?? '',
                box ? say(box.left - cloth.left) : '',
                box ? say(cloth.right - box.right) : '',
                box ? say(box.bottom) : '',
                box ? say(box.top) : '',
              ];
            }),
          }}
          onClose={() => setTable(false)}
        />
      )}
    </ScreenFrame>
  );
}

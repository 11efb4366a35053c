import { useState } from 'react';
import { lengthSaid } from '../../words/figures.ts';
import './cartoon.css';
import { shapeBox } from '../../../core/cartoon/shapeBox.ts';
import { clothBox } from '../../../core/cartoon/snap.ts';
import type { Picture } from '../../../core/cartoon/trace/yarnRaster.ts';
import type { Piece } from '../../../core/model/piece.ts';
import { QuietButton } from '../../parts/Actions.tsx';
import { DrawingTable, type TableRows } from '../../parts/DrawingTable.tsx';
import { SelectField } from '../../parts/Fields.tsx';
import { Footer } from '../../parts/Footer.tsx';
import { ScreenFrame } from '../../parts/ScreenFrame.tsx';
import { Sentence } from '../../parts/Sentence.tsx';
import { SheetDialog } from '../../parts/SheetDialog.tsx';
import { Swatch, yarnLetter } from '../../parts/Swatch.tsx';
import { chooseFile, useFileDrop } from '../../parts/useFileDrop.ts';
import { usePiece } from '../../state/pieceStore.ts';
import { usePlanned } from '../../state/planning/planned.ts';
import { makeSheet } from '../../state/sheets.ts';
import { useShell } from '../../state/shellStore.ts';
import { beatDiffers, useMeasuredBeat } from '../../state/useMeasuredBeat.ts';
import type { Words } from '../../words/en.ts';
import { useTell } from '../../words/telling.ts';
import { useWords } from '../../words/useWords.ts';
import { type BroughtIn, bringInDrawing } from './bringIn.ts';
import { CartoonCanvas } from './CartoonCanvas.tsx';
import { useCartoon } from './cartoonStore.ts';
import { LetteringSheet } from './LetteringSheet.tsx';
import { OrnamentWords } from './OrnamentWords.tsx';
import { Overview } from './Overview.tsx';
import { addOrnament } from './ornaments.ts';
import { readPicture } from './readPicture.ts';
import { ShapeList } from './ShapeList.tsx';
import { ShapeWords } from './ShapeWords.tsx';
import { ToolRow } from './ToolRow.tsx';
import { TraceSheet } from './TraceSheet.tsx';
import { useCartoonCommands } from './useCartoonCommands.ts';

/** Shapes drawn on the warp itself, with the cloth their steps will make. */
export function Screen() {
  const piece = usePiece((state) => state.piece);
  return piece === null ? null : <CartoonWork piece={piece} />;
}

type Open =
  | { readonly sheet: 'lettering' | 'ornament' | 'table' }
  | { readonly sheet: 'told'; readonly sentences: readonly string[]; readonly guesses: BroughtIn['guesses'] }
  | { readonly sheet: 'trace'; readonly picture: Picture }
  | null;

function CartoonWork({ piece }: { readonly piece: Piece }) {
  const all = useWords();
  const tell = useTell();
  const words = all.cartoon;
  const key = usePiece((state) => state.key);
  const change = usePiece((state) => state.change);
  const goTo = useShell((state) => state.goTo);
  const { chosen, choose, tool, ornament: chosenOrnament, snap, setSnap } = useCartoon();
  const [open, setOpen] = useState<Open>(null);
  const planned = usePlanned();
  const beat = useMeasuredBeat();
  const shape = piece.shapes.find((each) => each.id === chosen) ?? null;
  const ornament = piece.ornaments.find((each) => each.id === chosenOrnament) ?? null;
  const close = () => setOpen(null);
  const print = () => key !== null && void makeSheet(key, 'cartoon', null);

  const take = async (file: File) => {
    if (/\.svg$/i.test(file.name) || file.type === 'image/svg+xml') {
      const read = await bringInDrawing(file, piece);
      if (!read.ok) {
        const sentences = [`${read.problem.sentence} ${read.problem.remedy}`];
        return setOpen({ sheet: 'told', sentences, guesses: [] });
      }
      const { shapes, told, guesses } = read.value;
      change((now) => ({ ...now, shapes: [...shapes, ...now.shapes] }));
      choose(shapes[0]?.id ?? null);
      if (told.length > 0 || guesses.length > 0) setOpen({ sheet: 'told', sentences: told, guesses });
      return;
    }
    const picture = await readPicture(file);
    setOpen(
      picture === null ? { sheet: 'told', sentences: [words.cantRead], guesses: [] } : { sheet: 'trace', picture },
    );
  };
  const over = useFileDrop((file) => void take(file));
  const bringIn = () => chooseFile('.svg,image/svg+xml,.png,.jpg,.jpeg,.webp,.avif,.gif', (file) => void take(file));
  useCartoonCommands({
    piece,
    shape,
    ornament,
    print,
    showTable: () => setOpen({ sheet: 'table' }),
    openLettering: () => setOpen({ sheet: 'lettering' }),
    bringIn,
  });
  const differs = beatDiffers(beat, piece.cloth.passHeight);
  return (
    <ScreenFrame
      className="cartoon"
      footer={
        <Footer
          hints={[
            { keys: ['1–9'], words: words.keys.tools },
            { keys: ['Arrow'], words: words.keys.nudge },
            { keys: ['M'], words: words.keys.mirror },
            { keys: ['0'], words: words.keys.whole },
          ]}
          second={
            differs
              ? {
                  words: words.takeBeat(lengthSaid(beat.pass, piece.units, 'pass-height')),
                  // What it changes is told there before it is done.
                  onPress: () => goTo('order', { replan: null }),
                }
              : { words: words.printCartoon, onPress: print }
          }
          main={{ words: words.workOut, onPress: () => goTo('order') }}
        />
      }
    >
      <div className="cartoon-work">
        <ToolRow
          piece={piece}
          onLettering={() => setOpen({ sheet: 'lettering' })}
          onBringIn={bringIn}
          onOrnament={() => setOpen({ sheet: 'ornament' })}
        />
        <p className="cartoon-units second">
          <span aria-hidden="true">{piece.units === 'mm' ? words.mm : words.inches}</span>
          <span>{over ? words.dropHere : words.hints[tool]}</span>
          <span aria-hidden="true">{words.turnsRuler}</span>
        </p>
        <CartoonCanvas piece={piece} over={over} />
      </div>
      <div className="cartoon-words">
        <div className="cartoon-top">
          <Overview />
          <ShapeList piece={piece} />
        </div>
        {shape !== null ? (
          <>
            <Sentence>{shape.name}</Sentence>
            <ShapeWords key={shape.id} piece={piece} planned={planned} shape={shape} />
          </>
        ) : ornament !== null ? (
          <>
            <Sentence>{ornament.name}</Sentence>
            <OrnamentWords key={ornament.id} piece={piece} ornament={ornament} />
          </>
        ) : (
          <>
            <Sentence>{words.ground}</Sentence>
            <p>{piece.shapes.length === 0 ? words.noShapes : words.noneChosen}</p>
            <SelectField
              label={words.yarn}
              value={piece.cloth.ground}
              options={piece.yarns.map((yarn) => ({ value: yarn.id, words: yarn.name }))}
              onChange={(ground) => change((now) => ({ ...now, cloth: { ...now.cloth, ground } }))}
            />
            <p>
              <label className="cartoon-snap">
                <input type="checkbox" checked={snap} onChange={() => setSnap(!snap)} />
                <span>{words.snap}</span>
              </label>
            </p>
            {differs && (
              <p>
                <QuietButton onPress={print}>{words.printCartoon}</QuietButton>
              </p>
            )}
          </>
        )}
      </div>
      {open?.sheet === 'told' && (
        <SheetDialog title={words.guessTitle} onClose={close}>
          <ul className="told">
            {open.guesses.map(({ colour, yarn: id }) => {
              const index = piece.yarns.findIndex((yarn) => yarn.id === id);
              const yarn = piece.yarns[index];
              return (
                <li key={colour} className="told-colour">
                  <Swatch colour={colour} letter="" />
                  <span>{words.became}</span>
                  <Swatch colour={yarn?.colour ?? null} letter={yarnLetter(index)} />
                  <span>{yarn?.name}</span>
                </li>
              );
            })}
            {open.sentences.map((sentence) => (
              <li key={sentence}>{tell(sentence)}</li>
            ))}
          </ul>
        </SheetDialog>
      )}
      {open?.sheet === 'lettering' && <LetteringSheet piece={piece} onClose={close} />}
      {open?.sheet === 'trace' && <TraceSheet piece={piece} picture={open.picture} onClose={close} />}
      {open?.sheet === 'ornament' && (
        <SheetDialog title={words.ornament.tool} onClose={close}>
          <p>{words.ornament.lead}</p>
          <ul className="sheet-rows">
            {(['wrapped-flower', 'felted-leaf'] as const).map((kind) => (
              <li key={kind}>
                <button
                  type="button"
                  onClick={() => {
                    addOrnament(piece, kind, words.ornament.kinds[kind]);
                    close();
                  }}
                >
                  <span className="row-words">
                    <strong>{words.ornament.kinds[kind]}</strong> {words.ornament.about[kind]}
                  </span>
                </button>
              </li>
            ))}
          </ul>
        </SheetDialog>
      )}
      {open?.sheet === 'table' && <DrawingTable table={tableOf(piece, words)} onClose={close} />}
    </ScreenFrame>
  );
}

function tableOf(piece: Piece, words: Words['cartoon']): TableRows {
  const cloth = clothBox(piece);
  const say = (value: number) => lengthSaid(Math.max(0, value), piece.units);
  return {
    name: words.table,
    columns: words.tableColumns,
    rows: piece.shapes.map((each) => {
      const box = shapeBox(each, cloth);
      return [
        each.name,
        piece.yarns.find((yarn) => yarn.id === each.yarn)?.name ?? '',
        box ? say(box.left - cloth.left) : '',
        box ? say(cloth.right - box.right) : '',
        box ? say(box.bottom) : '',
        box ? say(box.top) : '',
      ];
    }),
  };
}

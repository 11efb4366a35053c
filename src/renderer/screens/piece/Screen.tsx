import { useState } from 'react';
import { lengthSaid } from '../../words/figures.ts';
import './piece.css';
import type { Piece } from '../../../core/model/piece.ts';
import { settCheck } from '../../../core/warp/settCheck.ts';
import { useCommands, withRuns } from '../../keys/commandStore.ts';
import { ArithmeticSheet } from '../../parts/ArithmeticSheet.tsx';
import { DrawingTable } from '../../parts/DrawingTable.tsx';
import { Footer } from '../../parts/Footer.tsx';
import { ScreenFrame } from '../../parts/ScreenFrame.tsx';
import { Sentence } from '../../parts/Sentence.tsx';
import { usePiece } from '../../state/pieceStore.ts';
import { type Planned, usePlanned } from '../../state/planning/planned.ts';
import { makeSheet } from '../../state/sheets.ts';
import { useShell } from '../../state/shellStore.ts';
import { tell } from '../../words/telling.ts';
import { useWords } from '../../words/useWords.ts';
import { addYarn } from './addYarn.ts';
import { CrossSection } from './CrossSection.tsx';
import { FinishingSheet } from './FinishingSheet.tsx';
import { LoomDrawing, withEnds } from './LoomDrawing.tsx';
import { LoomSheet } from './LoomSheet.tsx';
import { MakingSheet } from './MakingSheet.tsx';
import { pieceCommands } from './pieceCommands.ts';
import { Verdicts } from './Verdicts.tsx';
import { WarpSheet } from './WarpSheet.tsx';
import { WarpTable } from './WarpTable.tsx';
import { WeftList } from './WeftList.tsx';
import { YarnSheet } from './YarnSheet.tsx';

type Open =
  | { readonly sheet: 'loom' | 'warp' | 'making' | 'arithmetic' | 'finishing' | 'table' }
  | { readonly sheet: 'yarn'; readonly yarn: string }
  | null;

/** Loom, warp, yarns and sizes, drawn to scale, with what they will do to the cloth. */
export function Screen() {
  const piece = usePiece((state) => state.piece);
  const planned = usePlanned();
  const words = useWords().piece;
  if (piece === null) return null;
  if (planned === null) {
    return (
      <ScreenFrame className="piece" footer={<Footer hints={[]} />}>
        <Sentence>{piece.name}</Sentence>
        <p>{words.workingOut}</p>
      </ScreenFrame>
    );
  }
  return <PieceWork piece={piece} plan={planned.plan} />;
}

/** @param props.plan the newest there is: while the weaver types it may be a moment behind the piece. */
function PieceWork({ piece, plan }: { readonly piece: Piece; readonly plan: Planned['plan'] }) {
  const all = useWords();
  const words = all.piece;
  const key = usePiece((state) => state.key);
  const change = usePiece((state) => state.change);
  const goTo = useShell((state) => state.goTo);
  const [field] = useState(() => {
    const { opening } = useShell.getState();
    return opening !== null && 'field' in opening ? opening.field : null;
  });
  const [open, setOpen] = useState<Open>(field === null ? null : { sheet: field === 'ends' ? 'warp' : 'loom' });
  const sett = settCheck(piece);
  const ground = piece.yarns.find((yarn) => yarn.id === piece.cloth.ground);
  const groundOnSett = sett.yarns.find((yarn) => yarn.yarn === piece.cloth.ground);
  const openYarn = (yarn: string) => setOpen({ sheet: 'yarn', yarn });
  const newYarn = () => {
    const added = addYarn(piece);
    change(() => added.piece);
    openYarn(added.yarn);
  };
  const wider = (ends: number) => change((now) => withEnds(now, now.warp.ends + ends), 'width');
  const print = () => key !== null && void makeSheet(key, 'warping', null);
  useCommands(
    'piece',
    withRuns(pieceCommands(all), {
      wider: () => wider(1),
      narrower: () => wider(-1),
      yarns: () => openYarn(piece.cloth.ground),
      loom: () => setOpen({ sheet: 'loom' }),
      warp: () => setOpen({ sheet: 'warp' }),
      making: () => setOpen({ sheet: 'making' }),
      sums: () => setOpen({ sheet: 'arithmetic' }),
      finishing: () => setOpen({ sheet: 'finishing' }),
      'add-yarn': newYarn,
      'piece-table': () => setOpen({ sheet: 'table' }),
      'print-warping': print,
    }),
  );
  const close = () => setOpen(null);
  return (
    <ScreenFrame
      className="piece"
      footer={
        <Footer
          hints={[
            { keys: ['Tab'], words: words.keys.next },
            { keys: ['ArrowUp', 'ArrowDown'], words: words.keys.notch },
            { keys: ['Y'], words: words.keys.yarns },
          ]}
          second={{ words: words.warpingSheet, onPress: print }}
          main={{ words: words.drawCartoon, onPress: () => goTo('cartoon') }}
        />
      }
    >
      <LoomDrawing piece={piece} chart={plan.chart} />
      <div className="piece-words">
        <Sentence>{tell(sett.headline.sentence)}</Sentence>
        <p>{tell(sett.headline.why)}</p>
        <CrossSection piece={piece} weft={groundOnSett?.weft?.diameter ?? null} colour={ground?.colour ?? '#888888'} />
        <Verdicts piece={piece} sett={sett} onYarn={openYarn} />
        <WarpTable
          piece={piece}
          plan={plan}
          onLoom={() => setOpen({ sheet: 'loom' })}
          onWarp={() => setOpen({ sheet: 'warp' })}
          onMaking={() => setOpen({ sheet: 'making' })}
          onArithmetic={() => setOpen({ sheet: 'arithmetic' })}
        />
        <WeftList
          piece={piece}
          plan={plan}
          onYarn={openYarn}
          onAdd={newYarn}
          onFinishing={() => setOpen({ sheet: 'finishing' })}
        />
      </div>
      {open?.sheet === 'loom' && <LoomSheet piece={piece} first={field} onClose={close} />}
      {open?.sheet === 'warp' && <WarpSheet piece={piece} onClose={close} />}
      {open?.sheet === 'making' && <MakingSheet piece={piece} onClose={close} />}
      {open?.sheet === 'yarn' && <YarnSheet key={open.yarn} piece={piece} yarn={open.yarn} onClose={close} />}
      {open?.sheet === 'arithmetic' && (
        <ArithmeticSheet
          sums={[
            ...plan.materials.arithmetic,
            ...plan.ornaments.map((ornament) => ornament.arithmetic),
            plan.hanging.dowel.arithmetic,
          ]}
          title={words.arithmeticTitle}
          onPrint={() => key !== null && void makeSheet(key, 'arithmetic', null)}
          onClose={close}
        />
      )}
      {open?.sheet === 'finishing' && (
        <FinishingSheet
          piece={piece}
          plan={plan}
          onPrint={() => key !== null && void makeSheet(key, 'finishing', null)}
          onClose={close}
        />
      )}
      {open?.sheet === 'table' && (
        <DrawingTable
          table={{
            name: words.table,
            columns: words.tableColumns,
            rows: [
              [words.widthOfCloth, lengthSaid(plan.materials.warp.width, piece.units)],
              [words.heightOfCloth, lengthSaid(piece.cloth.height, piece.units)],
              [words.baseUp, lengthSaid(piece.cloth.baseAboveBottomBar, piece.units)],
              [words.openingHeight, lengthSaid(piece.loom.openingHeight, piece.units)],
              [words.endsCount, String(piece.warp.ends)],
            ],
          }}
          onClose={close}
        />
      )}
    </ScreenFrame>
  );
}

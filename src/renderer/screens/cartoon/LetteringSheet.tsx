import { useEffect, useState } from 'react';
import { freeName, plainShape } from '../../../core/cartoon/newShape.ts';
import { clothBox, snapToTurn, weavingGrid } from '../../../core/cartoon/snap.ts';
import { translation } from '../../../core/geometry/affine.ts';
import { commandsBox } from '../../../core/geometry/commandsBox.ts';
import { mapCommands } from '../../../core/geometry/mapCommands.ts';
import type { PathCommand, Piece } from '../../../core/model/piece.ts';
import { mm } from '../../../core/model/units.ts';
import { host } from '../../host/currentHost.ts';
import { SecondButton } from '../../parts/Actions.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { DimensionField } from '../../parts/DimensionField.tsx';
import { FieldRow } from '../../parts/Fields.tsx';
import { SheetDialog } from '../../parts/SheetDialog.tsx';
import { usePiece } from '../../state/pieceStore.ts';
import { lengthSaid } from '../../words/figures.ts';
import { useTell } from '../../words/telling.ts';
import { useWords } from '../../words/useWords.ts';
import { useCartoon } from './cartoonStore.ts';
import { freeShapeId, yarnForNew } from './freeShape.ts';

type Face = 'plain' | 'strong' | 'heading';

/** Words as a shape: typed, seen as they will stand on the cloth, put on its middle. */
export function LetteringSheet({ piece, onClose }: { readonly piece: Piece; readonly onClose: () => void }) {
  const words = useWords().cartoon;
  const tell = useTell();
  const cloth = clothBox(piece);
  const [text, setText] = useState('');
  const [face, setFace] = useState<Face>('strong');
  const [height, setHeight] = useState(() => mm(Math.max(5, Math.round((cloth.right - cloth.left) / 6))));
  const [made, setMade] = useState<{ readonly commands: readonly PathCommand[]; readonly told: readonly string[] }>({
    commands: [],
    told: [],
  });
  useEffect(() => {
    let gone = false;
    if (text.trim() === '') {
      setMade({ commands: [], told: [] });
      return;
    }
    void host()
      .call('letterOutlines', { text, face, height })
      .then((answer) => {
        if (gone) return;
        if (answer.ok) setMade(answer.value.result);
        else setMade({ commands: [], told: [`${answer.problem.sentence} ${answer.problem.remedy}`] });
      });
    return () => {
      gone = true;
    };
  }, [text, face, height]);
  const box = commandsBox(made.commands);
  const wide = box === null ? 0 : box.right - box.left;
  const tooWide = wide > cloth.right - cloth.left;
  const add = () => {
    if (box === null) return;
    const grid = weavingGrid(piece);
    const foot = snapToTurn((cloth.top - height) / 2, grid) - Math.min(0, box.bottom);
    const commands = mapCommands(translation(-(box.left + box.right) / 2, foot), made.commands);
    const id = freeShapeId(piece);
    const taken = piece.shapes.map((shape) => shape.name);
    const form = { kind: 'path', commands, fillRule: 'nonzero', origin: 'lettering' } as const;
    const shape = plainShape(id, freeName(text.trim().slice(0, 60), taken), yarnForNew(piece), form);
    usePiece.getState().change((now) => ({ ...now, shapes: [shape, ...now.shapes] }));
    useCartoon.getState().choose(id);
    useCartoon.getState().setTool('select');
    onClose();
  };
  const say = (value: number) => lengthSaid(value, piece.units, 'planned');
  return (
    <SheetDialog title={words.letteringTitle} onClose={onClose}>
      <FieldRow label={words.letteringWords}>
        <input
          className="field is-words"
          aria-label={words.letteringWords}
          value={text}
          maxLength={500}
          // biome-ignore lint/a11y/noAutofocus: the sheet was opened to type words.
          autoFocus
          onChange={(event) => setText(event.target.value)}
          onKeyDown={(event) => {
            if (event.key !== 'Enter') return;
            // The press would go on to the button the focus goes back to.
            event.preventDefault();
            add();
          }}
        />
      </FieldRow>
      <FieldRow label={words.letteringFace}>
        <Choice
          label={words.letteringFace}
          value={face}
          options={(['plain', 'strong', 'heading'] as const).map((value) => ({ value, words: words.faces[value] }))}
          onChoose={setFace}
        />
      </FieldRow>
      <FieldRow label={words.letteringHeight}>
        <DimensionField
          label={words.letteringHeight}
          value={height}
          units={piece.units}
          step={mm(2 * piece.cloth.passHeight)}
          least={2}
          most={2_000}
          onChange={setHeight}
        />
      </FieldRow>
      {box !== null && (
        <figure className="lettering-preview">
          <svg
            className="lettering-drawing"
            viewBox={`${cloth.left} ${-Math.max(box.top, height) * 1.2} ${cloth.right - cloth.left} ${
              Math.max(box.top, height) * 1.2 - Math.min(0, box.bottom) + 2
            }`}
            role="img"
            aria-label={text}
          >
            <g transform={`translate(${-(box.left + box.right) / 2} 0)`}>
              <path d={pathOf(made.commands)} />
            </g>
          </svg>
          <figcaption className="second">
            {words.letteringWide(say(wide))} {tooWide && words.letteringTooWide(say(cloth.right - cloth.left))}
          </figcaption>
        </figure>
      )}
      {made.told.map((sentence) => (
        <p key={sentence} className="second">
          {tell(sentence)}
        </p>
      ))}
      <p className="second">{words.letteringAdvice(say(4 * piece.loom.notchPitch))}</p>
      <p className="sheet-action">
        <SecondButton action={{ words: words.letteringAdd, onPress: add }} />
      </p>
    </SheetDialog>
  );
}

/** An SVG path of the commands, y upward turned down. */
function pathOf(commands: readonly PathCommand[]): string {
  const n = (value: number) => value.toFixed(2);
  let path = '';
  for (const command of commands) {
    if (command.to === 'close') path += 'Z';
    else if (command.to === 'cubic')
      path += `C${n(command.x1)} ${n(-command.y1)} ${n(command.x2)} ${n(-command.y2)} ${n(command.x)} ${n(-command.y)}`;
    else path += `${command.to === 'move' ? 'M' : 'L'}${n(command.x)} ${n(-command.y)}`;
  }
  return path;
}

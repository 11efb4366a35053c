import { useState } from 'react';
import type { Slit } from '../../../core/model/plan.ts';
import { mm } from '../../../core/model/units.ts';
import { mayStayOpen } from '../../../core/order/slits.ts';
import { QuietButton } from '../../parts/Actions.tsx';
import { FiguresTable } from '../../parts/FiguresTable.tsx';
import { SheetDialog } from '../../parts/SheetDialog.tsx';
import { Sign } from '../../parts/Sign.tsx';
import type { Work } from '../../state/useWork.ts';
import { lengthSaid } from '../../words/figures.ts';
import { useTell } from '../../words/telling.ts';
import { useWords } from '../../words/useWords.ts';

interface SlitsAndMarksProps {
  readonly work: Work;
  readonly which: 'slits' | 'marks';
  readonly onClose: () => void;
}

/** What to sew or share at each slit, or where to mark each string. */
export function SlitsAndMarks({ work, which, onClose }: SlitsAndMarksProps) {
  const words = useWords().order;
  const tell = useTell();
  const length = (value: number) => lengthSaid(mm(value), work.piece.units, 'planned');
  const [showShort, setShowShort] = useState(false);
  if (which === 'slits') {
    // What needs nothing done is quiet: one line, however many they are.
    const long = work.plan.slits.filter((slit) => !mayStayOpen(slit, work.piece));
    const short = work.plan.slits.filter((slit) => mayStayOpen(slit, work.piece));
    const said = (slit: Slit) => words.slit(slit.between[0] + 1, slit.between[1] + 1, length(slit.lengthMm));
    return (
      <SheetDialog title={words.slits} onClose={onClose}>
        {long.length === 0 && <p>{words.noSlits}</p>}
        <ul className="slit-list">
          {long.map((slit) => (
            <li key={`${slit.between[0]} ${slit.fromPass}`}>
              <strong>{said(slit)}</strong> {tell(slit.remedy)}
            </li>
          ))}
        </ul>
        {short.length > 0 && (
          <>
            <p className="slits-short">
              <Sign name="agrees" size={22} />
              <span>{words.shortSlits(short.length, long.length > 0)}</span>
              <QuietButton onPress={() => setShowShort(!showShort)}>
                {showShort ? words.foldSlits(short.length) : words.showSlits(short.length)}
              </QuietButton>
            </p>
            {showShort && (
              <ul className="slit-list">
                {short.map((slit) => (
                  <li key={`${slit.between[0]} ${slit.fromPass}`}>{said(slit)}</li>
                ))}
              </ul>
            )}
          </>
        )}
        <h3>{words.overhangs}</h3>
        {work.plan.overhangs.length === 0 && <p>{words.noOverhangs}</p>}
        <ul className="slit-list">
          {work.plan.overhangs.map((overhang) => (
            <li key={`${overhang.block} ${overhang.over} ${overhang.side}`}>
              {words.overhang(overhang.block + 1, overhang.over + 1, overhang.ends, overhang.side)}
            </li>
          ))}
        </ul>
      </SheetDialog>
    );
  }
  return (
    <SheetDialog title={words.marks} onClose={onClose} place="wide">
      <p className="second">{words.marksLead}</p>
      <FiguresTable columns={words.markColumns}>
        {work.plan.marks
          .filter((mark) => mark.heightsMm.length > 0)
          .map((mark) => (
            <tr key={mark.end}>
              <th scope="row">{mark.end + 1}</th>
              <td>{mark.heightsMm.map(length).join(' · ')}</td>
            </tr>
          ))}
      </FiguresTable>
    </SheetDialog>
  );
}

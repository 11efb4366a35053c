import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { figuresIn, lengthIn, tellIn } from '../../src/core/words/telling.ts';
import { sampleCheck } from '../pdf/sampleCheck.ts';
import { harbourLantern } from '../pdf/samplePiece.ts';
import { everyFlag } from '../support/everyFlag.ts';

/** Files whose sentences a weaver reads on Piece, Loom check and Record. */
const speaking = [
  'core/compare/checkPhoto.ts',
  'core/compare/edgeFlags.ts',
  'core/compare/fellFlags.ts',
  'core/compare/planFlags.ts',
  'core/cartoon/svg/importDrawing.ts',
  'core/cartoon/svg/readNodes.ts',
  'core/cartoon/trace/tracePicture.ts',
  'core/compare/spreadFlags.ts',
  'core/compare/stringFlags.ts',
  'core/project/document.ts',
  'core/order/blockRemarks.ts',
  'core/order/slits.ts',
  'core/ornaments/ornamentPlace.ts',
  'core/ornaments/ornamentPlans.ts',
  'main/typefaces/lettering.ts',
  'core/photo/agreeingMarks.ts',
  'core/photo/asPlanned.ts',
  'core/photo/doubtedPlan.ts',
  'core/photo/finishedLoom.ts',
  'core/photo/locateAlone.ts',
  'core/photo/locateByMarks.ts',
  'core/photo/marksCamera.ts',
  'core/photo/pointsCamera.ts',
  'core/photo/quality.ts',
  'core/warp/centring.ts',
  'core/warp/loomFit.ts',
  'core/warp/settCheck.ts',
  'main/decode/decodePhoto.ts',
  'main/decode/inspectPhoto.ts',
  'main/exchange/exportPiece.ts',
  'main/exchange/folderSource.ts',
  'main/exchange/importPiece.ts',
  'main/exchange/stripMetadata.ts',
  'main/exchange/zipSource.ts',
  'main/files/fileProblem.ts',
  'main/service/checkHandlers.ts',
  'main/service/openGiven.ts',
  'main/service/openPieces.ts',
  'main/service/photoHandlers.ts',
  'main/service/pieceHandlers.ts',
  'main/service/service.ts',
  'main/service/watchHandlers.ts',
  'main/store/checkStore.ts',
  'main/store/createPiece.ts',
  'main/store/pieceHandle.ts',
  'main/store/pieceLock.ts',
  'main/store/readPiece.ts',
  'main/store/savePiece.ts',
  'main/vision/visionJobs.ts',
  'renderer/host/fileBytes.ts',
  'main/vision/worker.ts',
];

const spread = { 'size.giveOrTake': 'give or take 0.3', 'lead.giveOrTake': 'give or take 0.3' };
/** What holes hold, so that words chosen by side are tried both ways; anything else is a figure. */
const left = { side: 'left', 'course.side': 'left', low: 'left', high: 'right', ahead: 'left', behind: 'right' };
const right = { side: 'right', 'course.side': 'right', low: 'right', high: 'left', ahead: 'right', behind: 'left' };
const fillings: readonly Readonly<Record<string, string>>[] = [
  { ...spread, ...left, where: 'the left' },
  { ...spread, ...right, where: 'the right' },
  { ...spread, ...right, where: 'both sides' },
];
/** Holes that hold words of their own. */
const wordy: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  'core/compare/fellFlags.ts': { count: 'one turn' },
  'core/compare/edgeFlags.ts': { side: 'Left', 'figureWords(one, units)': '2.8 mm in, give or take 0.3' },
  'main/exchange/importPiece.ts': { sentence: 'There is no piece in it.' },
  'core/warp/centring.ts': { count: '12 is even', between: 'notches 1 to 12 of 51' },
};

const figures = (text: string): string[] => (text.match(/\d+/g) ?? []).sort();

/** Whole sentences in a source file, with its holes filled. */
function sentencesOf(file: string): string[] {
  const path = createRequire(import.meta.url).resolve(`../../src/${file}`);
  const source = ts.createSourceFile(file, readFileSync(path, 'utf8'), ts.ScriptTarget.Latest, true);
  const found: string[] = [];
  const visit = (node: ts.Node) => {
    if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node)) found.push(node.text);
    if (
      ts.isTemplateExpression(node) &&
      !/[?:=]/.test(node.templateSpans.map((span) => span.expression.getText()).join(''))
    ) {
      for (const fill of fillings) {
        const held = { ...fill, ...wordy[file] };
        const spans = node.templateSpans.map((span) => (held[span.expression.getText()] ?? '12') + span.literal.text);
        found.push(node.head.text + spans.join(''));
      }
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found.filter((text) => /^[A-Z1].*\s.*[.]$/.test(text));
}

const english =
  /\b(the|is|are|this|with|from|weft|warp|edge|give or take|mm in|mm out|inch|turns?|ends?|again|piece)\b/i;

describe('sentences of the core and the host', () => {
  it.each(speaking)('of %s are said in German', (file) => {
    const sentences = sentencesOf(file);
    expect(sentences.length).toBeGreaterThan(1);
    expect(sentences.filter((sentence) => tellIn('de', sentence) === sentence)).toEqual([]);
  });

  it('have a comma in their figures in German, and dates, versions and file names as they are', () => {
    expect(figuresIn('de', '1.06 mm, not 1.14. Then 2 438.5 g.')).toBe('1,06 mm, not 1,14. Then 2 438,5 g.');
    expect(figuresIn('de', 'IMG_1.2.jpg, Plumbweft 0.1.0, am 3.4.2026, x1.5')).toBe(
      'IMG_1.2.jpg, Plumbweft 0.1.0, am 3.4.2026, x1.5',
    );
    expect(figuresIn('en', '1.06 mm')).toBe('1.06 mm');
    expect(lengthIn('de', '8 ¼ in')).toBe('8 ¼ Zoll');
  });

  it('stay as they are in English, and when nobody translated them', () => {
    expect(tellIn('en', 'No loom is seen in the picture.')).toBe('No loom is seen in the picture.');
    expect(tellIn('de', 'A sentence nobody knows.')).toBe('A sentence nobody knows.');
  });

  it('name in German what was marked', () => {
    expect(
      tellIn('de', 'The length of 126.5 mm is 5.6 mm out against everything else in the picture and was left out.'),
    ).toBe('Die Länge von 126,5 mm weicht um 5,6 mm von allem anderen auf dem Bild ab und blieb außer Betracht.');
    expect(
      tellIn('de', 'The top left corner is 4.0 mm out against everything else in the picture and was left out.'),
    ).toMatch(/^Die Ecke oben links weicht/);
  });

  it('say what was going on, too, when a disk is in trouble', () => {
    expect(tellIn('de', 'The disk filled up while keeping the piece. What was kept before is unchanged.')).toBe(
      'Die Platte ist voll geworden (beim Sichern: Stück). Was vorher gesichert war, ist unverändert.',
    );
    expect(tellIn('de', 'It holds a link to another place, so nothing was brought in.')).toBe(
      'Es enthält einen Verweis an einen anderen Ort; es wurde nichts hereingeholt.',
    );
  });

  it('keep their figures, whole flags as the core makes them', () => {
    const piece = harbourLantern();
    const { reading } = sampleCheck();
    const flags = everyFlag(reading, piece);
    for (const { message, advice } of flags) {
      for (const words of [message.mm, message.in]) {
        // A screen sets the first sentence apart as a title and tells the others together.
        const afterTitle = words
          .split(/(?<=\.) (?=\S)/)
          .slice(1)
          .join(' ');
        for (const sentence of [words, afterTitle, advice]) {
          const said = tellIn('de', sentence);
          expect(said).not.toMatch(english);
          // The order of words may put another figure first.
          expect(figures(said)).toEqual(figures(sentence));
        }
      }
    }
    expect(tellIn('de', 'Right edge drawing in since 67 mm up. 2.8 mm in, give or take 0.3.')).toBe(
      'Die rechte Kante zieht seit 67 mm Höhe ein. 2,8 mm nach innen, auf 0,3 genau.',
    );
  });
});

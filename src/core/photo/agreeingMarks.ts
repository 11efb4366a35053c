import { type BothUnits, inBothUnits } from '../model/bothUnits.ts';
import type { Reason } from '../model/check.ts';
import { lengthInWords } from '../model/lengthWords.ts';
import { success } from '../model/outcome.ts';
import { cameraSteps, cameraToVector } from './camera.ts';
import type { MarkEvidence } from './markEvidence.ts';
import { distanceFromFit, mostDistance, type PoseEvidence } from './poseEvidence.ts';
import { FITTED, type PoseFit } from './poseFit.ts';
import { refusal, type Sought } from './refusal.ts';

/** One thing the weaver marked, or an earlier check, as a sentence begins with it. */
export interface Reference {
  readonly kind: 'corner' | 'length' | 'card' | 'earlier';
  readonly name: BothUnits;
  readonly evidence: MarkEvidence;
}

/** References that agree, fitted together. */
export interface Agreed {
  readonly fit: PoseFit;
  readonly used: readonly Reference[];
  /** What was left out, and by how much it is out. */
  readonly remarks: readonly Reason[];
}

const parametersOf = (fit: PoseFit): Float64Array => Float64Array.of(...cameraToVector(fit.camera), ...fit.wood);

/** Distance of what the evidence says from a fit without it, as a share of the largest that chance would give. */
export function disagreementWith(fit: PoseFit, evidence: PoseEvidence): number {
  const distance = distanceFromFit(evidence, parametersOf(fit), fit.covariance, cameraSteps, FITTED);
  return distance / mostDistance(evidence.freedom);
}

interface Astray {
  readonly reference: Reference;
  readonly share: number;
  readonly mm: number;
}

const disagree = ({ reference, mm }: Astray): Sought<Agreed> =>
  refusal(
    'references-disagree',
    inBothUnits(
      (units) =>
        `${reference.name[units]} and the rest of the picture disagree by ${lengthInWords(mm, units, 'edge')}, and which of them is right can’t be told.`,
    ),
    reference.kind === 'earlier'
      ? 'Measure the opening again and correct it in the plan, or mark corners, a length or a card in the picture.'
      : 'Look whether every mark is where it belongs, measure the opening and the length again, and mark one thing more: another corner, a length or a card.',
  );

const leftOut = ({ reference, mm }: Astray): Reason => ({
  code: 'references-disagree',
  message: inBothUnits(
    (units) =>
      `${reference.name[units]} is ${lengthInWords(mm, units, 'edge')} out against everything else in the picture and was left out.`,
  ),
  remedy:
    reference.kind === 'earlier'
      ? 'Look at that check again: if its figures are out, measure its photograph anew or throw it away.'
      : 'Look whether it was marked where it belongs and its size is right, then measure again.',
});

/**
 * Fits all references that agree with each other. Each is held against a fit of all the others; one that is out by more
 * than three sigmas and without which the rest agree is left out and named. Where leaving out one or another would do
 * as well, or too little is left to bear witness, nothing is fitted.
 * @param fitWith fits what the picture shows of itself together with the evidence given.
 * @param witnesses how many independent things the picture itself gives to that fit: opening, notches.
 */
export function agreeing(
  references: readonly Reference[],
  fitWith: (evidence: readonly PoseEvidence[]) => PoseFit,
  witnesses: number,
): Sought<Agreed> {
  let used = references;
  const out: Astray[] = [];
  const astrayAmong = (among: readonly Reference[]): Astray[] =>
    among
      .map((reference): Astray => {
        const others = among.filter((one) => one !== reference);
        const fit = fitWith(others.map(({ evidence }) => evidence));
        const share = disagreementWith(fit, reference.evidence);
        return { reference, share, mm: reference.evidence.outMm(parametersOf(fit)) };
      })
      .filter(({ share }) => share > 1)
      .sort((a, b) => b.share - a.share);
  for (;;) {
    const astray = astrayAmong(used);
    const worst = astray[0];
    if (!worst) break;
    const without = (one: Astray) => used.filter((reference) => reference !== one.reference);
    if (witnesses + used.length - 1 < 2) return disagree(worst);
    const enough = astray.filter((one) => astrayAmong(without(one)).length === 0);
    // What the picture says twice over is believed against any mark; marks alone bear no more than one that is out.
    const next = enough.length === 1 ? enough[0]! : witnesses >= 2 ? worst : null;
    if (!next) return disagree(worst);
    out.push(next);
    used = without(next);
  }
  // Corners that are out one like another say that the picture was tied to other notches or another frame.
  const corners = (list: readonly Reference[]) => list.filter(({ kind }) => kind === 'corner').length;
  const cornersOut = corners(out.map(({ reference }) => reference));
  if (cornersOut > 1 && cornersOut >= corners(used)) {
    return disagree(out.find(({ reference }) => reference.kind === 'corner')!);
  }
  const fit = fitWith(used.map(({ evidence }) => evidence));
  return success({ fit, used, remarks: out.map(leftOut) });
}

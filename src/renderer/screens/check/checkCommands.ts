import type { CommandOutline } from '../../keys/commandStore.ts';
import type { Words } from '../../words/en.ts';
import type { LayerName } from './layers.ts';

const layerKeys = [
  ['plan', 'P'],
  ['cloth', 'L'],
  ['difference', 'D'],
  ['strings', 'S'],
  ['ribs', 'B'],
  ['colours', 'C'],
] as const satisfies readonly (readonly [LayerName, string])[];

/** Layers of the picture, on and off. */
export const layerCommands = ({ check: words }: Words) =>
  layerKeys.map(([layer, key]): CommandOutline & { readonly layer: LayerName } => ({
    id: `layer-${layer}`,
    layer,
    words: words.layerOnOff(words.layers[layer]),
    keys: [key],
    needs: words.needsMeasured,
  }));

/** Going to a flag, of so many; nine have a key. */
export const flagCommands = ({ check: words }: Words, flags: number): readonly CommandOutline[] =>
  Array.from({ length: Math.min(9, flags) }, (_, index) => ({
    id: `flag-${index + 1}`,
    words: words.goToFlag(index + 1),
    keys: [String(index + 1)],
    needs: words.needsFlag,
  }));

/** Bringing a photograph in. */
export const bringInCommands = ({ check: words }: Words) =>
  [
    { id: 'choose-photograph', words: words.wayChoose, keys: ['O'] },
    { id: 'watch-folder', words: words.watchFolder, keys: ['W'] },
    { id: 'photographs', words: words.photographs, keys: ['H'] },
  ] as const satisfies readonly CommandOutline[];

/** The camera, from a screen that shows no photograph yet. */
export const cameraCommand = ({ check: words }: Words) =>
  [{ id: 'camera', words: words.wayCamera, keys: ['Space'] }] as const satisfies readonly CommandOutline[];

/** The same from a photograph: another one. */
export const againCommand = ({ check: words }: Words) =>
  [{ id: 'camera', words: words.again, keys: ['Space'] }] as const satisfies readonly CommandOutline[];

/** @param keys by which the marking is begun from here. */
export const markPointsCommand = ({ check: words }: Words, keys: readonly string[]) =>
  [
    { id: 'four-points', words: words.markFourPoints, keys, needs: words.needsPhotograph },
  ] as const satisfies readonly CommandOutline[];

/** What can be done with a measured photograph. */
export const measuredCommands = ({ check: words }: Words) => {
  const needs = words.needsMeasured;
  return [
    { id: 'fell-strip', words: words.fellStrip, keys: ['F'], needs },
    { id: 'as-taken', words: words.asTaken, keys: ['A'], needs },
    { id: 'table', words: words.table, keys: ['T'], needs },
    { id: 'share', words: words.share, keys: ['G'], needs },
  ] as const satisfies readonly CommandOutline[];
};

/** Keeping a check that isn't kept yet. */
export const keepCommand = ({ check: words }: Words) =>
  [
    { id: 'keep', words: words.keep, keys: ['K'], needs: words.needsDraft },
  ] as const satisfies readonly CommandOutline[];

/** What can be done while the camera is shown. */
export const liveCommands = ({ check: words }: Words) => {
  const needs = words.needsCamera;
  return [
    { id: 'take', words: words.take, keys: ['Space'], needs },
    { id: 'steady', words: words.steady, keys: ['S'], needs },
    { id: 'leave-camera', words: words.leaveCamera, keys: ['Escape'], needs },
  ] as const satisfies readonly CommandOutline[];
};

/** What can be done while points are marked. @param marked whether a length and a card are marked already. */
export const markingCommands = (
  { check: words }: Words,
  marked: { readonly length: boolean; readonly card: boolean },
) => {
  const needs = words.needsMarking;
  return [
    { id: 'leave-points', words: words.leavePoints, keys: ['Escape'], needs },
    { id: 'take-back-point', words: words.takeBackPoint, keys: ['Backspace', 'Delete'], needs },
    { id: 'mark-length', words: words.markLength(marked.length), keys: ['L'], needs },
    { id: 'mark-card', words: words.markCard(marked.card), keys: ['C'], needs },
  ] as const satisfies readonly CommandOutline[];
};

/** Everything that can be done on Loom check, whatever it shows just now. */
export const checkCommands = (all: Words): readonly CommandOutline[] => [
  ...cameraCommand(all),
  ...bringInCommands(all),
  ...markPointsCommand(all, ['M']),
  ...keepCommand(all),
  ...flagCommands(all, 1),
  ...layerCommands(all),
  ...measuredCommands(all),
  ...liveCommands(all),
  ...markingCommands(all, { length: false, card: false }),
];

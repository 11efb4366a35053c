import { useMemo } from 'react';
import type { LoomReading } from '../../../core/model/check.ts';
import type { Piece } from '../../../core/model/piece.ts';
import type { PlannedSelvedges } from '../../../core/warp/plannedSelvedges.ts';
import { colourMismatches } from './colourMismatches.ts';
import type { Layers } from './layers.ts';
import { ClothLine, Difference, DifferencePatterns, PlanLine } from './marks.tsx';
import {
  differences,
  measuredCloth,
  measuredRibs,
  measuredStrings,
  type Project,
  plannedOutline,
  plannedShapes,
  plannedStrings,
} from './overlayPaths.ts';

interface PhotographOverlayProps {
  readonly piece: Piece;
  readonly reading: LoomReading;
  readonly edges: PlannedSelvedges;
  readonly layers: Layers;
  /** Ends a flag speaks of: their bare strings are marked beside the straight they should be. */
  readonly marked: readonly number[];
  readonly project: Project;
  /** Text-size setting as a share; lines grow with it. */
  readonly size: number;
  readonly name: string;
}

/** Plan, cloth and what lies between them, in screen pixels. */
export function PhotographOverlay(props: PhotographOverlayProps) {
  const { piece, reading, edges, layers, marked, project, size, name } = props;
  const topY = piece.loom.openingHeight - piece.cloth.baseAboveBottomBar;
  const paths = useMemo(
    () => ({
      plan: plannedOutline(edges, piece.cloth.height, project) + plannedShapes(piece, edges, project),
      cloth: measuredCloth(reading, piece.loom.notchPitch / 2, project),
      ...differences(reading, edges, project),
      strings: layers.strings ? measuredStrings(reading, topY, project) : '',
      flagged: measuredStrings(reading, topY, project, marked),
      straight: plannedStrings(reading, piece, project, marked),
      ribs: layers.ribs ? measuredRibs(reading, project) : '',
      colours: layers.colours ? colourMismatches(piece, reading, project) : '',
    }),
    [piece, reading, edges, project, topY, marked, layers.strings, layers.ribs, layers.colours],
  );
  return (
    <g>
      <DifferencePatterns name={name} size={size} />
      {layers.difference && paths.short !== '' && <Difference d={paths.short} name={name} side="short" />}
      {layers.difference && paths.past !== '' && <Difference d={paths.past} name={name} side="past" />}
      {paths.colours !== '' && <Difference d={paths.colours} name={name} side="past" />}
      {[paths.strings, paths.ribs].map(
        (d) =>
          d !== '' && (
            <g key={d.length} fill="none">
              <path d={d} stroke="var(--photo-cloth-casing)" strokeWidth={2.7 * size} />
              <path d={d} stroke="var(--photo-cloth)" strokeWidth={1.3 * size} />
            </g>
          ),
      )}
      {paths.straight !== '' && <PlanLine d={paths.straight} size={size} />}
      {paths.flagged !== '' && <ClothLine d={paths.flagged} size={0.7 * size} />}
      {layers.plan && <PlanLine d={paths.plan} size={size} />}
      {layers.cloth && <ClothLine d={paths.cloth} size={size} />}
    </g>
  );
}

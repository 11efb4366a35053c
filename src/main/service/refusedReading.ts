import { inBothUnits } from '../../core/model/bothUnits.ts';
import type { LoomReading, ReasonCode } from '../../core/model/check.ts';
import type { Problem } from '../../core/model/outcome.ts';
import { unmeasured } from '../../core/photo/unmeasured.ts';

const codes: Readonly<Record<string, ReasonCode>> = {
  'photo-unreadable': 'unreadable-file',
  'photo-too-large': 'too-large',
  'photo-too-small': 'too-small',
  'took-too-long': 'took-too-long',
};

/** A photograph that never reached the measuring, told in the form of a check. */
export const refusedReading = (problem: Problem): LoomReading =>
  unmeasured('refused', {
    code: codes[problem.tag] ?? 'internal',
    message: inBothUnits(() => problem.sentence),
    remedy: problem.remedy,
  });

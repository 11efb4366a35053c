import type { CheckSummary } from '../../core/contract/hostApi.ts';

/** Checks that measured something, in the order in which their photographs were taken; those without a time as kept. */
export const measuredAsTaken = (checks: readonly CheckSummary[]): CheckSummary[] =>
  checks
    .filter(({ status }) => status === 'measured')
    .sort((one, other) => (one.taken ?? one.kept).localeCompare(other.taken ?? other.kept));

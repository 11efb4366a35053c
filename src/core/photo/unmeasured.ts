import type { LoomReading, Reason } from '../model/check.ts';

/** A reading without figures. */
export const unmeasured = (status: Exclude<LoomReading['status'], 'measured'>, reason: Reason): LoomReading => ({
  status,
  reasons: [reason],
  reference: null,
  endsCounted: null,
  ends: [],
  selvedge: [],
  ribs: [],
  pass: null,
  beat: [],
  colours: null,
  flags: [],
  timingMs: {},
});

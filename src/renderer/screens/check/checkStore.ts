import { create } from 'zustand';
import type { CheckSummary } from '../../../core/contract/hostApi.ts';
export const useChecks = create<{ readonly summaries: readonly CheckSummary[] }>(() => ({ summaries: [] }));

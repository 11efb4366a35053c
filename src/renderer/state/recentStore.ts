import { create } from 'zustand';
import type { RecentPiece } from '../../core/contract/hostApi.ts';
import { host } from '../host/currentHost.ts';

interface RecentState {
  readonly pieces: readonly RecentPiece[];
  readonly shell: 'electron' | 'local' | null;
  readonly load: () => Promise<void>;
}

/** The pieces this computer has seen, newest first, and which shell holds them. */
export const useRecent = create<RecentState>((set) => ({
  pieces: [],
  shell: null,
  load: async () => {
    const [recent, about] = await Promise.all([host().call('recentPieces', {}), host().call('about', {})]);
    set({
      pieces: recent.ok ? recent.value.result : [],
      shell: about.ok ? about.value.result.shell : null,
    });
  },
}));

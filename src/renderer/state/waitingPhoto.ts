import { create } from 'zustand';

interface WaitingPhotoState {
  /** A photograph handed over before there was a piece to measure it against. */
  readonly file: File | null;
  readonly wait: (file: File) => void;
  readonly take: () => File | null;
}

export const useWaitingPhoto = create<WaitingPhotoState>((set, get) => ({
  file: null,
  wait: (file) => set({ file }),
  take: () => {
    const { file } = get();
    set({ file: null });
    return file;
  },
}));

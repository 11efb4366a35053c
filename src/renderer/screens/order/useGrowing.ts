import { useEffect, useState } from 'react';

const SECONDS = 12;

/**
 * The cloth growing from the twining to the last pass, once, for as long as nobody stops it. With reduced motion it
 * grows in sixteen cuts.
 */
export function useGrowing(passes: number): { readonly shown: number | null; readonly toggle: () => void } {
  const [started, setStarted] = useState<number | null>(null);
  const [shown, setShown] = useState<number | null>(null);
  useEffect(() => {
    if (started === null) return;
    const still = matchMedia('(prefers-reduced-motion: reduce)').matches;
    let frame = 0;
    const draw = (now: number) => {
      const share = Math.min(1, (now - started) / (SECONDS * 1000));
      setShown(Math.round(passes * (still ? Math.ceil(share * 16) / 16 : share)));
      if (share < 1) frame = requestAnimationFrame(draw);
      else setTimeout(() => setStarted(null), 1200);
    };
    frame = requestAnimationFrame(draw);
    return () => {
      cancelAnimationFrame(frame);
      setShown(null);
    };
  }, [started, passes]);
  return { shown, toggle: () => setStarted(started === null ? performance.now() : null) };
}

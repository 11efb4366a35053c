import { useEffect, useState } from 'react';

const HOUR_MS = 3_600_000;
const SHOWN_MS = 120_000;

/** After an hour at the bench, a quiet word about resting hands and back, for two minutes. Common practice, no source. */
export function useRest(): boolean {
  const [rest, setRest] = useState(false);
  useEffect(() => {
    let hide: ReturnType<typeof setTimeout>;
    const hourly = setInterval(() => {
      setRest(true);
      hide = setTimeout(() => setRest(false), SHOWN_MS);
    }, HOUR_MS);
    return () => {
      clearInterval(hourly);
      clearTimeout(hide);
    };
  }, []);
  return rest;
}

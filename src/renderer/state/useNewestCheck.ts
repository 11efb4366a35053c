import { useEffect, useState } from 'react';
import type { CheckRecord } from '../../core/model/check.ts';
import { host } from '../host/currentHost.ts';
import { measuredAsTaken } from './measuredAsTaken.ts';
import { usePiece } from './pieceStore.ts';

export interface NewestCheck {
  /** As checks are numbered on screen: in the order in which they were kept, from 1. */
  readonly number: number;
  readonly record: CheckRecord;
}

/** The check of the newest measured photograph with all its figures; null until it is read, and where there is none. */
export function useNewestCheck(): NewestCheck | null {
  const key = usePiece((state) => state.key);
  const [newest, setNewest] = useState<NewestCheck | null>(null);
  useEffect(() => {
    setNewest(null);
    if (key === null) return;
    let gone = false;
    void newestOf(key).then((found) => {
      if (!gone) setNewest(found);
    });
    return () => {
      gone = true;
    };
  }, [key]);
  return newest;
}

async function newestOf(key: string): Promise<NewestCheck | null> {
  const listed = await host().call('listChecks', { key });
  if (!listed.ok) return null;
  const kept = [...listed.value.result].sort((one, other) => one.kept.localeCompare(other.kept));
  const newest = measuredAsTaken(kept).at(-1);
  if (newest === undefined) return null;
  const read = await host().call('readCheck', { key, id: newest.id });
  return read.ok ? { number: kept.indexOf(newest) + 1, record: read.value.result } : null;
}

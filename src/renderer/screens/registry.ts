import type { ComponentType } from 'react';
import type { ScreenName } from '../state/shellStore.ts';
import { Screen as Cartoon } from './cartoon/Screen.tsx';
import { Screen as Check } from './check/Screen.tsx';
import { Screen as Order } from './order/Screen.tsx';
import { Screen as PieceScreen } from './piece/Screen.tsx';
import { Screen as Record_ } from './record/Screen.tsx';

/** One component a screen; each draws its own work and footer inside a `ScreenFrame`. */
export const screens: Readonly<Record<ScreenName, ComponentType>> = {
  piece: PieceScreen,
  cartoon: Cartoon,
  order: Order,
  check: Check,
  record: Record_,
};

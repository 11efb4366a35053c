import type { CommandOutline } from '../keys/commandStore.ts';
import type { ScreenName } from '../state/shellStore.ts';
import type { Words } from '../words/en.ts';
import { benchCommands } from './bench/benchCommands.ts';
import { cartoonCommands, toolCommands } from './cartoon/cartoonCommands.ts';
import { checkCommands } from './check/checkCommands.ts';
import { orderCommands } from './order/orderCommands.ts';
import { pieceCommands } from './piece/pieceCommands.ts';
import { recordCommands } from './record/recordCommands.ts';

/** All that can be done on one screen, whether it is shown or not. The bench is a way of being in the order of work. */
export interface CommandGroup {
  readonly name: string;
  readonly screen: ScreenName;
  readonly bare: boolean;
  /** Under which names the screen offers its commands while it is shown. */
  readonly owners: readonly string[];
  readonly commands: readonly CommandOutline[];
}

/** The commands of every screen, in the order of the bar. */
export const commandGroups = (all: Words): readonly CommandGroup[] => {
  const { screens } = all.shell;
  const group = (screen: ScreenName, owners: readonly string[], commands: readonly CommandOutline[]): CommandGroup => ({
    name: screens[screen],
    screen,
    bare: false,
    owners,
    commands,
  });
  return [
    group('piece', ['piece'], pieceCommands(all)),
    group('cartoon', ['cartoon'], [...toolCommands(all), ...cartoonCommands(all)]),
    group('order', ['order'], orderCommands(all)),
    { ...group('order', ['bench'], benchCommands(all)), name: all.bench.name, bare: true },
    group('check', ['no-check', 'measured-check', 'cannot-measure', 'camera', 'four-points'], checkCommands(all)),
    group('record', ['record'], recordCommands(all)),
  ];
};

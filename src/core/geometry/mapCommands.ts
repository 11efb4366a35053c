import type { PathCommand } from '../model/piece.ts';
import { type Affine, applyX, applyY } from './affine.ts';

/** Path commands with every point, handles too, sent through a map; exact, since a cubic's image is a cubic. */
export function mapCommands(map: Affine, commands: readonly PathCommand[]): PathCommand[] {
  return commands.map((command): PathCommand => {
    if (command.to === 'close') return command;
    const x = applyX(map, command.x, command.y);
    const y = applyY(map, command.x, command.y);
    if (command.to !== 'cubic') return { to: command.to, x, y };
    return {
      to: 'cubic',
      x1: applyX(map, command.x1, command.y1),
      y1: applyY(map, command.x1, command.y1),
      x2: applyX(map, command.x2, command.y2),
      y2: applyY(map, command.x2, command.y2),
      x,
      y,
    };
  });
}

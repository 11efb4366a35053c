import { letteringCommands } from '../typefaces/lettering.ts';
import { answer, type Handlers } from './handlerTypes.ts';

/** Calls that need the typefaces' own outlines. */
export const letteringHandlers: Handlers<'letterOutlines'> = {
  async letterOutlines({ text, face, height }) {
    const made = letteringCommands(text, face, height);
    return made.ok ? answer({ commands: [...made.value.commands], told: [...made.value.told] }) : made;
  },
};

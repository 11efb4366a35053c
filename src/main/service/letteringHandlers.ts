import { answer, type Handlers } from './handlerTypes.ts';

/** Calls that need the typefaces' own outlines. */
export const letteringHandlers: Handlers<'letterOutlines'> = {
  async letterOutlines({ text, face, height }) {
    // Reading a typeface needs a library that would hold up the program's start; it waits until letters are drawn.
    const { letteringCommands } = await import('../typefaces/lettering.ts');
    const made = letteringCommands(text, face, height);
    return made.ok ? answer({ commands: [...made.value.commands], told: [...made.value.told] }) : made;
  },
};

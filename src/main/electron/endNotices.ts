import type { HostService } from '../service/service.ts';

type Language = 'en' | 'de';
interface Words {
  readonly done: Readonly<Record<Language, string>>;
  readonly failed: Readonly<Record<Language, string>>;
}

/** Calls that may take so long that the weaver turns to something else. */
const longCalls: Readonly<Record<string, Words>> = {
  measurePhoto: {
    done: { en: 'The photograph is measured.', de: 'Das Foto ist ausgemessen.' },
    failed: { en: 'The photograph could not be measured.', de: 'Das Foto ließ sich nicht ausmessen.' },
  },
  makeSheet: {
    done: { en: 'The sheet is made.', de: 'Das Blatt ist fertig.' },
    failed: { en: 'The sheet could not be made.', de: 'Das Blatt ließ sich nicht machen.' },
  },
  exportPiece: {
    done: { en: 'The piece is packed.', de: 'Das Stück ist eingepackt.' },
    failed: { en: 'The piece could not be packed.', de: 'Das Stück ließ sich nicht einpacken.' },
  },
  importPiece: {
    done: { en: 'The piece is brought in.', de: 'Das Stück ist hereingeholt.' },
    failed: { en: 'The piece could not be brought in.', de: 'Das Stück ließ sich nicht hereinholen.' },
  },
};

/** Shorter than this, the weaver is still looking. */
const LONG_MS = 2_000;

export interface NoticePorts {
  /** ms, from any beginning. */
  readonly now: () => number;
  /** Whether the weaver is looking at something else. */
  readonly away: () => boolean;
  readonly language: () => Promise<Language>;
  readonly show: (words: string) => void;
}

/** The service, which also says when a long call ended while nobody looked. What was stopped on purpose isn't said. */
export function endNotices(service: Pick<HostService, 'call'>, ports: NoticePorts): Pick<HostService, 'call'> {
  return {
    async call(name, params, bytes) {
      const begun = ports.now();
      const outcome = await service.call(name, params, bytes);
      const words = Object.hasOwn(longCalls, name) ? longCalls[name] : undefined;
      const stopped = !outcome.ok && outcome.problem.tag === 'cancelled';
      if (words !== undefined && !stopped && ports.now() - begun >= LONG_MS && ports.away()) {
        ports.show(words[outcome.ok ? 'done' : 'failed'][await ports.language()]);
      }
      return outcome;
    },
  };
}

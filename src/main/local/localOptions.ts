import { parseArgs } from 'node:util';
import { failure, type Outcome, success } from '../../core/model/outcome.ts';

const USUAL_PORT = 47173;
const HIGHEST_PORT = 65535;

export interface LocalOptions {
  /** 0 takes any free one. */
  readonly port: number;
  readonly browser: boolean;
  /** Why this shell was chosen; the starting script knows. */
  readonly why: string;
}

/** Reads what the local host was started with. @returns `unknown-option` where a word or a port can't be used. */
export function localOptions(args: readonly string[]): Outcome<LocalOptions, 'unknown-option'> {
  const wrong = (sentence: string) =>
    failure(
      'unknown-option',
      sentence,
      'Start it as `npm start`, or with `-- --local`, `-- --no-open`, `-- --port 8080`.',
    );
  try {
    const { values } = parseArgs({
      args: [...args],
      options: {
        port: { type: 'string', default: String(USUAL_PORT) },
        'no-open': { type: 'boolean', default: false },
        why: { type: 'string', default: 'the local host was asked for' },
      },
    });
    if (!/^\d{1,5}$/.test(values.port) || Number(values.port) > HIGHEST_PORT)
      return wrong(`A port is a whole number up to ${HIGHEST_PORT}, not ${values.port}.`);
    return success({ port: Number(values.port), browser: !values['no-open'], why: values.why });
  } catch (thrown) {
    return wrong(`It can’t be started like that: ${thrown instanceof Error ? thrown.message : String(thrown)}.`);
  }
}

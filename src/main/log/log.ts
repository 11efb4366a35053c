import { appendFileSync, mkdirSync, readFileSync, renameSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { redact } from './redact.ts';

/** What went on, for a maintainer. Lines never hold private paths. */
export interface Log {
  write(kind: 'note' | 'problem', words: string): void;
  /** The newest lines, oldest first. */
  recent(lines: number): readonly string[];
}

export interface LogLimits {
  readonly bytes: number;
  /** Older files kept beside the current one. */
  readonly files: number;
}

const usual: LogLimits = { bytes: 512 * 1024, files: 4 };

/**
 * A log of plain lines that never grows past `bytes × (files + 1)`. A log that can't be written is given up quietly:
 * it must never stop the weaver's work.
 */
export function openLog(folder: string, now: () => Date, limits: LogLimits = usual): Log {
  const path = join(folder, 'plumbweft.log');
  const numbered = (index: number) => join(folder, `plumbweft.${index}.log`);
  let size = 0;
  try {
    mkdirSync(folder, { recursive: true });
    size = statSync(path, { throwIfNoEntry: false })?.size ?? 0;
  } catch {
    size = 0;
  }
  const rotate = () => {
    for (let index = limits.files - 1; index >= 1; index--) {
      try {
        renameSync(numbered(index), numbered(index + 1));
      } catch {
        // There may be fewer than the limit.
      }
    }
    renameSync(path, numbered(1));
    size = 0;
  };
  return {
    write(kind, words) {
      const flat = redact(words).replace(/\s+/g, ' ').slice(0, 2_000);
      const line = `${now().toISOString()} ${kind} ${flat}\n`;
      try {
        if (size + line.length > limits.bytes && size > 0) rotate();
        appendFileSync(path, line);
        size += Buffer.byteLength(line);
      } catch {
        // Given up quietly, see above.
      }
    },
    recent(lines) {
      const found: string[] = [];
      for (const file of [numbered(1), path]) {
        try {
          found.push(...readFileSync(file, 'utf8').split('\n').filter(Boolean));
        } catch {
          // Not there yet.
        }
      }
      return found.slice(-lines);
    },
  };
}

import { failure, type Outcome } from '../../core/model/outcome.ts';

export type FileTag =
  | 'disk-full'
  | 'not-allowed'
  | 'not-there'
  | 'too-big'
  | 'too-many-open'
  | 'disk-trouble'
  | 'internal';

const codeOf = (thrown: unknown): string | undefined =>
  typeof thrown === 'object' && thrown !== null && 'code' in thrown && typeof thrown.code === 'string'
    ? thrown.code
    : undefined;

/**
 * Turns what the disk threw into words.
 * @param doing what was going on, for example `keeping the piece`; it follows "while".
 */
export function fileProblem(thrown: unknown, doing: string): Outcome<never, FileTag> {
  const code = codeOf(thrown);
  const detail = `${code ?? (thrown instanceof Error ? thrown.name : 'thrown')} while ${doing}`;
  switch (code) {
    case 'ENOSPC':
    case 'EDQUOT':
      return failure(
        'disk-full',
        `The disk filled up while ${doing}. What was kept before is unchanged.`,
        'Free some space and try again.',
        detail,
      );
    case 'EACCES':
    case 'EPERM':
    case 'EROFS':
      return failure(
        'not-allowed',
        `The folder can't be written to, seen while ${doing}. What was kept before is unchanged.`,
        'Move the piece to a folder of your own, or make this one writable.',
        detail,
      );
    case 'ENOENT':
    case 'ENOTDIR':
      return failure(
        'not-there',
        `A file or folder is no longer there, seen while ${doing}.`,
        'If the piece was moved or sits on a drive that was taken out, bring it back and open it again.',
        detail,
      );
    case 'EFBIG':
      return failure(
        'too-big',
        `A file is larger than Plumbweft reads, seen while ${doing}.`,
        'Use a smaller file.',
        detail,
      );
    case 'EMFILE':
    case 'ENFILE':
      return failure(
        'too-many-open',
        `The computer has too many files open, seen while ${doing}.`,
        'Close some programs and try again.',
        detail,
      );
    default:
      return code === undefined
        ? failure(
            'internal',
            `Something Plumbweft didn't expect happened while ${doing}. What was kept before is unchanged.`,
            'Try again; if it happens again, copy the report and send it to us.',
            `${detail}: ${thrown instanceof Error ? thrown.message : String(thrown)}`,
          )
        : failure(
            'disk-trouble',
            `The disk answered with ${code} while ${doing}. What was kept before is unchanged.`,
            'Try again; if it happens again, copy the piece to another disk.',
            detail,
          );
  }
}

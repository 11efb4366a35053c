import { failure, type Outcome, success } from '../../core/model/outcome.ts';
import { tell } from '../words/telling.ts';

/** All of a file the weaver handed over; it may have been moved away, or lie on a stick that is out, by the time it is read. */
export async function fileBytes(file: Blob): Promise<Outcome<Uint8Array, 'file-gone'>> {
  try {
    return success(new Uint8Array(await file.arrayBuffer()));
  } catch (thrown) {
    const { problem } = failure(
      'file-gone',
      'The file is no longer where it was, or can’t be read.',
      'Look whether it is still there, then choose it again.',
      String(thrown),
    );
    return { ok: false, problem: { ...problem, sentence: tell(problem.sentence), remedy: tell(problem.remedy) } };
  }
}

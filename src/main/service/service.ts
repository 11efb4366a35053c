import type { z } from 'zod';
import type { Answer, CallName } from '../../core/contract/hostApi.ts';
import { hostCalls } from '../../core/contract/hostApi.ts';
import { failure, type Outcome, success } from '../../core/model/outcome.ts';
import { endRestingThread } from '../vision/visionThread.ts';
import { checkHandlers } from './checkHandlers.ts';
import { Drafts } from './drafts.ts';
import type { Handlers } from './handlerTypes.ts';
import { homeHandlers } from './homeHandlers.ts';
import { Jobs } from './jobs.ts';
import { letteringHandlers } from './letteringHandlers.ts';
import { loomPhotoHandlers } from './loomPhotos.ts';
import { takeGiven } from './openGiven.ts';
import { keepOpenPieces } from './openPieces.ts';
import { photoHandlers } from './photoHandlers.ts';
import { pieceHandlers } from './pieceHandlers.ts';
import { openPieceLibrary } from './pieceLibrary.ts';
import { readSampleLabels, type SampleLabels } from './sample.ts';
import type { ServicePorts } from './servicePorts.ts';
import { sheetHandlers } from './sheetHandlers.ts';
import { watchHandlers } from './watchHandlers.ts';

/** The one service behind every shell. */
export interface HostService {
  /** Checks name and parameters against the contract, runs the call, checks the answer. Never rejects. */
  call(name: string, params: unknown, bytes: Uint8Array | null): Promise<Outcome<Answer<CallName>>>;
  /** Opens what the system hands over, a packed piece or a piece's folder: the page is told to show it. */
  openGiven(path: string): Promise<Outcome<void>>;
  /** No page is there any more: stops what was worked out for it, releases every lock, and goes on. */
  pagesGone(): Promise<void>;
  /** Releases every lock, stops working and watching. */
  close(): Promise<void>;
}

const isCallName = (name: string): name is CallName => Object.hasOwn(hostCalls, name);

export function createService(ports: ServicePorts): HostService {
  const library = openPieceLibrary(ports);
  const pieces = keepOpenPieces(ports, library);
  const drafts = new Drafts();
  const jobs = new Jobs();
  let labels: Promise<SampleLabels> | null = null;
  const readLabels = () => {
    labels ??= readSampleLabels(ports);
    return labels;
  };
  const { stopWatching, ...watching } = watchHandlers(ports);
  const handlers: Handlers = {
    ...homeHandlers(ports),
    ...pieceHandlers(ports, library, pieces),
    ...checkHandlers(ports, pieces, drafts, readLabels),
    ...photoHandlers(ports, pieces, drafts, jobs, readLabels),
    ...sheetHandlers(ports, pieces),
    ...letteringHandlers,
    ...loomPhotoHandlers(ports),
    ...watching,
  };

  return {
    async call(name, params, bytes) {
      if (!isCallName(name)) {
        return failure(
          'not-a-call',
          'The page asked for something unknown.',
          'Load the page again.',
          name.slice(0, 60),
        );
      }
      const contract = hostCalls[name];
      const parsed = (contract.params as z.ZodType).safeParse(params);
      if (!parsed.success || (bytes !== null && contract.bytes !== 'in')) {
        const where = parsed.success ? 'bytes' : (parsed.error.issues[0]?.path.join('.') ?? '');
        ports.log.write('problem', `call ${name}: parameters not as agreed at ${where}`);
        return failure(
          'not-as-agreed',
          'The page asked in a way that is not understood.',
          'Load the page again; if it happens again, copy the report and send it to us.',
          `${name}: ${where}`,
        );
      }
      try {
        const handler = handlers[name] as (
          params: unknown,
          bytes: Uint8Array | null,
        ) => ReturnType<HostService['call']>;
        const outcome = await handler(parsed.data, bytes);
        if (!outcome.ok) {
          if (outcome.problem.tag !== 'cancelled') {
            ports.log.write('problem', `call ${name}: ${outcome.problem.tag} ${outcome.problem.detail ?? ''}`);
          }
          return outcome;
        }
        const result = (contract.result as z.ZodType).safeParse(outcome.value.result);
        if (result.success) return outcome;
        return unexpected(name, `answer not as agreed at ${result.error.issues[0]?.path.join('.')}`);
      } catch (thrown) {
        return unexpected(name, thrown instanceof Error ? `${thrown.name}: ${thrown.message}` : String(thrown));
      }
    },
    async openGiven(path) {
      const taken = await takeGiven(ports, library, path);
      if (!taken.ok) {
        ports.log.write('problem', `open: ${taken.problem.tag} ${taken.problem.detail ?? ''}`);
        return taken;
      }
      ports.tell({ kind: 'open-piece', key: taken.value });
      return success(undefined);
    },
    pagesGone() {
      jobs.stopAll();
      return pieces.letGoAll();
    },
    async close() {
      stopWatching();
      jobs.stopAll();
      await endRestingThread();
      await pieces.closeAll();
    },
  };

  function unexpected(name: string, detail: string) {
    ports.log.write('problem', `call ${name}: ${detail}`);
    return failure(
      'internal',
      "Something Plumbweft didn't expect happened. What was kept before is unchanged.",
      'Try again; if it happens again, copy the report and send it to us.',
      name,
    );
  }
}

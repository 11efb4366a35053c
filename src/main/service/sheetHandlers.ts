import { failure } from '../../core/model/outcome.ts';
import type { Handlers } from './handlerTypes.ts';
import type { OpenPieces } from './openPieces.ts';
import type { ServicePorts } from './servicePorts.ts';

/** Calls that make PDF sheets. */
export function sheetHandlers(_ports: ServicePorts, _pieces: OpenPieces): Handlers<'makeSheet'> {
  return {
    makeSheet: async () => failure('not-built', "This build can't make sheets yet.", 'Use a build that can.'),
  };
}

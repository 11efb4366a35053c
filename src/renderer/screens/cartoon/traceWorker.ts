import { type TraceInto, tracePicture } from '../../../core/cartoon/trace/tracePicture.ts';
import type { Picture } from '../../../core/cartoon/trace/yarnRaster.ts';

/** Traces away from the page, so that it can be stopped: the page ends the worker. */
const port = self as unknown as {
  onmessage: ((event: MessageEvent<{ readonly picture: Picture; readonly into: TraceInto }>) => void) | null;
  postMessage: (answer: unknown) => void;
};
port.onmessage = ({ data }) => port.postMessage(tracePicture(data.picture, data.into));

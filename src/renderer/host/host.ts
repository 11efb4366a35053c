import type { HostApi } from '../../core/contract/hostApi.ts';
import { httpHost } from './httpHost.ts';
import { preloadHost } from './preloadHost.ts';

/** The product's own window has a bridge; a page served over loopback has not. */
export const chooseHost = (): HostApi => preloadHost() ?? httpHost();

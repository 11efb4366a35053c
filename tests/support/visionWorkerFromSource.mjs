import { register } from 'tsx/esm/api';

register();
await import('../../src/main/vision/worker.ts');

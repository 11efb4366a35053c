// `node --import` this: `electron` then means the stand-in.
import { register } from 'node:module';

register('./hooks.mjs', import.meta.url);

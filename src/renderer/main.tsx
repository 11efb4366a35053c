import { chooseHost } from './host/host.ts';
import { mount } from './mount.tsx';

const root = document.getElementById('root');
if (root !== null) void mount(chooseHost(), root);

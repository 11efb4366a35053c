let count = 0;

/** A name for something the host is asked to work out, by which it can be stopped. */
export const newJob = (kind: 'check' | 'picture'): string => `${kind}-${Date.now().toString(36)}-${++count}`;

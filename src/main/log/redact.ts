import { homedir, hostname, userInfo } from 'node:os';

const literal = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** Takes folders, the weaver's name and the machine's name out of a line, so that it can be shown to a stranger. */
export function redact(line: string): string {
  let clean = line
    .replaceAll(homedir(), '~')
    // In quotes, as errors of the system name them, a path may hold blanks.
    .replace(/(['"])(?:file:\/\/|[A-Za-z]:\\|\\\\|~?\/)[^'"]*\1/g, '$1<path>$1')
    // A drive letter, a network place or a rooted path of at least one folder; up to a blank, quote or bracket.
    .replace(/(?:file:\/\/|[A-Za-z]:\\|\\\\|~?\/)(?:[^\s"'<>:|()]+)/g, (path) => {
      const kept = /(?:^|[\\/])((?:piece|progress|settings|library)\.json|out\/main\/[\w./-]+\.js)$/.exec(path);
      return kept ? `<folder>/${kept[1]}` : '<path>';
    });
  for (const name of [userName(), hostname()]) {
    if (name.length >= 2) clean = clean.replace(new RegExp(`\\b${literal(name)}\\b`, 'g'), '<name>');
  }
  return clean;
}

function userName(): string {
  try {
    return userInfo().username;
  } catch {
    return '';
  }
}

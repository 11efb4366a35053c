/** What the system asks to be opened comes before there is a page, too: it waits until the page can hear. */
export class OpenedFiles {
  readonly #waiting: string[] = [];
  #heard = false;

  /** @param open opens one path; called one after another. */
  constructor(private readonly open: (path: string) => void) {}

  /** Paths among a program's arguments; flags are the browser's own. */
  give(args: readonly string[]): void {
    this.#waiting.push(...args.filter((arg) => arg !== '' && !arg.startsWith('-')));
    if (this.#heard) this.#openAll();
  }
  pageReady(): void {
    this.#heard = true;
    this.#openAll();
  }
  pageGone(): void {
    this.#heard = false;
  }
  #openAll(): void {
    for (const path of this.#waiting.splice(0)) this.open(path);
  }
}

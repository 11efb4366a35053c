import { cac } from 'cac';
import { endRestingThread } from '../vision/visionThread.ts';
import { exportCommand, importCommand } from './carryCommands.ts';
import { checkCommand } from './checkCommand.ts';
import { cliPorts } from './cliPorts.ts';
import { type ExitCode, exitCodes } from './exitCodes.ts';
import { newCommand } from './newCommand.ts';
import { planCommand } from './planCommand.ts';
import { complain, endWhenNobodyReads } from './say.ts';
import { verifyCommand } from './verifyCommand.ts';

const ports = cliPorts(import.meta.dirname);
const cli = cac('plumbweft');
let code: Promise<ExitCode> | null = null;
type Flags = Readonly<Record<string, unknown>>;

cli
  .command('new <dir>', 'Make a piece folder from a flat description')
  .option('--brief <file>', 'The description, JSON; its fields are in the README')
  .action((dir: string, flags: Flags) => {
    if (typeof flags.brief !== 'string') {
      complain('Say which description to use: plumbweft new --brief BRIEF.json DIR');
      code = Promise.resolve(exitCodes.wrongUse);
    } else code = newCommand(ports, String(dir), flags.brief);
  });
cli
  .command('check <dir> <...photos>', 'Measure photographs of the loom against the piece')
  .option('--points <xy>', 'Inner corners, px: "x,y x,y x,y x,y" from bottom left, anticlockwise; - for an open one')
  .option('--length <xy mm>', 'A known length on the warp, px and mm: "x,y x,y MM"; may be said again')
  .option('--card <xy>', 'Corners of a bank-size card on the warp, px: "x,y x,y x,y x,y", one after the other')
  .option('--json', 'One line of JSON per photograph')
  .option('--keep', 'Keep each measured photograph and its check in the piece')
  .action((dir: string, photos: string[], flags: Flags) => {
    const said = (flag: unknown) => (flag === undefined ? [] : [flag].flat().map(String));
    const marks = {
      points: said(flags.points).at(-1) ?? null,
      lengths: said(flags.length),
      card: said(flags.card).at(-1) ?? null,
    };
    const options = { marks, json: flags.json === true, keep: flags.keep === true };
    code = checkCommand(ports, String(dir), photos.map(String), options);
  });
cli
  .command('plan <dir>', 'Work out the whole plan')
  .option('--json', 'As JSON')
  .action((dir: string, flags: Flags) => {
    code = planCommand(ports, String(dir), flags.json === true);
  });
cli
  .command('verify <dir>', 'Look through a piece folder, file by file')
  .option('--mend', 'Mend what can be mended')
  .option('--json', 'As JSON')
  .action((dir: string, flags: Flags) => {
    code = verifyCommand(ports, String(dir), flags.mend === true, flags.json === true);
  });
cli
  .command('export <dir> <file>', 'Pack a piece into one zip')
  .option('--keep-places', 'Keep what photographs say of where they were taken')
  .action((dir: string, file: string, flags: Flags) => {
    code = exportCommand(ports, String(dir), String(file), flags.keepPlaces === true);
  });
cli
  .command('import <source> <dir>', 'Bring a piece in from a zip or a folder')
  .action((source: string, dir: string) => {
    code = importCommand(ports, String(source), String(dir));
  });
cli.help();

endWhenNobodyReads();

async function run(): Promise<number> {
  try {
    cli.parse(process.argv, { run: false });
    if (cli.options.help === true) return exitCodes.done;
    if (cli.matchedCommand === undefined) {
      const word = cli.args[0];
      complain(word === undefined ? 'Say what to do.' : `There is no command "${word}".`);
      cli.outputHelp();
      return exitCodes.wrongUse;
    }
    cli.runMatchedCommand();
  } catch (thrown) {
    // The parser throws for missing words and unknown options.
    complain(`${thrown instanceof Error ? thrown.message : String(thrown)}. "plumbweft --help" lists the commands.`);
    return exitCodes.wrongUse;
  }
  return code === null ? exitCodes.wrongUse : await code;
}

try {
  process.exitCode = await run();
} catch (thrown) {
  complain(`Something Plumbweft didn't expect happened: ${thrown instanceof Error ? thrown.message : String(thrown)}`);
  process.exitCode = 1;
} finally {
  await endRestingThread();
}

import { Command, CommanderError } from 'commander';
import { ENGINE_VERSION } from '../engine/version.ts';
import { type CalcOptions, runCalc } from './calc-command.ts';
import { type CarriesOptions, runCarries } from './carries-command.ts';
import { type CheckOptions, runCheck } from './check-command.ts';
import { runChoose } from './choose-command.ts';
import type { ChooseFlags } from './choose-options.ts';
import { runEditions } from './editions-command.ts';
import { EXIT, UsageError } from './exit-codes.ts';
import type { FolderOptions } from './folder-command.ts';
import { type HandedOptions, runHanded } from './handed-command.ts';
import type { OfficeFlags } from './office-command.ts';
import { runParts } from './parts-command.ts';
import type { PartsFlags } from './parts-options.ts';
import { runSchedules } from './schedules-command.ts';
import { runSetOut, type SetOutOptions } from './setout-command.ts';
import type { VerifyFlags } from './verify-command.ts';

/** Values of an option that may stand several times. */
function collect(value: string, earlier: readonly string[] | undefined): readonly string[] {
  return [...(earlier ?? []), value];
}

/** What --by is, the same for each command. */
const BY = 'another standard in place of that of the job\'s own rules, such as "ACI 318M-19"';

/** Server, store and the writer of PDFs are large: they are read when they are wanted, and the other commands start without them. */
function buildProgram(leave: (code: number) => void): Command {
  const program = new Command('onepour')
    .description('Threaded inserts cast into precast concrete panels: strength, computed and shown.')
    .version(ENGINE_VERSION)
    .exitOverride()
    .configureOutput({ writeErr: () => {} })
    .showSuggestionAfterError();
  program
    .command('check')
    .description('check every connection of a job, or one in full')
    .argument('<job>', 'a job file (.json) or a folder of CSV schedules')
    .option('--json', 'the answer as JSON')
    .option('--panel <mark>', 'one panel only')
    .option('--connection <mark>', 'one connection in full')
    .option('--steps', 'with --connection: the governing combination step by step')
    .option('--by <standard>', BY)
    .option(
      '--also <standard>',
      'a further standard side by side, such as "ACI 318M-19"; may stand several times',
      collect,
    )
    .addHelpText(
      'after',
      '\nExit codes: 0 all pass, 1 something does not, 2 wrong input, 3 strength not checked somewhere',
    )
    .action((job: string, options: CheckOptions) => leave(runCheck(job, options)));
  program
    .command('choose')
    .description('rank the inserts with which connections pass, and say why not the others')
    .argument('<job>', 'a job file (.json) or a folder of CSV schedules')
    .argument('[connection]', 'the mark of one connection; without it, each that does not pass')
    .option('--panel <mark>', 'one panel only')
    .option('--by <standard>', BY)
    .option('--all', 'connections that pass, too')
    .option('--move <mm>', 'a connection may be moved so far along each axis of its face')
    .option('--drill', 'holes of the plate may be drilled larger, to suit another thread')
    .option('--bolt-class', 'bolts of a stronger property class may be taken where steel governs')
    .option('--pour-in <days>', 'days until the pour, to see what can be had by then')
    .option('--pour-date <date>', 'the day of the pour instead, as YYYY-MM-DD')
    .option('--apply <file>', 'write the job with the first choices made, as a new .json file')
    .option('--overwrite', 'with --apply: write over a file that is there')
    .option('--json', 'the answer as JSON')
    .addHelpText(
      'after',
      '\nExit codes: 0 each has an insert that passes, 1 some have none, 2 wrong input, 3 nothing to choose: no action given',
    )
    .action((job: string, mark: string | undefined, options: ChooseFlags) =>
      leave(runChoose(job, mark, options, new Date())),
    );
  program
    .command('carries')
    .description('what each connection of a job carries at most, or one in full')
    .argument('<job>', 'a job file (.json) or a folder of CSV schedules')
    .argument('[connection]', 'the mark of one connection')
    .option('--by <standard>', BY)
    .option('--json', 'the answer as JSON')
    .addHelpText(
      'after',
      '\nExit codes: 0 all computed, 1 something is not covered or cannot be, 2 wrong input, 3 no connection',
    )
    .action((job: string, mark: string | undefined, options: CarriesOptions) => leave(runCarries(job, mark, options)));
  program
    .command('parts')
    .description('count the parts of a job, a pour or a panel; what is short, and by when to order it')
    .argument('<job>', 'a job file (.json) or a folder of CSV schedules')
    .option('--pour <id>', 'one pour: its bench and the labels of its bags')
    .option('--panel <mark>', 'one casting of a panel')
    .option('--stock <file>', 'what the yard has, as CSV: id, in_stock, on_order, arrives')
    .option('--orders <file>', 'what was ordered for the job, as CSV: id, ordered, delivered')
    .option('--today <date>', 'the day from which on pours are to come, as YYYY-MM-DD')
    .option('--csv <file>', 'write a list as a new .csv file')
    .option('--list <name>', 'with --csv: parts (else), bench or labels')
    .option('--overwrite', 'with --csv: write over a file that is there')
    .option('--json', 'the answer as JSON')
    .addHelpText(
      'after',
      '\nExit codes: 0 all is counted and nothing is short, 1 something is short, does not agree or cannot be made, 2 wrong input, 3 something is not decided, so that the counts are not complete',
    )
    .action((job: string, options: PartsFlags) => leave(runParts(job, options, new Date())));
  program
    .command('calc')
    .description('run calculations: JSON in, JSON out')
    .argument('[files...]', 'files with one calculation each, or "-" for standard input')
    .option('--list', 'name the calculations')
    .option('--schema <name>', 'JSON Schema of a calculation')
    .option('--steps', 'print step by step, for reading (with --json: steps inside the JSON)')
    .option('--json', 'always JSON')
    .action((files: string[], options: CalcOptions) => leave(runCalc(files, options)));
  program
    .command('editions')
    .description('what each edition of the standards computes, and what none may pass')
    .option('--json', 'the table as JSON')
    .action((options: { readonly json?: boolean }) => leave(runEditions(options)));
  program
    .command('schedules')
    .description('write a job as CSV schedules')
    .argument('<job>', 'a job file (.json) or a folder of CSV schedules')
    .argument('<folder>', 'a new or empty folder')
    .action((job: string, folder: string) => leave(runSchedules(job, folder)));
  program
    .command('handed')
    .description('make the handed partner of a panel, its mirror image, or make it anew')
    .argument('<job>', 'a job file (.json) or a folder of CSV schedules')
    .argument('<mark>', 'the mark of the panel')
    .argument('<newmark>', 'the mark of its partner')
    .requiredOption('--out <file>', 'the job with the partner, as a .json file')
    .option('--overwrite', 'write over a file that is there')
    .action((job: string, mark: string, newMark: string, options: HandedOptions) =>
      leave(runHanded(job, mark, newMark, options)),
    );
  program
    .command('setout')
    .description('where each insert goes in the form: one panel in full, or all on a line each')
    .argument('<job>', 'a job file (.json) or a folder of CSV schedules')
    .argument('[panel]', 'the mark of one panel')
    .option('--bed <id>', 'the bed that it is cast on; without it, that of its first pour')
    .option('--dxf <file>', 'the plan of the panel in mm at 1:1, for a drawing program')
    .option('--svg <file>', 'the plan of the panel as a picture')
    .option('--overwrite', 'with --dxf or --svg: write over a file that is there')
    .option('--json', 'the answer as JSON')
    .addHelpText('after', '\nExit codes: 0 nothing stands against it, 1 something cannot be made so, 2 wrong input')
    .action((job: string, mark: string | undefined, options: SetOutOptions) => leave(runSetOut(job, mark, options)));
  program
    .command('folder')
    .description('the pour folder of a pour as one PDF: cover, parts, set-out, sections, check sheets')
    .argument('<job>', 'a job file (.json) or a folder of CSV schedules')
    .argument('<pour>', 'the name of the pour')
    .option('--out <file>', 'where to write it; without it, the name of the pour with .pdf')
    .option('--paper <size>', 'A3 or A4; without it, A3')
    .option('--since <job>', 'an earlier revision of the job: the cover says what changed')
    .option('--overwrite', 'write over a file that is there')
    .addHelpText(
      'after',
      '\nExit codes: 0 ready, 1 something stands against the pour (the folder says what), 2 wrong input',
    )
    .action(async (job: string, pour: string, options: FolderOptions) => {
      const { runFolder } = await import('./folder-command.ts');
      leave(await runFolder(job, pour, options));
    });
  program
    .command('office')
    .description('the office in a browser: serves it on this machine until it is stopped')
    .option('--port <number>', 'the port; without it, 4180 or the next that is free')
    .option('--host <address>', 'the address to listen at', '127.0.0.1')
    .option('--store <file>', 'where the jobs are kept; made when it is not there', 'onepour-data/office.db')
    .option('--demo', 'put the demo job into a store that has no job yet')
    .option('--certificate <file>', 'HTTPS with this certificate (PEM), so that tablets in the yard can work offline')
    .option('--key <file>', 'the private key of the certificate (PEM)')
    .addHelpText('after', '\nThere are no accounts: whoever reaches the address can read and change every job.')
    .action(async (options: OfficeFlags) => {
      const { runOffice } = await import('./office-command.ts');
      leave(await runOffice(options));
    });
  program
    .command('verify')
    .description('whether the records of a store, or of a file of unsent ones, are as they were written')
    .option('--store <file>', 'the store of an office that is stopped', 'onepour-data/office.db')
    .option('--head <number:hash>', 'a head of the log that was written down earlier, or stands on a clearance')
    .option('--file <export>', 'a file of unsent records instead of a store')
    .option('--json', 'the answer as JSON')
    .addHelpText('after', '\nExit codes: 0 nothing found, 1 something is not as it was written, 2 cannot be looked at')
    .action(async (options: VerifyFlags) => {
      const { runVerify } = await import('./verify-command.ts');
      leave(await runVerify(options));
    });
  program
    .command('tour')
    .description('check the demo job and say what to do next')
    .action(async () => {
      const { runTour } = await import('./tour-command.ts');
      leave(await runTour());
    });
  return program;
}

// A reader that stops early (`| head`) closes the pipe: not a fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(process.exitCode ?? EXIT.pass);
  throw error;
});

try {
  const program = buildProgram((code) => {
    process.exitCode = code;
  });
  if (process.argv.length > 2) await program.parseAsync();
  else process.stdout.write(program.helpInformation());
} catch (error) {
  if (error instanceof UsageError) {
    process.stderr.write(`${error.message}\n`);
    process.exitCode = EXIT.wrongInput;
  } else if (error instanceof CommanderError) {
    // Help and version are asked for, not wrong.
    if (error.exitCode !== 0) process.stderr.write(`${error.message.replace(/^error: /, '').split('\n')[0]}\n`);
    process.exitCode = error.exitCode === 0 ? EXIT.pass : EXIT.wrongInput;
  } else throw error;
}
